import { describe, expect, test } from 'vitest';
import { evenDeviates, normalQuantile, quantiles } from './index.ts';

describe('even deviates', () => {
  const MAKERS = 400;
  // McKay, Beckman & Conover 1979, Technometrics 21, 239: one maker in each strip
  test.each([1, 2, 3, 8, 40])('of %i inputs: every input has one maker in each strip', (width) => {
    const rows = evenDeviates(width, MAKERS);
    for (let k = 0; k < width; k++) {
      const column = Array.from({ length: MAKERS }, (_, m) => rows[m * width + k]!).sort((a, b) => a - b);
      column.forEach((z, strip) => { expect(z).toBe(normalQuantile((strip + 0.5) / MAKERS)); });
    }
  });
  // the sum of n independent standard normals is normal with variance n
  test.each([2, 3, 5, 9])('of %i inputs: their sum is as wide as of independent ones', (width) => {
    const rows = evenDeviates(width, MAKERS), sums = new Float64Array(MAKERS);
    for (let m = 0; m < MAKERS; m++) for (let k = 0; k < width; k++) sums[m]! += rows[m * width + k]! / Math.sqrt(width);
    const square = sums.reduce((sum, z) => sum + z * z, 0) / MAKERS;
    expect(Math.abs(square - 1)).toBeLessThan(0.03);
    // standard error of a quantile of independent draws, twice
    for (const p of [0.025, 0.25, 0.5, 0.75, 0.975]) {
      const z = normalQuantile(p), error = Math.sqrt((p * (1 - p)) / MAKERS) / (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI));
      expect(Math.abs(quantiles(sums, 1, 0, [p])[0]! - z)).toBeLessThan(2 * error);
    }
  });
  // Owen 1994, J. Am. Stat. Assoc. 89, 1517: independent draws are correlated by 1/sqrt(400) = 0.05 on the average
  test.each([2, 3, 5, 9])('of %i inputs: no two go along with each other', (width) => {
    const rows = evenDeviates(width, MAKERS);
    for (let a = 0; a < width; a++) {
      for (let b = 0; b < a; b++) {
        let sum = 0;
        for (let m = 0; m < MAKERS; m++) sum += rows[m * width + a]! * rows[m * width + b]!;
        expect(Math.abs(sum / MAKERS)).toBeLessThan(0.02);
      }
    }
  });
  test('two inputs fill their square: as many makers in each of sixteen cells, within the deviation of independent draws', () => {
    const rows = evenDeviates(2, MAKERS), cells = new Int32Array(16), quarter = (z: number) => (z < normalQuantile(0.25) ? 0 : z < 0 ? 1 : z < normalQuantile(0.75) ? 2 : 3);
    for (let m = 0; m < MAKERS; m++) cells[4 * quarter(rows[2 * m]!) + quarter(rows[2 * m + 1]!)]!++;
    for (const n of cells) expect(Math.abs(n - 25)).toBeLessThanOrEqual(5);
  });
  test('of nothing there is nothing', () => expect(evenDeviates(0, 5).length).toBe(0));
});
