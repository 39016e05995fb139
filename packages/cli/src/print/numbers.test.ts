// Rounding to the first digit of the spread: common practice of measurement reports (GUM, JCGM 100:2008, 7.2.6: one or two digits of the uncertainty suffice).
import { describe, expect, it } from 'vitest';
import { duration, number, withSpread } from './numbers.ts';

const figure = (value: number, low: number, high: number, skewed = false) => ({ value, low, high, skewed });

describe('a figure with its spread', () => {
  it.each([
    ['16.2 ± 0.8', figure(16.234, 15.4, 17.0)],
    ['16.23 ± 0.05', figure(16.234, 16.184, 16.284)],
    ['210 ± 20', figure(213, 193, 236)],
    ['-5.3 ± 0.4', figure(-5.31, -5.7, -4.9)],
    ['0.0 ± 0.1', figure(-0.01, -0.105, 0.085)],
    ['4.0 ± 0.1', figure(4.02, 3.924, 4.116)],
    ['40', figure(40, 40, 40)],
    ['2.4 (2.3 to 2.9)', figure(2.41, 2.31, 2.92, true)],
  ])('%s', (shown, given) => { expect(withSpread(given)).toBe(shown); });
});

describe('a number', () => {
  it.each([[0.1 + 0.2, '0.3'], [1 / 3, '0.333333'], [350, '350'], [1e-9, '1e-9'], [Number.NaN, '?']])('%s is %s', (value, shown) => { expect(number(value)).toBe(shown); });
});

describe('a duration of ISO 8601', () => {
  it.each([['PT16H5M', '16 h 5 min'], ['P2DT1H', '2 d 1 h'], ['PT0S', '0 min'], ['PT25S', '25 s'], ['soon', 'soon']])('%s is %s', (iso, shown) => { expect(duration(iso)).toBe(shown); });
});
