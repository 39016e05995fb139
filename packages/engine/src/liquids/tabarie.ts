import { at, BLOCK, CONSTITUENTS } from '../matter/constituents.ts';
import { densityOfEthanolWater } from './ethanol-water-density.ts';
import { densityFromStrength } from './strength.ts';
import { densityOf, strengthOf, volume } from './volume.ts';

/**
 * Relative density of a drink without its alcohol, by Tabarié's sum of densities.
 * @param drink,alcohol relative densities 20/20 of the drink and of ethanol and water of its strength
 * @returns relative density 20/20 of the rest, filled up with water
 * @source oiv-03b formula
 */
export function gravityWithoutAlcohol(drink: number, alcohol: number): number {
  return drink - alcohol + 1;
}

const REST = new Float64Array(BLOCK);

/** Density at 20 °C of the same solutes in the same volume without the ethanol, kg/m³. */
function densityOfRest(block: Float64Array, offset: number, volume_mL: number): number {
  for (let i = 0; i < CONSTITUENTS.length; i++) REST[i] = block[offset + i]!;
  REST[at.ethanol] = 0;
  for (let i = 0; i < 20; i++) {
    const missing = volume_mL - volume(REST, 0, 20);
    REST[at.water]! += missing * 0.9982;
    if (Math.abs(missing) < 1e-10 * volume_mL) break;
  }
  return 1000 * densityOf(REST, 0, 20);
}

/**
 * Density of a mixture by Tabarié's rule: that of its rest without alcohol, plus that of its alcohol without the rest, less that of water.
 * @param block grams by constituent from `offset`
 * @returns kg/m³ at 20 °C; sound below 18 % ethanol and 5 % sugar by mass
 * @source oiv-03b formula
 */
export function densityByTabarie(block: Float64Array, offset: number): number {
  return densityOfRest(block, offset, volume(block, offset, 20)) + densityFromStrength(strengthOf(block, offset), 20) - densityOfEthanolWater(0, 20);
}

/**
 * How far do the two rules for strong sweet mixtures lie apart? Neither is tested above 20 % vol with sugar, so this is the residual to state.
 * @param block grams by constituent from `offset`
 * @returns kg/m³, density by apparent volumes less that by Tabarié; 0 without ethanol or without solutes
 * @source oiv-03b formula against oiml-r22 and sps4
 */
export function rivalDensity(block: Float64Array, offset: number): number {
  return 1000 * densityOf(block, offset, 20) - densityByTabarie(block, offset);
}

/**
 * Strength of a drink from its density and what is dissolved in it: what a laboratory does without a still.
 * @param block grams by constituent; its ethanol and water are not read, its solutes are g per litre of drink
 * @param density_kgm3 density of the drink at 20 °C
 * @returns % vol; NaN where no strength gives that density. Solutes that are not known make it 0.85 % vol per kg/m³ wrong
 * @source oiml-r22; sps4; crc-solutions, solved for ethanol
 */
export function strengthFromDensityAndSolutes(block: Float64Array, offset: number, density_kgm3: number): number {
  for (let i = 0; i < CONSTITUENTS.length; i++) REST[i] = block[offset + i]!;
  let solutes = 0;
  for (let i = 2; i < CONSTITUENTS.length; i++) solutes += REST[i]!;
  const solvent = density_kgm3 - solutes;
  if (!(solvent > 0)) return NaN;
  let low = 0, high = 1;
  for (let i = 0; i < 60; i++) {
    const p = (low + high) / 2;
    REST[at.ethanol] = solvent * p;
    REST[at.water] = solvent * (1 - p);
    // a litre by mass: more ethanol takes more room
    if (volume(REST, 0, 20) > 1000) high = p; else low = p;
  }
  if (high < 1e-12 || low > 1 - 1e-12) return NaN;
  return strengthOf(REST, 0);
}
