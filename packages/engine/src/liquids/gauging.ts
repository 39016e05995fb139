import { densityOfEthanolWater } from './ethanol-water-density.ts';
import { massFractionFromStrength, SIXTY_F_C, strengthFromDensity } from './strength.ts';
import type { StrengthBasis } from './strength.ts';
import { AIR_KGM3 } from './sugar-scales.ts';
import { celsiusFromFahrenheit, UNITS } from '../units/exact.ts';

/** Cubic expansion of the glass of a hydrometer, per K. @source alcoholometer-glass soda glass */
export const GLASS_PER_K = 25e-6;
/** Density of the weights of a balance, kg/m³. @source none - definition */
const WEIGHTS_KGM3 = 8400;

function base(basis: StrengthBasis): number {
  return basis === '20C' ? 20 : SIXTY_F_C;
}

/**
 * Parts of water that stand beside the ethanol in 100 parts of spirit, all by volume: more than what is missing to 100, as the two contract.
 * @param strength % vol 0..100 on `basis`
 * @param basis temperature of all volumes; Table 6 has 60 °F
 * @returns parts of water per 100 of spirit
 * @source cfr-27-30 section 30.66 table 6; oiml-r22 for the density
 */
export function waterParts(strength: number, basis: StrengthBasis = '60F'): number {
  const p = massFractionFromStrength(strength, basis), t = base(basis);
  return (100 * (1 - p) * densityOfEthanolWater(p, t)) / densityOfEthanolWater(0, t);
}

/**
 * How much water brings a spirit down to a lower strength?
 * @param volume of the spirit, any unit
 * @param from,to % vol 0..100 on `basis`, `to` above 0
 * @param basis temperature of all volumes
 * @returns volume of water in the unit of `volume`; negative where `to` is above `from`
 * @source cfr-27-30 section 30.66 worked rule
 */
export function waterToReduce(volume: number, from: number, to: number, basis: StrengthBasis = '60F'): number {
  return (volume / 100) * ((from / to) * waterParts(to, basis) - waterParts(from, basis));
}

/**
 * True proof of a spirit from what a glass hydrometer reads in it away from 60 °F.
 * @param reading_proof 0..200, what the stem shows
 * @param fahrenheit 0..100 °F
 * @returns proof at 60 °F; NaN outside
 * @source cfr-27-30 section 30.61 table 1; oiml-r22 for the density; alcoholometer-glass
 */
export function trueProof(reading_proof: number, fahrenheit: number): number {
  const t = celsiusFromFahrenheit(fahrenheit);
  const floats = densityOfEthanolWater(massFractionFromStrength(reading_proof / 2, '60F'), SIXTY_F_C) * (1 - GLASS_PER_K * (t - SIXTY_F_C));
  return 2 * strengthFromDensity(floats, t, '60F');
}

/**
 * Volume at 60 °F of one volume of spirit measured at another temperature.
 * @param proof true proof 0..200
 * @param fahrenheit 0..100 °F
 * @returns ratio, below 1 when warm
 * @source cfr-27-30 section 30.25 table 7; oiml-r22 for the density
 */
export function volumeAt60F(proof: number, fahrenheit: number): number {
  const p = massFractionFromStrength(proof / 2, '60F');
  return densityOfEthanolWater(p, celsiusFromFahrenheit(fahrenheit)) / densityOfEthanolWater(p, SIXTY_F_C);
}

/**
 * Gallons in a pound of spirit weighed in air at 60 °F.
 * @param proof true proof 0..200
 * @returns wine gallons per lb
 * @source cfr-27-30 section 30.64 table 4; oiml-r22 for the density
 */
export function gallonsPerPound(proof: number): number {
  const density = densityOfEthanolWater(massFractionFromStrength(proof / 2, '60F'), SIXTY_F_C);
  const volume_mL = (1000 * UNITS.lb.factor * (1 - AIR_KGM3 / WEIGHTS_KGM3)) / (density - AIR_KGM3);
  return volume_mL / UNITS.us_gallon.factor;
}

/**
 * Proof gallons in a pound of spirit weighed in air at 60 °F.
 * @param proof true proof 0..200
 * @returns proof gallons per lb
 * @source cfr-27-30 section 30.64 table 4
 */
export function proofGallonsPerPound(proof: number): number {
  return (gallonsPerPound(proof) * proof) / 100;
}
