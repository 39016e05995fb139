import { densityOf, strengthOf } from './volume.ts';
import { strengthFromDensity, strengthOnBasis } from './strength.ts';
import type { StrengthBasis } from './strength.ts';
import { brixFromDensity } from './sugar-scales.ts';

/**
 * What strength does an alcoholometer show, which takes every liquid for ethanol and water?
 * @param block grams by constituent from `offset`
 * @param celsius temperature of the liquid, -20..40 °C, read on a table for that temperature
 * @param basis temperature of the strength
 * @returns % vol; NaN where the liquid is denser than water, so that it stands above the scale
 * @source oiml-r22 general formula, inverted
 */
export function apparentStrength(block: Float64Array, offset: number, celsius = 20, basis: StrengthBasis = '20C'): number {
  return strengthFromDensity(1000 * densityOf(block, offset, celsius), celsius, basis);
}

/**
 * What does a saccharometer show, which takes every liquid for sucrose and water?
 * @param block grams by constituent from `offset`
 * @param celsius temperature of the liquid, 0..40 °C, read on a table for that temperature
 * @returns °Brix; negative for a liquid lighter than water
 * @source sps4 eq. 1, inverted
 */
export function apparentBrix(block: Float64Array, offset: number, celsius = 20): number {
  return brixFromDensity(1000 * densityOf(block, offset, celsius), celsius);
}

/**
 * How much strength do sugar and other solids hide from an alcoholometer?
 * @param block grams by constituent from `offset`
 * @param basis temperature of the strength
 * @returns % vol, true less apparent; NaN where nothing is shown
 * @source oiml-r22; sps4
 */
export function obscuration(block: Float64Array, offset: number, basis: StrengthBasis = '20C'): number {
  return strengthOnBasis(strengthOf(block, offset), '20C', basis) - apparentStrength(block, offset, 20, basis);
}

/**
 * The gauger's round rule for the same.
 * @param solids_gPer100mL 0..0.6 g per 100 mL; above, spirits are distilled before gauging
 * @returns proof hidden: 0.4 per 0.1 g
 * @source cfr-27-30 section 30.32
 */
export function obscurationByRule(solids_gPer100mL: number): number {
  return 4 * solids_gPer100mL;
}
