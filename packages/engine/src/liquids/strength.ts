import { densityOfEthanolWater } from './ethanol-water-density.ts';

/** Basis of a strength: % vol at 20 °C (EU, OIML) or at 60 °F (US proof, older tables). */
export type StrengthBasis = '20C' | '60F';
/** 60 °F in °C. @source none - definition */
export const SIXTY_F_C = 140 / 9;

/** Step of a difference quotient, and where Newton's steps have come to rest. */
const STEP = 1e-6;
const CLOSE = 1e-13;
const ETHANOL_20C = densityOfEthanolWater(1, 20);
const ETHANOL_60F = densityOfEthanolWater(1, SIXTY_F_C);

/**
 * Strength by volume of a mixture of ethanol and water.
 * @param massFraction ethanol over ethanol + water, 0..1
 * @param basis temperature at which both volumes are taken
 * @returns % vol 0..100; NaN outside
 * @source oiml-r22 definition of q
 */
export function strengthFromMassFraction(massFraction: number, basis: StrengthBasis = '20C'): number {
  return basis === '20C'
    ? (100 * massFraction * densityOfEthanolWater(massFraction, 20)) / ETHANOL_20C
    : (100 * massFraction * densityOfEthanolWater(massFraction, SIXTY_F_C)) / ETHANOL_60F;
}

/**
 * Mass fraction of ethanol in a mixture with water of this strength.
 * @param strength % vol 0..100
 * @param basis temperature of the strength
 * @returns ethanol over ethanol + water, 0..1; NaN outside
 * @source oiml-r22 definition of q, inverted
 */
export function massFractionFromStrength(strength: number, basis: StrengthBasis = '20C'): number {
  if (!(strength >= 0 && strength <= 100)) return NaN;
  let low = 0, high = 1;
  let p = strength * (0.0079 + strength * 2.1e-5);
  if (p > 1) p = 1;
  for (let i = 0; i < 60; i++) {
    const off = strengthFromMassFraction(p, basis) - strength;
    if (off > 0) high = p; else low = p;
    const q = p > 0.5 ? p - STEP : p + STEP;
    let next = p - (off * (q - p)) / (strengthFromMassFraction(q, basis) - strength - off);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - p) < CLOSE) return next;
    p = next;
  }
  return p;
}

/**
 * Mass fraction of ethanol in a mixture with water of this density.
 * @param density_kgm3 true density, kg/m³
 * @param celsius temperature of the reading, -20..40 °C
 * @returns 0..1; 0 or 1 where the density is outside that of water or of ethanol by less than 0.05 kg/m³; NaN beyond
 * @source oiml-r22 general formula, inverted
 */
export function massFractionFromDensity(density_kgm3: number, celsius: number): number {
  const water = densityOfEthanolWater(0, celsius), ethanol = densityOfEthanolWater(1, celsius);
  if (!(density_kgm3 <= water + 0.05 && density_kgm3 >= ethanol - 0.05)) return NaN;
  if (density_kgm3 >= water) return 0;
  if (density_kgm3 <= ethanol) return 1;
  let low = 0, high = 1;
  let p = (water - density_kgm3) / (water - ethanol);
  for (let i = 0; i < 60; i++) {
    const off = densityOfEthanolWater(p, celsius) - density_kgm3;
    if (off > 0) low = p; else high = p;
    const q = p > 0.5 ? p - STEP : p + STEP;
    let next = p - (off * (q - p)) / (densityOfEthanolWater(q, celsius) - density_kgm3 - off);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - p) < CLOSE) return next;
    p = next;
  }
  return p;
}

/**
 * Strength of a mixture of ethanol and water of this density: what an alcoholometer is made to answer.
 * @param density_kgm3 true density, kg/m³
 * @param celsius temperature of the reading, -20..40 °C
 * @param basis temperature of the strength
 * @returns % vol 0..100; NaN outside
 * @source oiml-r22 general formula, inverted
 */
export function strengthFromDensity(density_kgm3: number, celsius: number, basis: StrengthBasis = '20C'): number {
  return strengthFromMassFraction(massFractionFromDensity(density_kgm3, celsius), basis);
}

/**
 * Density of a mixture of ethanol and water of this strength.
 * @param strength % vol 0..100
 * @param celsius temperature of the liquid, -20..40 °C
 * @param basis temperature of the strength
 * @returns kg/m³; NaN outside
 * @source oiml-r22 general formula
 */
export function densityFromStrength(strength: number, celsius: number, basis: StrengthBasis = '20C'): number {
  return densityOfEthanolWater(massFractionFromStrength(strength, basis), celsius);
}

/**
 * What is a strength on one basis on the other?
 * @param strength % vol 0..100 on basis `from`
 * @returns % vol on basis `to`
 * @source oiml-r22 definition of q
 */
export function strengthOnBasis(strength: number, from: StrengthBasis, to: StrengthBasis): number {
  return from === to ? strength : strengthFromMassFraction(massFractionFromStrength(strength, from), to);
}
