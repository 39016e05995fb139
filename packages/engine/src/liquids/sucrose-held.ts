import table from '../../../../data/physics/sucrose-solubility.json' with { type: 'json' };
import { ETHANOL_G_ML } from './volume.ts';

const { spirit: SPIRIT, beside: BESIDE } = table;
/** g/mL of water at 20 °C. @source kell1975 */
const WATER_G_ML = 0.9982;

/**
 * How much less sucrose a mixture of water and ethanol holds than water does, for the same volume of it.
 * @param pct % vol of the mixture before sugar is put to it, 0 to 100, held at the ends
 * @returns 1 in water, 0.0046 at 90 % vol; straight in the logarithm between its points
 * @source scheibler-sucrose 14 °C, grams in 100 cm3 of saturated solution, with 0.632 mL a gram of sucrose in it; taken for every temperature
 */
export function sucroseInSpirit(pct: number): number {
  const { pct: at, factor } = SPIRIT, last = at.length - 1, x = Math.min(Math.max(pct, at[0]!), at[last]!);
  let i = 0;
  while (i < last - 1 && at[i + 1]! < x) i++;
  return factor[i]! * (factor[i + 1]! / factor[i]!) ** ((x - at[i]!) / (at[i + 1]! - at[i]!));
}

/**
 * Sucrose in g that a liquid holds when it is saturated.
 * @param water_g, ethanol_g of it; others_g: glucose, fructose and other sugars in it
 * @param saturation g of sucrose in 100 g of what water alone holds at this temperature
 * @param hinders share of sucrose that a gram of other sugar in a gram of water keeps out, 0 to 0.2
 * @source mohos table A2.3; scheibler-sucrose spirit; memory other sugars
 */
export function sucroseHeld(water_g: number, ethanol_g: number, others_g: number, saturation: number, hinders: number = BESIDE.value): number {
  if (!(water_g > 0)) return 0;
  const mL = water_g + (WATER_G_ML * ethanol_g) / ETHANOL_G_ML;                       // as grams of water that fill it
  return ((mL * saturation) / (100 - saturation)) * sucroseInSpirit((100 * (mL - water_g)) / mL) * Math.max(0, 1 - (hinders * others_g) / water_g);
}
