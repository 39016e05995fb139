import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { main } from '../index.ts';
import { columns } from './text.ts';

const demo = (name: string): string => fileURLToPath(new URL(`../../../../demo/${name}.drink`, import.meta.url));

async function washline(args: readonly string[]): Promise<{ status: number; out: string; err: string }> {
  let out = '', err = '';
  const status = await main(args, { stdin: (async function* () { /* nothing comes in */ })(), stdout: { write: (t: string) => { out += t; } }, stderr: { write: (t: string) => { err += t; } }, env: {} });
  return { status, out, err };
}
const why = (out: string): string => /^Why\n[^]*?(?=^For whom)/m.exec(out)?.[0] ?? '';
/** Without the breaks of lines. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');

describe('--why', () => {
  it('leads from a strength to the row, its reason and the print', async () => {
    const { out } = await washline(['read', demo('daiquiri'), '--why', 'strength']);
    const text = flat(why(out));
    for (const part of ['how hard one shakes', 'data/assumptions.tsv, row agitation/shake', 'because: people count fast', 'data/physics/oiml-r22.json', 'docs/models/liquids.md', 'What would narrow it most: how hard one shakes', 'What you can do about it: how long: shake 12 s', 'oiml-r22: OIML; Council of the European Communities, 1975: International Recommendation R 22']) expect(text).toContain(part);
    expect(why(out).split('\n').every((line) => columns(line) <= 80)).toBe(true);
  });

  it.each([
    ['coconut rum/strength', 'the strength of white rum'], ['pineapple cloud/overrun', 'Only this makes it uncertain: how much the foam grows'], ['coconut rum/stage 3/volume', 'the amount of white rum in coconut rum'], ['stage 1/dilution', 'how hard one stirs'],
    ['washline', 'the size of the glass'], ['liquid_mm', 'the size of the glass'], ['layer 2/density', 'pineapple'], ['foam-too-strong@24', 'short of the limit'], ['Foam too strong', 'how true the jigger measures'], ['coconut rum/co2', 'coconut rum/co2 is not known: it is not charged with gas'], ['egg-raw', 'egg-raw: nothing in this recipe can reach this limit'],
  ])('answers for %s', async (figure, said) => {
    const { status, out, err } = await washline(['read', demo('clear-colada'), '--why', figure]);
    expect([status, err]).toEqual([0, '']);
    expect(flat(why(out))).toContain(said);
  });

  it('a line that may be read in two ways leads to the figure the other reading would move', async () => {
    const lines = ['60 ml white rum 40 %', '60 ml simple syrup 1:1', '10 ml lime juice'];
    const { out } = await washline(['mix', ...lines, '--why', 'ratio-unclear']);
    expect(flat(why(out))).toMatch(/ratio-unclear counts how far sugar would move.*by weight or by volume: simple syrup 1:1/);
    expect(flat(why((await washline(['mix', ...lines.slice(0, 1), '2 ml simple syrup 1:1', 'stir 20 s over 200 g cubes', '--why', 'ratio-unclear'])).out))).toContain('no figure so far that it is seen');
  });

  it('takes several, repeated or with commas: one object for one, a list for several', async () => {
    const one = JSON.parse((await washline(['read', demo('daiquiri'), '--json', '--why', 'sugar'])).out) as { why: { figure: string } };
    expect(one.why.figure).toBe('sugar');
    const { out, status } = await washline(['read', demo('daiquiri'), '--json', '--why', 'strength, stage 1/temperature', '--why', 'washline_mm']);
    expect((JSON.parse(out) as { why: { figure: string }[] }).why.map((w) => w.figure)).toEqual(['strength', 'stage 1/temperature', 'washline_mm']);
    expect(status).toBe(0);
  });

  it('a name nobody has is a problem with the nearest names and all that can be asked', async () => {
    const { status, out, err } = await washline(['read', demo('clear-colada'), '--why', 'strenght']);
    expect(status).toBe(2);
    expect(err).toMatch(/no figure called "strenght".*Near it: strength,.*volume, mass, strength.*coconut rum\/\*.*foam-too-strong/);
    expect(out).toContain('Clear colada');
  });

  it('an absent figure names what keeps it from being known', async () => {
    const { status, out } = await washline(['mix', '60 ml white rum 40 %', '30 ml carrot juice', 'stir 20 s over 200 g cubes', '--json', '--why', 'ph']);
    const { why: ph } = JSON.parse(out) as { why: { absent: { code: string; things: string[]; message: string } } };
    expect([status, ph.absent.code, ph.absent.things]).toEqual([0, 'ph-unknown', ['carrot juice']]);
    expect(ph.absent.message).toMatch(/^\d+(\.\d)? % of its mass has no pH of its own.*: carrot juice$/);
  });
});
