/** Every factor follows from a definition: the inch, the pound, the US and imperial gallons, the litre, the standard atmosphere. */
const INCH_MM = 25.4;
const POUND_G = 453.59237;
const GRAVITY = 9.80665;
const US_GALLON_ML = 231 * (INCH_MM / 10) ** 3;
const IMPERIAL_GALLON_ML = 4546.09;
const INCH2_M2 = (INCH_MM / 1000) ** 2;

/** What a unit measures; factors turn it into mL, g, mm, kPa or kJ. */
export type Dimension = 'volume' | 'mass' | 'length' | 'pressure' | 'energy' | 'time';
export interface Unit { readonly of: Dimension; readonly factor: number }

/**
 * Exact units by name: factor to mL, g, mm, kPa, kJ or s.
 * @source nist-hb44 appendix C; si-brochure 9th ed.
 */
export const UNITS = {
  ml: { of: 'volume', factor: 1 },
  cl: { of: 'volume', factor: 10 },
  dl: { of: 'volume', factor: 100 },
  l: { of: 'volume', factor: 1000 },
  us_gallon: { of: 'volume', factor: US_GALLON_ML },
  us_quart: { of: 'volume', factor: US_GALLON_ML / 4 },
  us_pint: { of: 'volume', factor: US_GALLON_ML / 8 },
  us_cup: { of: 'volume', factor: US_GALLON_ML / 16 },
  us_gill: { of: 'volume', factor: US_GALLON_ML / 32 },
  us_fl_oz: { of: 'volume', factor: US_GALLON_ML / 128 },
  us_tbsp: { of: 'volume', factor: US_GALLON_ML / 256 },
  us_tsp: { of: 'volume', factor: US_GALLON_ML / 768 },
  us_fl_dram: { of: 'volume', factor: US_GALLON_ML / 1024 },
  us_minim: { of: 'volume', factor: US_GALLON_ML / 61440 },
  imperial_gallon: { of: 'volume', factor: IMPERIAL_GALLON_ML },
  imperial_quart: { of: 'volume', factor: IMPERIAL_GALLON_ML / 4 },
  imperial_pint: { of: 'volume', factor: IMPERIAL_GALLON_ML / 8 },
  imperial_gill: { of: 'volume', factor: IMPERIAL_GALLON_ML / 32 },
  imperial_fl_oz: { of: 'volume', factor: IMPERIAL_GALLON_ML / 160 },
  metric_cup: { of: 'volume', factor: 250 },
  metric_tbsp: { of: 'volume', factor: 15 },
  metric_tsp: { of: 'volume', factor: 5 },
  australian_tbsp: { of: 'volume', factor: 20 },
  g: { of: 'mass', factor: 1 },
  mg: { of: 'mass', factor: 0.001 },
  kg: { of: 'mass', factor: 1000 },
  lb: { of: 'mass', factor: POUND_G },
  oz: { of: 'mass', factor: POUND_G / 16 },
  grain: { of: 'mass', factor: POUND_G / 7000 },
  mm: { of: 'length', factor: 1 },
  cm: { of: 'length', factor: 10 },
  inch: { of: 'length', factor: INCH_MM },
  kpa: { of: 'pressure', factor: 1 },
  pa: { of: 'pressure', factor: 0.001 },
  bar: { of: 'pressure', factor: 100 },
  atm: { of: 'pressure', factor: 101.325 },
  psi: { of: 'pressure', factor: ((POUND_G / 1000) * GRAVITY) / INCH2_M2 / 1000 },
  kj: { of: 'energy', factor: 1 },
  j: { of: 'energy', factor: 0.001 },
  kcal: { of: 'energy', factor: 4.184 },
  s: { of: 'time', factor: 1 },
  min: { of: 'time', factor: 60 },
  h: { of: 'time', factor: 3600 },
  d: { of: 'time', factor: 86400 },
} as const satisfies Readonly<Record<string, Unit>>;
export type UnitName = keyof typeof UNITS;

/**
 * The same quantity in another unit.
 * @param value in `from`, any
 * @param from,to units of one measure
 * @returns in `to`; NaN where the two do not measure the same
 * @source nist-hb44 appendix C
 */
export function convert(value: number, from: UnitName, to: UnitName): number {
  const a = UNITS[from], b = UNITS[to];
  return a.of === b.of ? (value * a.factor) / b.factor : NaN;
}

/** °C of a temperature in °F. @param fahrenheit any @returns °C @source nist-hb44 appendix C */
export function celsiusFromFahrenheit(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8;
}

/** °F of a temperature in °C. @param celsius any @returns °F @source nist-hb44 appendix C */
export function fahrenheitFromCelsius(celsius: number): number {
  return celsius * 1.8 + 32;
}

/**
 * The nearest whole multiple of a step, as a jigger or a card would say it.
 * @param value any
 * @param step above 0
 * @returns a multiple of `step`, halves away from zero
 * @source none - definition
 */
export function roundTo(value: number, step: number): number {
  return Math.sign(value) * Math.floor(Math.abs(value) / step + 0.5 + 1e-12) * step;
}

/** Drops in a millilitre from a dropper with water: a convention of pharmacy, no definition; alcohol gives two to three times as many. @source common-practice */
export const DROPS_PER_ML = 20;
