// `washline hands` as it is run. Statuses: the manual's page on hands. Threads are those of the built command, which a worker needs.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { faults, type Schema } from '../../../../tests/schema/faults.ts';
import { main } from '../index.ts';

const root = new URL('../../../../', import.meta.url);
const folder = mkdtempSync(join(tmpdir(), 'washline-hands-'));
afterAll(() => { rmSync(folder, { recursive: true }); });
const file = (name: string, text: string): string => { const path = join(folder, name); writeFileSync(path, text); return path; };
const demo = (name: string): string => fileURLToPath(new URL(`demo/${name}`, root));
const schema = JSON.parse(readFileSync(new URL('schema/hands.schema.json', root), 'utf8')) as Schema;

async function washline(args: readonly string[], typed = '', env: Record<string, string> = {}) {
  let out = '', err = '';
  const status = await main(args, {
    stdin: (async function* () { yield Buffer.from(typed); })(), stdout: { write: (text) => { out += text; } }, stderr: { write: (text) => { err += text; } }, env,
  });
  return { status, out, err };
}
const json = (text: string) => JSON.parse(text) as Record<string, any>;
const timeless = (text: string): string => text.replace(/"ms": [\d.e+-]+/, '"ms": 0');
const SOUR = 'Sour\nglass: coupe\n60 ml white rum 40 %\n30 ml lime juice\n20 ml simple syrup 1:1\nshake 12 s over 150 g cubes\n';
const sour = file('sour.drink', SOUR), odd = file('odd.drink', `${SOUR}frobnicate\n`);
const few = ['--makers', '200'];

