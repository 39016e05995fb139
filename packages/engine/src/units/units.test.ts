import { expect, test } from 'vitest';
import { celsiusFromFahrenheit, convert, fahrenheitFromCelsius, roundTo, UNITS } from './index.ts';

// NIST Handbook 44, appendix C, general tables of units of measurement
test.each([
  ['us_fl_oz', '29.57353'], ['us_gallon', '3785.412'], ['us_pint', '473.1765'], ['us_cup', '236.5882'], ['us_tbsp', '14.78676'], ['us_tsp', '4.928922'],
  ['imperial_fl_oz', '28.41306'], ['imperial_pint', '568.2612'], ['oz', '28.34952'], ['lb', '453.5924'],
] as const)('%s is as printed', (unit, printed) => {
  // half a unit of the last printed digit
  const half = 0.5 * 10 ** -(printed.split('.')[1] ?? '').length;
  expect(Math.abs(UNITS[unit].factor - Number(printed))).toBeLessThanOrEqual(half * 1.000001);
});

// SI brochure: 1 psi = 6.894 757 kPa; 27 CFR 30.11: the wine gallon is 231 cubic inches
test('pressure, temperature, gallon', () => {
  expect(UNITS.psi.factor).toBeCloseTo(6.894757, 6);
  expect(UNITS.us_gallon.factor).toBeCloseTo(3785.411784, 9);
  expect(celsiusFromFahrenheit(60)).toBeCloseTo(15.5556, 4);
  expect(fahrenheitFromCelsius(-40)).toBe(-40);
});

test('there and back, and never across measures', () => {
  for (const a of Object.keys(UNITS) as (keyof typeof UNITS)[])
    for (const b of Object.keys(UNITS) as (keyof typeof UNITS)[])
      if (UNITS[a].of === UNITS[b].of) expect(convert(convert(3.7, a, b), b, a)).toBeCloseTo(3.7, 12);
      else expect(convert(1, a, b)).toBeNaN();
});

test('rounding to a step', () => {
  expect(roundTo(convert(60, 'ml', 'us_fl_oz'), 0.25)).toBe(2);
  expect(roundTo(0.125, 0.25)).toBe(0.25);
  expect(roundTo(-0.3, 0.25)).toBe(-0.25);
});
