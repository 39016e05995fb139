import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { draw, drawNormal, hashOf, normalQuantile, normalShare, pointAt, pointOf, rootBetween, Z95 } from './index.ts';

describe('root between two points', () => {
  test('finds roots known in closed form', () => {
    expect(rootBetween((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 12);
    expect(rootBetween(Math.cos, 3, 0)).toBeCloseTo(Math.PI / 2, 12);
    expect(rootBetween((x) => Math.exp(x) - 1e-9, -100, 10)).toBeCloseTo(Math.log(1e-9), 10);
    expect(rootBetween((x) => x ** 9, -1, 3, 1e-9)).toBeCloseTo(0, 8);
  });
  test('says NaN where the ends do not bracket', () => expect(rootBetween((x) => x * x + 1, -1, 1)).toBeNaN());
  test('finds any cubic root in its bracket', () => {
    fc.assert(fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (r) => {
      const x = rootBetween((v) => (v - r) * (v * v + 1), -51, 52);
      return Math.abs(x - r) < 1e-11;
    }));
  });
});

describe('normal', () => {
  // quantiles as printed in tables of the normal distribution (Abramowitz & Stegun table 26.5; NIST handbook 1.3.6.7.1)
  test.each([[0.5, 0], [0.975, 1.959963984540054], [0.995, 2.5758293035489], [0.9, 1.2815515655446], [0.999, 3.0902323061678], [0.001, -3.0902323061678], [1e-9, -5.9978070150076]])('quantile of %f', (p, z) => {
    expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(1e-9);
  });
  test('quantile and share undo each other over the whole range', () => {
    for (let e = -1; e > -300; e--) expect(Math.abs(normalShare(normalQuantile(10 ** e)) / 10 ** e - 1)).toBeLessThan(1e-9);
    for (let p = 0.0005; p < 1; p += 0.0005) expect(Math.abs(normalShare(normalQuantile(p)) - p)).toBeLessThan(1e-12);
  });
  test('ends and outside', () => {
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(normalQuantile(1)).toBe(Infinity);
    expect(normalQuantile(-0.1)).toBeNaN();
    expect(normalQuantile(NaN)).toBeNaN();
  });
});

describe('keyed draws', () => {
  test('are the same for the same three, and other for any other', () => {
    const k = hashOf('bottle/white rum/strength');
    expect(draw(7, k, 3)).toBe(draw(7, k, 3));
    expect(new Set([draw(7, k, 3), draw(8, k, 3), draw(7, k + 1, 3), draw(7, k, 4)]).size).toBe(4);
  });
  test('the hash of a text is pinned, since draws hang on it', () => {
    // worked out apart from this code, from the published steps of FNV-1a and murmur3
    expect(hashOf('')).toBe(2872998923);
    expect(hashOf('ice')).toBe(1258342884);
    expect(hashOf('½')).toBe(1689302863);
    expect(draw(7, hashOf('ice'), 3)).toBe(0.14881355769952187);
  });
  test('are evenly spread (chi-square over 100 bins, 99.99 % point 162.8 at 99 degrees)', () => {
    const n = 200_000, bins = new Array<number>(100).fill(0);
    for (let i = 0; i < n; i++) bins[Math.floor(draw(1, hashOf('pour'), i) * 100)]!++;
    expect(bins.reduce((s, b) => s + (b - n / 100) ** 2 / (n / 100), 0)).toBeLessThan(162.8);
  });
  test('are unrelated between keys, makers and seeds (4 sigma)', () => {
    const n = 20_000;
    for (const [a, b] of [[hashOf('a'), hashOf('b')], [1, 2], [0, 1]] as const)
      for (const shift of [0, 1]) {
        let sum = 0;
        for (let i = 0; i < n; i++) sum += drawNormal(5, a, i) * drawNormal(5, b, i + shift);
        expect(Math.abs(sum) / Math.sqrt(n)).toBeLessThan(4);
      }
    let seeds = 0;
    for (let i = 0; i < n; i++) seeds += drawNormal(i, 9, 0) * drawNormal(i + 1, 9, 0);
    expect(Math.abs(seeds) / Math.sqrt(n)).toBeLessThan(4);
  });
  test('normal draws have mean 0 and deviation 1 (4 sigma)', () => {
    const n = 100_000;
    let s = 0, s2 = 0;
    for (let i = 0; i < n; i++) { const z = drawNormal(2, hashOf('x'), i); s += z; s2 += z * z; }
    expect(Math.abs(s / Math.sqrt(n))).toBeLessThan(4);
    expect(Math.abs(s2 / n - 1) * Math.sqrt(n / 2)).toBeLessThan(4);
  });
});

describe('points of a spread', () => {
  test('every kind has its value in the middle', () => {
    for (const s of [{ kind: 'exact' }, { kind: 'normal', sd: 2 }, { kind: 'lognormal', cv: 0.3 }, { kind: 'range', low: 5, high: 20 }] as const)
      expect(pointOf(s, 10, 0.5)).toBe(10);
  });
  test('95 % points', () => {
    expect(pointOf({ kind: 'range', low: 5, high: 20 }, 10, 0.025)).toBeCloseTo(5, 12);
    expect(pointOf({ kind: 'range', low: 5, high: 20 }, 10, 0.975)).toBeCloseTo(20, 12);
    expect(pointOf({ kind: 'normal', sd: 1 }, 0, 0.975)).toBeCloseTo(Z95, 12);
    expect(pointOf({ kind: 'lognormal', cv: 0.2 }, 60, 0.975)).toBeCloseTo(60 * Math.exp(1.959963984540054 * Math.sqrt(Math.log(1.04))), 9);
  });
  test('a lognormal has its coefficient of variation', () => {
    let s = 0, s2 = 0;
    const n = 20_000;
    for (let i = 0; i < n; i++) { const x = pointOf({ kind: 'lognormal', cv: 0.25 }, 1, (i + 0.5) / n); s += x; s2 += x * x; }
    expect(Math.sqrt(s2 / n - (s / n) ** 2) / (s / n)).toBeCloseTo(0.25, 2);
  });
  test('min and max hold every kind', () => {
    expect(pointOf({ kind: 'normal', sd: 5, max: 0 }, -5, 0.999)).toBe(0);
    expect(pointOf({ kind: 'range', low: 1, high: 3, min: 0.5 }, 2, 1e-6)).toBe(0.5);
    expect(pointAt({ kind: 'exact', min: 2 }, 1, 0)).toBe(2);
  });
  test('rise with p', () => {
    fc.assert(fc.property(fc.double({ min: 0.001, max: 0.99, noNaN: true }), (p) =>
      pointOf({ kind: 'range', low: 1, high: 9 }, 4, p) < pointOf({ kind: 'range', low: 1, high: 9 }, 4, p + 0.005)));
  });
});
