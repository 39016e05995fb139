import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { handsText, loadLanguage, readText, type HandsAnswer } from '@washline/spec';
import { tables } from '@washline/tables';
import { faults, type Schema } from '../schema/faults.ts';

const folder = new URL('../../demo/', import.meta.url);
const schema = JSON.parse(readFileSync(new URL('../../schema/hands.schema.json', import.meta.url), 'utf8')) as Schema;
const files = readdirSync(folder).filter((file) => file.endsWith('.drink'));
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
const MAKERS = 1000;
const handsOf = (text: string, more = {}): HandsAnswer => handsText(text, { tables, makers: MAKERS, seed: 1, profile: 'home', ...more });
await loadLanguage('de');

describe('demo drinks in home kitchens', () => {
  describe.each(files)('%s', (file) => {
    const text = textOf(file), { hands, problems } = handsOf(text), { reading } = readText(text, { tables, quick: true });

    it('has a finite band, in order, for every figure of its reading', () => {
      expect(problems).toEqual([]);
      // what a glass costs no kitchen draws: prices stand beside the program
      const names = Object.keys(reading.figures).filter((name) => name !== 'cost');
      expect(names.length).toBeGreaterThan(5);
      for (const name of [...names, 'washline_mm']) {
        const band = hands.figures[name]!;
        expect(band, name).toBeDefined();
        for (const v of [band.p2_5, band.p50, band.p97_5]) expect(Number.isFinite(v), name).toBe(true);
        expect(band.p2_5).toBeLessThanOrEqual(band.p50);
        expect(band.p50).toBeLessThanOrEqual(band.p97_5);
      }
    });
    it('has odds between 0 and 1 with an error above 0, each code once a place', () => {
      for (const f of [...hands.findings, ...hands.fix, hands.fails]) {
        expect(f.odds).toBeGreaterThanOrEqual(0);
        expect(f.odds).toBeLessThanOrEqual(1);
        expect(f.error).toBeGreaterThan(0);
        expect(f.error).toBeLessThan(0.02);
      }
      const named = hands.findings.map((f) => `${f.code} ${f.path.join('/')}`);
      expect(new Set(named).size).toBe(named.length);
    });
    it('fails as often as the most frequent of its stops at least, and no more often than all of them together', () => {
      const stops = hands.findings.filter((f) => f.stops);
      expect(hands.fails.odds).toBeGreaterThanOrEqual(Math.max(0, ...stops.map((f) => f.odds)));
      expect(hands.fails.odds).toBeLessThanOrEqual(stops.reduce((sum, f) => sum + f.odds, 0) + 1e-12);
    });
    it('every stop names a line or the glass, and the input that decides it with a place or a tool; one that no input moves is so everywhere', () => {
      for (const f of hands.findings.filter((x) => x.stops)) {
        expect(f.line !== undefined || f.path[0] === 'glass', f.code).toBe(true);
        const [first] = hands.matters.filter((m) => m.code === f.code && m.path === f.path);
        if (first === undefined) { expect(f.odds, f.code).toBe(1); continue; }
        expect(first.share).toBeGreaterThan(0);
        expect(first.line !== undefined || first.at?.[0] === 'glass' || /^(tool|place|model|start|glass)\//.test(first.input), `${f.code}: ${first.input}`).toBe(true);
      }
    });
    it.each(['en', 'de'] as const)('says its inputs in words (%s)', (language) => {
      for (const m of handsOf(text, { language, makers: 200 }).hands.matters) {
        expect(m.words, m.input).not.toBe('');
        expect(m.words.includes('/'), `${m.input}: ${m.words}`).toBe(false);
      }
    });
    it('shares of a variance are above 0 and not more than 1 together', () => {
      const sums = new Map<string, number>();
      for (const m of hands.matters) { expect(m.share).toBeGreaterThan(0); const of = m.figure ?? `${m.code!} ${m.path!.join('/')}`; sums.set(of, (sums.get(of) ?? 0) + m.share); }
      for (const [of, sum] of sums) expect(sum, of).toBeLessThan(1 + 1e-9);
    });
    it('with the input held that decides it, a stop that hangs on that alone is gone or there for good', () => {
      for (const x of hands.fix) {
        const m = hands.matters.find((y) => y.code === x.code && y.path === x.path && y.input === x.input)!;
        if (m.share > 0.999) expect([0, 1]).toContain(x.odds);
      }
    });
    it('follows its schema', () => {
      const printed: unknown = JSON.parse(JSON.stringify({ ...hands, ms: 1 }));
      expect(faults(printed, schema)).toEqual([]);
      expect(faults({ ...(printed as object), fails: {} }, schema)).not.toEqual([]);
    });
  });

  it('all stops of a reading are stops of nearly every kitchen', () => {
    for (const file of files) {
      const text = textOf(file), { hands } = handsOf(text, { makers: 300 });
      for (const f of readText(text, { tables, quick: true }).reading.findings.filter((x) => x.severity === 'stop' && (x.odds ?? 0) > 0.99)) expect(hands.findings.find((x) => x.code === f.code)?.odds, `${file} ${f.code}`).toBeGreaterThan(0.9);
    }
  });
});

describe('many kitchens of texts that are not whole', () => {
  it.each(['', 'Only a name\n', 'X\n60 ml unobtainium\n', 'X\nfrobnicate\n', 'A (infusion):\n60 ml b\n\nB (infusion):\n60 ml a\n\nBuild:\n60 ml a\n'])('%j is no fault: errors are numbers, problems have a place', (text) => {
    const { hands, problems } = handsOf(text, { makers: 50 });
    expect(Number.isFinite(hands.fails.odds) && hands.fails.error > 0).toBe(true);
    expect(faults(JSON.parse(JSON.stringify({ ...hands, ms: 0 })), schema)).toEqual([]);
    for (const p of problems) expect(p.where.line).toBeGreaterThan(0);
    expect(problems.map((p) => p.code)).toEqual(readText(text, { tables, quick: true }).problems.map((p) => p.code));
  });
  it('a thing nobody knows takes its figures away and leaves the others', () => {
    const { hands } = handsOf('X\n60 ml unobtainium\n30 ml white rum 40 %\n', { makers: 200 });
    expect(hands.figures['strength']).toBeUndefined();
    expect(hands.figures['volume']!.p50).toBeGreaterThan(80);
    expect(hands.findings.find((f) => f.code === 'ingredient-unknown')).toMatchObject({ stops: false, presence: true, line: 2, odds: 1 });
  });
});

describe('what was knowingly accepted', () => {
  const SHOT = 'A\nglass: shot glass\n60 ml gin 40 %\n', ACCEPT = '\nAccept:\nglass-overfull at glass: shot glass: passed round\n';
  it('stops nothing', () => {
    expect(handsOf(SHOT).hands.fails.odds).toBeGreaterThan(0.9);
    const { hands } = handsOf(SHOT + ACCEPT);
    expect(hands.fails.odds).toBe(0);
    expect(hands.findings[0]).toMatchObject({ code: 'glass-overfull', stops: false, accepted: true });
    expect(hands.findings[0]!.odds).toBeGreaterThan(0.9);
  });
  it('stops all the same where it is about harm', () => {
    const bark = 'A\n\nBark (infusion):\n20 g cinchona bark\n500 ml water\nboil 20 min\nstrain through cheesecloth\n\nBuild:\n60 ml gin 40 %\n60 ml bark\n\nAccept:\nhazard-plant at bark: ours\nhazard-dose at bark: ours\nhazard-dose at build: ours\n';
    const { hands } = handsOf(bark);
    expect(hands.fails.odds).toBe(1);
    expect(hands.findings.filter((f) => f.code.startsWith('hazard')).every((f) => f.stops)).toBe(true);
  });
});
