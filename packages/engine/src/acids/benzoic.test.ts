import { expect, test } from 'vitest';
import acids from '../../../../data/physics/acids.json' with { type: 'json' };

const { pK25, coef: [a = NaN, b = NaN, c = NaN], to_pct, residual } = acids.benzoic;
/** Apparent pK of benzoic acid in ethanol and water at 25 °C, as a meter set in water reads it, over % of ethanol by weight; data/sources.tsv, benzoic-ethanol, table 1. */
const PRINTED = [[0, 4.21], [12.2, 4.444], [25.2, 4.918], [44.1, 5.692], [64.8, 6.424]] as const;

test('the cubic goes through the five printed points, its largest error as stated', () => {
  const off = PRINTED.map(([w, pK]) => Math.abs(pK25 + a * w + b * w ** 2 + c * w ** 3 - pK));
  expect(pK25).toBe(4.21);
  expect(Math.max(...off)).toBeLessThan(1.1 * residual);
  expect(Math.max(...off)).toBeGreaterThan(residual / 1.4);
  expect(Math.abs(to_pct - 64.8)).toBeLessThan(0.5);
});
