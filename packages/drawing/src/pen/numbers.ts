import type { Figure } from '@washline/engine';
import { pointed, words } from '../words.ts';
import { inUnits } from './units.ts';

const THIN = '\u2009';

/** Decimals at which a value is shown: to the first digit of half its spread, one more where that digit is 1; between `least` and 2. */
export function decimalsFor(low: number, high: number, least = 0): number {
  const half = Math.abs(high - low) / 2;
  if (!(half > 0)) return Math.max(least, 1);
  const place = Math.floor(Math.log10(half));
  const first = half / 10 ** place;
  return Math.min(2, Math.max(least, -place + (first < 2 ? 1 : 0), 0));
}

/** A number as it is set: true minus, thousands by a thin space. */
export function shown(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  const [whole = '0', part] = text.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole;
  const sign = value < 0 && Number(text) !== 0 ? '−' : '';
  return sign + grouped + (part === undefined ? '' : pointed(`.${part}`));
}

/** A count: from a thousand on in groups of three. */
export const counted = (count: number): string => String(Math.round(count)).replace(/\B(?=(\d{3})+$)/g, THIN);

/** Units as the drawing sets them. */
export function unitShown(unit: string): string {
  if (unit === 'mL') return 'ml';
  if (unit === 'kg/m3') return 'kg/m³';
  if (unit === 'pH') return '';
  return unit;
}

/** The spread after a value: "± 0.7", or "13.9 to 16.8" where its sides differ. Empty when there is none. */
export function spreadShown(figure: Pick<Figure, 'value' | 'low' | 'high' | 'skewed'>, decimals: number): string {
  if (!(figure.high > figure.low)) return '';
  if (figure.skewed) return words('to', { low: shown(figure.low, decimals), high: shown(figure.high, decimals) });
  return `± ${shown((figure.high - figure.low) / 2, decimals)}`;
}

/** Value and unit, as "15.3 % vol". */
export function figureShown(of: Pick<Figure, 'value' | 'low' | 'high' | 'unit'>, atLeast?: number): string {
  const figure = inUnits(of), unit = unitShown(figure.unit), least = atLeast ?? leastDecimals(figure.unit);
  const number = shown(figure.value, decimalsFor(figure.low, figure.high, least));
  return unit === '' ? number : `${number} ${unit}`;
}

/** Lengths, strengths, degrees, acid and pH are never shown without a decimal. */
export function leastDecimals(unit: string): number {
  if (unit === 'pH') return 2;
  return unit === 'mm' || unit === '% vol' || unit === '°C' || unit === 'EUR' || unit === 'cl' || unit === 'oz' ? 1 : 0;
}

/** A volume without a spread of its own, from mL: to the whole ml, a tenth of a centilitre or an ounce. */
export function volumeShown(mL: number): string { const { value, unit } = inUnits({ value: mL, low: mL, high: mL, unit: 'mL' }); return `${shown(value, unit === 'mL' ? 0 : 1)} ${unitShown(unit)}`; }

/** A temperature without its spread, from °C. */
export function degreesShown(celsius: number, decimals = 1): string { const { value, unit } = inUnits({ value: celsius, low: celsius, high: celsius, unit: '°C' }); return `${shown(value, unit === '°C' ? decimals : 0)} ${unit}`; }
