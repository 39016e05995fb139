import { expect, test } from 'vitest';
import { juiceCost, parLevel, pourCost, priceFor, usageVariance } from './index.ts';

// arithmetic of the trade (common practice, no source)
test('cost and price undo each other', () => {
  expect(pourCost(2.8, 14)).toBeCloseTo(20, 12);
  for (let cost = 0.5; cost < 9; cost += 0.7) expect(pourCost(cost, priceFor(cost, 0.22))).toBeCloseTo(22, 10);
  expect(priceFor(3, 0.2, 0.1)).toBeCloseTo(16.5, 12);
});
test('juice, stock, variance', () => {
  expect(juiceCost(60, 0.5, 30, 0)).toBeCloseTo(1, 12);
  expect(juiceCost(30, 0.4, 30, 0.08)).toBeGreaterThan(0.4);
  expect(parLevel(100, 2, 5, 0)).toBe(700);
  expect(usageVariance(110, 100)).toBeCloseTo(10, 12);
});
