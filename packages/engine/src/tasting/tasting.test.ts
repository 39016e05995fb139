import { describe, expect, test } from 'vitest';
import { friedman, friedmanCritical, leastRight, luck, pageCritical, rankSumDifference, tellingShare } from './index.ts';

describe('difference tests', () => {
  // ISO 4120 / FAO V7180E appendix A, triangle test, 5 and 1 %
  test.each([[6, 5, 6], [10, 7, 8], [20, 11, 13], [33, 17, 18], [54, 25, 27]] as const)('triangle with %i answers', (n, five, one) => {
    expect(leastRight(n, 0.05, 1 / 3)).toBe(five);
    expect(leastRight(n, 0.01, 1 / 3)).toBe(one);
  });
  // ISO 5495 two-sided, from memory
  test.each([[12, 10], [25, 18], [50, 33]] as const)('paired, either way, %i answers', (n, least) => expect(leastRight(n, 0.05, 0.5, 2)).toBe(least));
  test('too few answers prove nothing', () => expect(leastRight(5, 0.001, 0.5)).toBeUndefined());
  test('luck is a probability that falls', () => {
    for (let n = 1; n <= 40; n++) {
      expect(luck(n, 0, 1 / 3)).toBeCloseTo(1, 12);
      for (let x = 0; x < n; x++) expect(luck(n, x + 1, 1 / 3)).toBeLessThan(luck(n, x, 1 / 3));
    }
  });
  // ISO 5495:2005/Amd 1:2016: 32 of 44, between 0.19 and 0.71
  test('share that tells apart', () => {
    const share = tellingShare(44, 32, 0.5, 1.96);
    expect(share.low).toBeCloseTo(0.19, 2);
    expect(Math.abs(share.high - 0.71)).toBeLessThan(0.01);
  });
});

describe('rankings', () => {
  // Friedman's table of exact 5 % points: 3 samples 5 tasters 6.4, 4 samples 4 tasters 7.8; from memory
  test('exact critical values', () => {
    expect(friedmanCritical(3, 5, 0.05)).toBeCloseTo(6.4, 6);
    expect(friedmanCritical(4, 4, 0.05)).toBeCloseTo(7.8, 6);
    expect(friedmanCritical(6, 5, 0.05)).toBeUndefined();
    expect(friedmanCritical(3, 2, 0.05)).toBeUndefined();
  });
  // ISO 8587, the example of 8 tasters and 5 samples
  test('the standard example', () => {
    expect(friedman([17, 31, 32, 23, 17], 8)).toBeCloseTo(10.6, 6);
    expect(rankSumDifference(8, 5, 1.96)).toBeCloseTo(12.4, 1);
    expect(pageCritical(4, 8, 1.645)).toBeCloseTo(213.4, 1);
    expect(friedman([10, 10, 10], 5)).toBeCloseTo(0, 12);
  });
});
