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

/** Numbers that `slopesOf` gives. @source none - definition */
export const SLOPES = 5;

/**
 * A spread as what a deviate takes it by, for points drawn by the thousand.
 * @param spread,value as in `pointAt`
 * @returns change per deviation below and above the value (of its logarithm where the last is 1), least and most, 1 for a lognormal
 * @source none - definition
 */
export function slopesOf(spread: Spread, value: number): readonly [number, number, number, number, number] {
  const { min = -Infinity, max = Infinity } = spread;
  const slope = (arm: number) => (arm > 0 ? arm / Z95 : 0);
  switch (spread.kind) {
    case 'exact': return [0, 0, min, max, 0];
    case 'normal': return [spread.sd, spread.sd, min, max, 0];
    case 'lognormal': { const s = Math.sqrt(Math.log1p(spread.cv * spread.cv)); return [s, s, min, max, 1]; }
    case 'range': return [slope(value - spread.low), slope(spread.high - value), min, max, 0];
  }
}

/**
 * `pointAt` by what `slopesOf` gave, to the bit, of many inputs at once: writes into `x` at the places of `index`.
 * @param slopes `SLOPES` numbers an entry of `index`
 * @param nominal the inputs' values, by place
 * @param z deviates, one an entry of `index`, from `from` on
 * @source none - definition
 */
export function pointsInto(x: Float64Array, index: Int32Array, slopes: Float64Array, nominal: Float64Array, z: Float64Array, from: number): void {
  for (let k = 0, at = 0; k < index.length; k++, at += SLOPES) {
    const i = index[k]!, d = z[from + k]!, slope = slopes[d < 0 ? at : at + 1]!, value = nominal[i]!;
    const point = slopes[at + 4] === 1 ? value * Math.exp(slope * d) : value + slope * d, min = slopes[at + 2]!, max = slopes[at + 3]!;
    x[i] = point < min ? min : point > max ? max : point;
  }
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
