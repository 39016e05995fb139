import { expect, test } from 'vitest';
import { fillTolerance, labelledStrength, mustStateStrength, strengthTolerance } from './index.ts';

// Regulation (EU) 1169/2011, Annex XII
test('strength on an EU label', () => {
  expect(mustStateStrength(1.2)).toBe(false);
  expect(mustStateStrength(1.3)).toBe(true);
  expect([strengthTolerance('beer', 5.5), strengthTolerance('beer', 5.6), strengthTolerance('sparkling wine'), strengthTolerance('still wine'), strengthTolerance('macerated fruit'), strengthTolerance('liqueur', 17)]).toEqual([0.5, 1, 1, 0.5, 1.5, 0.3]);
});
// 27 CFR 19.356
test('strength and fill on a US label', () => {
  expect(labelledStrength(40, 39.7)).toBe('pass');
  expect(labelledStrength(40, 39.69)).toBe('fail');
  expect([1000, 750, 376, 375, 101, 100].map(fillTolerance)).toEqual([1.5, 2, 2, 3, 3, 4.5]);
});
