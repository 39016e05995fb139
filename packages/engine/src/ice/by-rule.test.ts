import { expect, test } from 'vitest';
import { meltForHeat, shakenDilutionByRule, stirredDilutionByRule } from './by-rule.ts';

// the rule's own points, from memory: 0.381 and 0.541 at 25 %, 0.45 and 0.649 at 40 %
test('rules of thumb', () => {
  expect(stirredDilutionByRule(0.25)).toBeCloseTo(0.381, 3);
  expect(shakenDilutionByRule(0.4)).toBeCloseTo(0.649, 3);
  for (let a = 0.1; a < 0.5; a += 0.02) {
    expect(stirredDilutionByRule(a + 0.02)).toBeGreaterThan(stirredDilutionByRule(a));
    expect(shakenDilutionByRule(a)).toBeGreaterThan(stirredDilutionByRule(a));
  }
});
test('a heat balance: 334 J melt a gram at 0 °C, colder ice melts less, enough of it nothing', () => {
  expect(meltForHeat(334, 10, 0, 0, 334, 2.1, 4.2)).toBeCloseTo(1, 12);
  expect(meltForHeat(1000, 20, -10, 0, 334, 2.1, 4.2)).toBeLessThan(meltForHeat(1000, 20, 0, 0, 334, 2.1, 4.2));
  expect(meltForHeat(100, 200, -18, 0, 334, 2.1, 4.2)).toBe(0);
});
