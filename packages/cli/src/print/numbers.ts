import { pointed, say } from '../sentences.ts';

/** A number in its own digits, at most six significant, without an exponent. */
export function number(value: number): string {
  if (!Number.isFinite(value)) return '?';
  const rounded = Number(value.toPrecision(6));
  return Math.abs(rounded) >= 1e9 || (rounded !== 0 && Math.abs(rounded) < 1e-6) ? rounded.toExponential() : pointed(String(rounded));
}

/** How a figure is shown: rounded to the first digit of its spread, with the spread; both ends where they lie unevenly. */
export function withSpread(figure: { readonly value: number; readonly low: number; readonly high: number; readonly skewed: boolean }): string {
  const half = (figure.high - figure.low) / 2;
  if (!(half > Math.abs(figure.value) * 1e-9)) return Math.abs(figure.value) < 0.0005 ? '0' : number(Number(figure.value.toPrecision(4)));
  const power = firstDigit(half);
  const value = at(figure.value, power);
  if (figure.skewed) return `${value} (${at(figure.low, power)} ${say('read.to')} ${at(figure.high, power)})`;
  return `${value} ± ${at(half, power)}`;
}

/** The power of ten of the first digit, after rounding to it: 0.096 is 0.1. */
function firstDigit(half: number): number {
  const power = Math.floor(Math.log10(half));
  return Math.round(half / 10 ** power) === 10 ? power + 1 : power;
}

function at(value: number, power: number): string {
  if (power >= 0) return String(Math.round(value / 10 ** power) * 10 ** power);
  const text = value.toFixed(Math.min(-power, 12));
  return pointed(Number(text) === 0 ? text.replace('-', '') : text);
}

/** `PT16H5M` as `16 h 5 min`. */
export function duration(iso: string): string {
  const parts = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?)?$/.exec(iso);
  if (!parts) return iso;
  const [, days, hours, minutes, seconds] = parts;
  const said = [[days, 'd'], [hours, 'h'], [minutes, 'min'], [seconds, 's']].filter(([count]) => count !== undefined && Number(count) > 0).map(([count, unit]) => `${count} ${unit}`);
  return said.length === 0 ? '0 min' : said.join(' ');
}
