// Odds and bands of whole specs against closed forms of probability (any textbook: a normal beyond a limit, a product of lognormals, quantiles of a sample).
import { describe, expect, it } from 'vitest';
import { compile, inKitchen, kitchenOf, normalShare, normalQuantile, partAt, spreads } from '@washline/engine';
import { handsText, makersOfText, parse } from '@washline/spec';
import { tables } from '@washline/tables';

const MAKERS = 10_000, Z = 1.959964;
const handsOf = (text: string, more = {}) => handsText(text, { tables, makers: MAKERS, seed: 11, profile: 'home', ...more }).hands;
/** Four deviations of a share found in so many draws. */
const near = (p: number, n = MAKERS): number => 4 * Math.sqrt((p * (1 - p)) / n);
/** Deviation of a lognormal's logarithm. */
const sigmaOf = (cv: number): number => Math.sqrt(Math.log(1 + cv * cv));

// The margin is the fat's melting end less the temperature of the rest; in a home kitchen a written temperature is off by 4 K, a room (what is
// written up to 28 °C) by 3 K (data/hands.json).
const WASH = (celsius: number) => `Wash\n\nRum (fat wash):\n300 ml white rum 40 %\n40 g virgin coconut oil, melted at 60 °C\nrest 4 h at ${celsius} °C\nfreeze 12 h at -18 °C\nstrain through a paper filter at -18 °C\n\nBuild:\n60 ml rum\n`;
const MELTS = 28;                                                                               // coconut oil: belitz-fats, 20 to 28 °C

describe('a margin that one normal input moves', () => {
  it.each([[26, 3, 'place/room/26'], [28, 3, 'place/room/28'], [30, 4, 'temperature/preps/rum/2'], [33, 4, 'temperature/preps/rum/2'], [36, 4, 'temperature/preps/rum/2']] as const)('rest at %d °C, off by %d: fat sets as often as a normal lies below its melting end', (celsius, sd, key) => {
    const found = handsOf(WASH(celsius)), is = normalShare((MELTS - celsius) / sd);
    const odds = found.findings.find((f) => f.code === 'fat-set-hard')!;
    expect(Math.abs(odds.odds - is)).toBeLessThan(near(is));
    // the printed error is that of a share: √(p (1 - p) / n)
    expect(odds.error / Math.sqrt((is * (1 - is)) / MAKERS)).toBeCloseTo(1, 0);
    const [only, ...others] = found.matters.filter((m) => m.code === 'fat-set-hard');
    expect([only!.input, others.length]).toEqual([key, 0]);
    expect(only!.share).toBeGreaterThan(0.9999);
    // held as it is written it sets in all kitchens or in none
    expect(found.fix.find((x) => x.code === 'fat-set-hard')!.odds).toBe(celsius < MELTS ? 1 : 0);
  });
});

describe('a margin that three inputs move', () => {
  // what is poured is 60 mL times two lognormals of 0.06 (hand, jigger); a glass whose size is written holds 3 % more or less, a normal of 3 / 1.96 %
  it.each([56, 60, 64, 70, 76])('60 ml into a glass of %d ml: runs over as often as the integral over the glass says', (brim) => {
    const sigma = sigmaOf(0.06) * Math.SQRT2, sd = (0.03 * brim) / Z;
    let is = 0;
    const STEPS = 2000;
    for (let i = 0; i < STEPS; i++) is += 1 - normalShare(Math.log((brim + sd * normalQuantile((i + 0.5) / STEPS)) / 60) / sigma);
    is /= STEPS;
    const { findings, matters } = handsOf(`Neat\nglass: ${brim} ml\n60 ml gin 40 %\n`);
    const odds = findings.find((f) => f.code === 'glass-overfull')?.odds ?? 0;
    // a spirit that is 3 K cooler or 5 K warmer than 20 °C takes 0.3 or 0.5 % less or more (OIML R 22): less than a twentieth of a deviation
    expect(Math.abs(odds - is)).toBeLessThan(near(is) + 0.006);
    const share = (key: RegExp): number => matters.find((m) => m.code === 'glass-overfull' && key.test(m.input))!.share;
    const all = 2 * (60 * 0.06) ** 2 + sd ** 2;
    for (const [key, part] of [[/^pour/, (60 * 0.06) ** 2], [/^tool\/jigger/, (60 * 0.06) ** 2], [/^glass\/brim/, sd ** 2]] as const) expect(Math.abs(share(key) - part / all)).toBeLessThan(0.01);
  });
});