describe('hands', () => {
  it('prints bands, how often it fails and what decides, and ends with 0, however often it fails', async () => {
    for (const [spec, often] of [['colada-with-faults.drink', /In every one of these kitchens something stops it/], ['clear-colada.drink', /In \d+ of 100 kitchens \(± [\d.]+\) something stops it/], ['freezer-martini.drink', /In none of these kitchens .* fewer than 0\.6 of 100/]] as const) {
      const { status, out, err } = await washline(['hands', demo(spec), '--makers', '500']);
      expect([status, err]).toEqual([0, '']);
      expect(out.replace(/\s+/g, ' ')).toMatch(often);
      expect(out).toMatch(/ strength +[\d.]+ +[\d.]+ +[\d.]+ {2}% vol/);
      expect(out.split('\n').every((line) => Array.from(line).length <= 80)).toBe(true);
    }
  });
  it('says the deciding line first, then the input in words, then what is left with it held', async () => {
    const { out } = await washline(['hands', demo('clear-colada.drink'), '--makers', '500']);
    expect(out).toMatch(/fat-set-hard: \d+ of 100 kitchens \(± [\d.]+\)\n {4}decided by line 10: rest 4 h at 30 °C\n {6}how warm \(100 %\); held as it is meant, 0 of 100\n/);
    expect(out).not.toMatch(/\w\/\w+\/\w/);
  });
  it('keeps what is there in any kitchen apart from what fails', async () => {
    const { out } = await washline(['hands', demo('freezer-martini.drink'), ...few]);
    const [fails = '', rest = ''] = out.split('Stops nothing, but good to know');
    expect(fails).not.toMatch(/allergen-hidden/);
    expect(rest).toMatch(/allergen-hidden: every kitchen, line \d+: 90 ml dry vermouth/);
  });
  it('speaks German', async () => {
    const { out } = await washline(['hands', demo('clear-colada.de.drink'), '--language', 'de', ...few]);
    expect(out).toMatch(/Haushaltsküchen/);
    expect(out).toMatch(/fat-set-hard: \d+ von 100 Küchen \(± \d,\d\)\n {4}es entscheidet Zeile 11: 4 h bei 30 °C ruhen lassen\n {6}wie warm \(100 %\)/);
    expect(out).not.toMatch(/decided|kitchens|how /);
  });
  it('--json prints one value after its schema, the same from a file and from standard input but for the time', async () => {
    const one = await washline(['hands', sour, '--json', ...few]), typed = await washline(['hands', '-', '--json', ...few], SOUR);
    expect([one.status, one.err, typed.status]).toEqual([0, '', 0]);
    expect(faults(json(one.out), schema)).toEqual([]);
    expect(Object.keys(json(one.out))).toEqual(['makers', 'seed', 'ms', 'figures', 'findings', 'matters', 'fix', 'profile', 'fails']);
    expect(json(one.out)).toMatchObject({ makers: 200, seed: 1, profile: 'home' });
    expect(timeless(typed.out)).toBe(timeless(one.out));
  });
  it('is equal byte for byte at the same seed but for the time, and another at another', async () => {
    const [a, b, c] = await Promise.all(['7', '7', '8'].map(async (seed) => timeless((await washline(['hands', sour, '--json', '--seed', seed, ...few])).out)));
    expect(a).toBe(b);
    expect(a).not.toBe(c);
  });
  it('--variant draws the variant', async () => {
    const spec = file('two.drink', `${SOUR}\nstrong / Build:\n90 ml white rum 40 %\n`);
    const middle = async (...args: string[]) => json((await washline(['hands', spec, '--json', ...few, ...args])).out);
    const [base, strong] = [await middle(), await middle('--variant', 'strong')];
    expect(strong['figures'].ethanol.p50).toBeGreaterThan(base['figures'].ethanol.p50 * 1.2);
  });
  it('--bench takes the maker’s bottles, and so does WASHLINE_BENCH', async () => {
    const bench = file('my.bench', 'Shelf:\nwhite rum: 50 %\n'), open = file('open.drink', 'Neat\n60 ml white rum\n');
    const strength = async (args: readonly string[], env = {}) => json((await washline(['hands', open, '--json', ...few, ...args], '', env)).out)['figures'].strength.p50 as number;
    expect(await strength(['--bench', bench])).toBeCloseTo(50, 1);
    expect(await strength([], { WASHLINE_BENCH: bench })).toBeCloseTo(50, 1);
    expect(await strength([])).toBeLessThan(45);
  });
  it.each([
    ['--makers', '0', /no number of makers from 1 to 1000000/], ['--makers', '1e3', /makers/], ['--makers', '-5', /makers/], ['--makers', '1000001', /makers/], ['--makers', 'ten', /"ten"/],
    ['--seed', 'x', /no whole number from 0/], ['--seed', '1.5', /no whole number/], ['--seed', '2147483648', /no whole number/], ['--profile', 'pub', /no kitchens "pub"; known: home/], ['--threads', '0', /no number of threads/], ['--threads', '65', /threads/],
  ])('%s %s is asked for wrongly: exit 2, a sentence, nothing drawn', async (flag, value, sentence) => {
    const plain = await washline(['hands', sour, `${flag}=${value}`]);
    expect([plain.status, plain.out]).toEqual([2, '']);
    expect(plain.err).toMatch(sentence);
    const { status, out, err } = await washline(['hands', sour, `${flag}=${value}`, '--json']);
    expect([status, err, Object.keys(json(out)), json(out)['problems'].length]).toEqual([2, '', ['problems'], 1]);
    expect(json(out)['problems'][0]).toMatchObject({ code: `hands-${flag.slice(2)}`, message: expect.stringMatching(sentence) });
  });
  it.each([[['hands', join(folder, 'none.drink')], 'missing'], [['hands', sour, '--bench', join(folder, 'none.bench')], 'missing']])('a file that is not there: exit 2 (%#)', async (args, code) => {
    const { status, out } = await washline([...args, '--json']);
    expect([status, json(out)['problems'][0].code, json(out)['hands']]).toEqual([2, code, undefined]);
    expect((await washline(args)).err).not.toBe('');
  });
  it('without a spec, or with two, it is asked for wrongly', async () => {
    for (const args of [['hands'], ['hands', sour, sour]]) expect((await washline(args)).status).toBe(2);
  });
  it('a line that is not understood is a problem at its place, exit 2; the rest is drawn', async () => {
    const plain = await washline(['hands', odd, ...few]);
    expect(plain.status).toBe(2);
    expect(plain.err).toMatch(/odd\.drink:7:1: \S/);
    expect(plain.out).toMatch(/strength/);
    const { status, out, err } = await washline(['hands', odd, ...few, '--json']);
    expect([status, err, Object.keys(json(out))]).toEqual([2, '', ['problems', 'hands']]);
    expect(json(out)['problems'][0].where).toMatchObject({ file: odd, line: 7 });
    expect(faults(json(out)['hands'], schema)).toEqual([]);
  });
  it('a variant nobody wrote, an odd bench: problems beside the answer', async () => {
    const bench = file('odd.bench', 'Tools:\nfrob: 3 ml\n');
    for (const [args, code] of [[['--variant', 'nowhere'], 'variant-unknown'], [['--bench', bench], 'bench-unknown']] as const) {
      const { status, out } = await washline(['hands', sour, '--json', ...few, ...args]);
      expect([status, json(out)['hands'].makers]).toEqual([2, 200]);
      expect(json(out)['problems'][0].code).toMatch(code.slice(0, 5));
    }
  });
});

describe('hands with threads', () => {
  const bin = fileURLToPath(new URL('packages/cli/bin/washline.js', root));
  it('1, 2, 3 and more threads than makers give the same bytes but for the time', () => {
    const run = (threads: number, makers: number) => timeless(execFileSync(process.execPath, [bin, 'hands', sour, '--json', '--makers', String(makers), '--threads', String(threads)], { encoding: 'utf8' }));
    const one = run(1, 900);
    expect(faults(json(one), schema)).toEqual([]);
    for (const threads of [2, 3]) expect(run(threads, 900)).toBe(one);
    expect(run(4, 3)).toBe(run(1, 3));
  }, 60_000);
  it('a bench, a variant and standard input go with the threads', () => {
    const bench = file('thread.bench', 'Shelf:\nwhite rum: 50 %\n');
    const run = (threads: number) => { const done = spawnSync(process.execPath, [bin, 'hands', '-', '--json', '--makers', '100', '--threads', String(threads), '--bench', bench, '--variant', 'long'], { encoding: 'utf8', input: `${SOUR}\nlong / Build:\n60 ml white rum\n100 ml soda water\n` }); return [done.status, done.stderr, timeless(done.stdout)]; };
    const one = run(1);
    expect(one.slice(0, 2)).toEqual([0, '']);
    expect(run(2)).toEqual(one);
  }, 60_000);
});
