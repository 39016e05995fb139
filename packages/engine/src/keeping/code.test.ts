import { describe, expect, it } from 'vitest';
import { coolingFails, HOLDING, lastDay, needsAssessment } from './code.ts';

describe('food code, interaction of pH and water activity', () => {
  // Every cell of tables A and B and the borders between them.
  it.each([
    ['A', 0.92, 7, false], ['A', 0.921, 5.6, false], ['A', 0.921, 5.61, true], ['A', 0.95, 5.61, true], ['A', 0.951, 4.6, false], ['A', 0.951, 4.61, true], ['A', 0.99, 6, true], ['A', 0.93, 5, false],
    ['B', 0.879, 7, false], ['B', 0.88, 5, false], ['B', 0.88, 5.01, true], ['B', 0.9, 5.2, true], ['B', 0.901, 4.6, false], ['B', 0.901, 4.61, true], ['B', 0.92, 4.4, false], ['B', 0.921, 4.19, false], ['B', 0.921, 4.2, true], ['B', 0.99, 4.0, false],
  ] as const)('table %s, aw %f, pH %f: assess %s', (which, aw, pH, assess) => { expect(needsAssessment(which, aw, pH)).toBe(assess); });
});

describe('times', () => {
  it('57 to 21 °C in 2 h, to 5 °C in 6 h (3-501.14)', () => {
    expect(coolingFails(57, 22, 4)).toBe(1); expect(coolingFails(57, 21, 6)).toBe(2); expect(coolingFails(60, 20, 5)).toBe(0);
  });
  it('from room warmth 5 °C is reached in one go', () => { expect(coolingFails(22, 15, 5)).toBe(0); expect(coolingFails(22, 15, 6)).toBe(1); });
  it('made on Monday, used by Sunday', () => { expect(lastDay(1)).toBe(0); expect(lastDay(0)).toBe(6); });
  it('cold is 5 °C, hot 57', () => { expect(HOLDING.cold_C).toBe(5); expect(HOLDING.hot_C).toBe(57); });
});
