import type { Spread } from '../provenance/types.ts';
import { normalQuantile } from './normal.ts';

/** Standard normal at 97.5 %. @source wichura1988 algorithm AS 241 */
export const Z95 = normalQuantile(0.975);

/**
 * Which value stands at this many standard deviations of a spread about a value?
 * @param spread how far the true value may lie; a lognormal's and a range's median is `value`, a range is a split normal
 * @param value nominal, in the unit of the spread
 * @param z standard normal deviate, any
 * @returns in the same unit, held between the spread's `min` and `max`
 * @source none - definition
 */
export function pointAt(spread: Spread, value: number, z: number): number {
  let x = value;
  switch (spread.kind) {
    case 'exact': break;
    case 'normal': x = value + spread.sd * z; break;
    case 'lognormal': x = value * Math.exp(Math.sqrt(Math.log1p(spread.cv * spread.cv)) * z); break;
    case 'range': {
      const arm = z < 0 ? value - spread.low : spread.high - value;
      if (arm > 0) x = value + (arm / Z95) * z;
    }
  }
  if (spread.min !== undefined && x < spread.min) return spread.min;
  if (spread.max !== undefined && x > spread.max) return spread.max;
  return x;
}

/**
 * Below which value does the true one lie with this probability?
 * @param spread,value as in `pointAt`
 * @param p 0..1, ends excluded for kinds without `min` and `max`
 * @returns in the unit of the spread
 * @source none - definition
 */
export function pointOf(spread: Spread, value: number, p: number): number {
  return pointAt(spread, value, p === 0.5 ? 0 : normalQuantile(p));
}

/**
 * The 2.5 and 97.5 % points of a spread.
 * @param spread,value as in `pointAt`
 * @returns low and high in the unit of the spread; equal for `exact`
 * @source none - definition
 */
export function reach(spread: Spread, value: number): { readonly low: number; readonly high: number } {
  return { low: pointAt(spread, value, -Z95), high: pointAt(spread, value, Z95) };
}