describe('bands of a neat pour', () => {
  const { figures, matters } = handsOf('Neat\n60 ml gin 40 %\n');
  /** Four deviations of a sample's 2.5 % point, in deviations of a normal: √(0.025 × 0.975 / n) over the density there. */
  const LOOSE = (4 * Math.sqrt((0.025 * 0.975) / MAKERS)) / 0.05845;
  it('strength is the label’s tolerance', () => {
    const { p2_5, p50, p97_5 } = figures['strength']!, sd = 0.3 / Z;
    expect(Math.abs(p2_5 - 39.7)).toBeLessThan(LOOSE * sd);
    expect(Math.abs(p50 - 40)).toBeLessThan(LOOSE * sd);
    expect(Math.abs(p97_5 - 40.3)).toBeLessThan(LOOSE * sd);
  });
  it('volume is a product of two lognormals', () => {
    const { p2_5, p50, p97_5 } = figures['volume']!, sigma = sigmaOf(0.06) * Math.SQRT2;
    for (const [found, z] of [[p2_5, -Z], [p50, 0], [p97_5, Z]] as const) expect(Math.abs(Math.log(found / 60) - z * sigma)).toBeLessThan(LOOSE * sigma);
  });
  it('a figure with one uncertain input hangs on that alone', () => {
    const [only, ...others] = matters.filter((m) => m.figure === 'strength');
    expect([only!.input, others.length]).toEqual(['bottle/gin/strength', 0]);
    expect(only!.share).toBeCloseTo(1, 6);
  });
  it('the grams of ethanol are a product: shares as the squares of the three widths', () => {
    const cv = { pour: 0.06, tool: 0.06, bottle: 0.3 / Z / 40 }, all = cv.pour ** 2 + cv.tool ** 2 + cv.bottle ** 2;
    const by = matters.filter((m) => m.figure === 'ethanol');
    for (const part of ['pour', 'tool'] as const) expect(by.find((m) => m.input.startsWith(part))!.share).toBeCloseTo(cv[part] ** 2 / all, 2);
    expect(by.some((m) => m.input.startsWith('bottle'))).toBe(false);                             // 0.2 %: below a hundredth
  });
});

describe('shares of a variance', () => {
  it('of every figure and margin sum to 1, those too small to tell counted', () => {
    const { program } = compile(parse('Two\n40 ml gin 40 %\n20 g water\n'), tables);
    const p = inKitchen(program, kitchenOf('home', tables)), s = spreads(p, undefined, false), n = p.inputs.length;
    let some = 0;
    for (let k = 0; k < p.probes.length; k++) {
      if (!(s.variance[k]! > 0)) continue;
      let sum = 0;
      for (let i = 0; i < p.inputs.length; i++) sum += partAt(s, k * n + i) / s.variance[k]!;
      expect(sum, p.probes[k]!.name).toBeCloseTo(1, 12);
      some++;
    }
    expect(some).toBeGreaterThan(5);
  });
});

describe('the same kitchens', () => {
  const text = WASH(30), asked = { tables, makers: 600, seed: 3, profile: 'home' };
  it('come out of rows that were run in parts, to the bit', () => {
    const parts = [[0, 1], [1, 250], [250, 250], [250, 600]].map(([from, to]) => makersOfText(text, asked, from!, to!));
    const rows = new Float64Array(parts.reduce((n, part) => n + part.length, 0));
    let at = 0;
    for (const part of parts) { rows.set(part, at); at += part.length; }
    expect(JSON.stringify(handsText(text, asked, rows).hands)).toBe(JSON.stringify(handsText(text, asked).hands));
  });
  it('are others at another seed, and the same at the same', () => {
    const at = (seed: number) => JSON.stringify(handsText(text, { ...asked, seed }).hands.figures);
    expect(at(3)).toBe(at(3));
    expect(at(3)).not.toBe(at(4));
  });
  it('ten thousand say what a hundred thousand say, within both errors', () => {
    const many = handsOf(WASH(30), { makers: 100_000, seed: 5 }), few = handsOf(WASH(30), { makers: 10_000, seed: 5 });
    const ofFat = (h: typeof many) => h.findings.find((f) => f.code === 'fat-set-hard')!, a = ofFat(many), b = ofFat(few);
    expect(Math.abs(a.odds - b.odds)).toBeLessThan(4 * Math.hypot(a.error, b.error));
    expect(a.error).toBeLessThan(b.error / 3);
  }, 60_000);
});
