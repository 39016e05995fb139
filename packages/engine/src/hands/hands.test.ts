import { describe, expect, it } from 'vitest';
import { normalShare, pointAt, quantiles } from '../numeric/index.ts';
import type { Input } from '../program/inputs.ts';
import { Named, Probe, program, type Program } from '../program/program.ts';
import type { Spread } from '../provenance/types.ts';
import { drawMaker, drawsOf, keysOf, runMakers } from '../program/draws.ts';

const input = (key: string, value: number, spread: Spread): Input => ({ key, value, unit: 'g', spread, grade: 'trade', source: 'none', role: 'measure', row: 'written' });
const normal = (sd: number): Spread => ({ kind: 'normal', sd });
const sumOf = (inputs: readonly Input[], weights: readonly number[]): Program => program(inputs, inputs.map(() => 0), 1, [], new Set(), [
  new Named(new Probe('sum', 'drink', 'g', 'sum', [], 1 << 30), ({ x }, out, i) => { let s = 0; for (let k = 0; k < weights.length; k++) s += weights[k]! * x[k]!; out[i] = s; }),
], []);
const ALL = Uint8Array.of(1);
const own = (i: Input) => i.spread;

describe('draws of many kitchens', () => {
  const three = [input('a', 10, normal(1)), input('b', 20, normal(2)), input('c', 5, normal(0.5))];
  const weights = [1, -2, 4];
  // closed form: a sum of independent normals is normal, its variance the weighted sum (any textbook of probability)
  const mean = 10 - 40 + 20, sd = Math.sqrt(1 + 16 + 4);

  it('gives a linear figure the quantiles of the closed form', () => {
    const p = sumOf(three, weights);
    const record = runMakers(p, drawsOf(p, own), ALL, 1, 0, 40_000);
    const [low, middle, high] = quantiles(record, 1, 0, [0.025, 0.5, 0.975]) as [number, number, number];
    expect(Math.abs(low - (mean - 1.959964 * sd))).toBeLessThan(0.03 * 4 * sd / 4);
    expect(Math.abs(middle - mean)).toBeLessThan(0.03 * sd);
    expect(Math.abs(high - (mean + 1.959964 * sd))).toBeLessThan(0.03 * sd);
  });
  it('finds a normal beyond a limit as often as the normal distribution says', () => {
    const p = sumOf([input('only', 3, normal(2))], [1]);
    const n = 40_000, record = runMakers(p, drawsOf(p, own), ALL, 5, 0, n);
    for (const limit of [0, 3, 5, 7]) {
      const share = record.filter((v) => v > limit).length / n, is = 1 - normalShare((limit - 3) / 2);
      expect(Math.abs(share - is)).toBeLessThan(4 * Math.sqrt((is * (1 - is)) / n));
    }
  });
  it('says with ten thousand what it says with a million, within the sampling error', () => {
    const p = sumOf(three, weights), draws = drawsOf(p, own);
    const few = runMakers(p, draws, ALL, 3, 0, 10_000), many = runMakers(p, draws, ALL, 3, 0, 1_000_000);
    const density = 0.0584 / sd;                                                                  // of a normal at its 2.5 % point
    for (const share of [0.025, 0.975]) {
      expect(Math.abs(quantiles(few, 1, 0, [share])[0]! - quantiles(many, 1, 0, [share])[0]!)).toBeLessThan((4 * Math.sqrt((0.025 * 0.975) / 10_000)) / density);
    }
  });
  it('leaves the draws of the others alone when an input comes in', () => {
    const p = sumOf(three, weights), more = sumOf([input('new', 1, normal(3)), ...three], [0, ...weights]);
    const x = new Float64Array(3), y = new Float64Array(4);
    for (let maker = 0; maker < 50; maker++) {
      drawMaker(x, p, drawsOf(p, own), keysOf(drawsOf(p, own), 9), maker);
      drawMaker(y, more, drawsOf(more, own), keysOf(drawsOf(more, own), 9), maker);
      expect([...y.subarray(1)]).toEqual([...x]);
    }
  });
  it('is the same in any order of the inputs', () => {
    const there = runMakers(sumOf(three, [1, 1, 1]), drawsOf(sumOf(three, [1, 1, 1]), own), ALL, 2, 0, 200);
    const turned = [...three].reverse();
    const back = runMakers(sumOf(turned, [1, 1, 1]), drawsOf(sumOf(turned, [1, 1, 1]), own), ALL, 2, 0, 200);
    for (let i = 0; i < 200; i++) expect(back[i]).toBeCloseTo(there[i]!, 12);
  });
  it('is the same however the makers are shared out', () => {
    const p = sumOf(three, weights), draws = drawsOf(p, own);
    const whole = runMakers(p, draws, ALL, 4, 0, 1000);
    const parts = [[0, 1], [1, 400], [400, 1000]].flatMap(([from, to]) => [...runMakers(p, draws, ALL, 4, from!, to!)]);
    expect(parts).toEqual([...whole]);
  });
  it('does not draw what is exact, nor beyond its ends', () => {
    const p = sumOf([input('fixed', 2, { kind: 'exact' }), input('ice', -1, { kind: 'normal', sd: 3, max: 0 })], [0, 1]);
    const draws = drawsOf(p, own);
    expect([...draws.index]).toEqual([1]);
    expect(Math.max(...runMakers(p, draws, ALL, 1, 0, 500))).toBe(0);
    expect(pointAt({ kind: 'normal', sd: 3, max: 0 }, -1, 5)).toBe(0);
  });
});

describe('quantiles of a column', () => {
  it('stand between neighbours as definition 7 of Hyndman and Fan has it', () => {
    expect(quantiles(Float64Array.of(4, 1, 3, 2), 1, 0, [0, 0.25, 0.5, 1])).toEqual([1, 1.75, 2.5, 4]);
  });
  it('leave out what cannot be known', () => {
    expect(quantiles(Float64Array.of(NaN, 5, NaN, 7), 1, 0, [0.5])).toEqual([6]);
    expect(quantiles(Float64Array.of(NaN), 1, 0, [0.5])[0]).toBeNaN();
  });
  it('agree with sorting, whatever stands in the column', () => {
    const a = Float64Array.from({ length: 501 }, (_, i) => Math.round(50 * Math.sin(i * i)));
    const sorted = Float64Array.from(a).sort();
    for (const p of [0.025, 0.31, 0.5, 0.975]) expect(quantiles(a, 1, 0, [p])[0]).toBeCloseTo(sorted[Math.floor(500 * p)]! + (500 * p - Math.floor(500 * p)) * (sorted[Math.ceil(500 * p)]! - sorted[Math.floor(500 * p)]!), 12);
  });
});
