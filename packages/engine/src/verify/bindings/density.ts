import { celsiusOf, ethanolMassFraction } from './quantities.ts';
import type { Binding, Bindings, Inputs } from '../types.ts';
import {
  densityOf, densityOfEthanolWater, gravityWithoutAlcohol, specificGravity, strengthFromDensity, strengthFromMassFraction,
} from '../../liquids/index.ts';
import { blockOf } from './mixture.ts';

/** Density of water at 4 °C, kg/m³: what a table of d t/4 is multiplied by. @source kell1975 eq. 1 */
const WATER_4C = 999.972;

const ethanolWater: Binding = (i) => densityOfEthanolWater(ethanolMassFraction(i), celsiusOf(i));

function reference(i: Inputs): { readonly celsius: number; readonly inAir: boolean } {
  const text = i.text('ref', 'reference') ?? '';
  const celsius = /water\s+([\d.]+)/.exec(text)?.[1];
  return { celsius: celsius === undefined ? celsiusOf(i) : Number(celsius), inAir: /air/.test(text) };
}

/** Ethanol and water, and with sucrose. */
export const density: Bindings = {
  lange_density: ethanolWater,
  nbs_density: ethanolWater,
  perry_density: ethanolWater,
  melinder_cold_density: ethanolWater,
  oiml_table_20C: ethanolWater,
  usp_vol_to_mass: (i) => 100 * ethanolMassFraction(i),
  usp_mass_to_vol: (i) => strengthFromMassFraction(i.number('mass_pct', 'ethanol_mass_pct') / 100, celsiusOf(i) > 17.8 ? '20C' : '60F'),
  usp_sg_air: (i) => {
    const { celsius, inAir } = reference(i);
    return specificGravity(densityOfEthanolWater(ethanolMassFraction(i), celsiusOf(i)), densityOfEthanolWater(0, celsius), inAir);
  },
  lange_sg_to_abv: (i) => strengthFromDensity(i.number('sg_20_4') * WATER_4C, 20, '60F'),
  limits: (i) => {
    const ethanol = i.maybe('ethanol_mass_pct') ?? 0, sucrose = i.maybe('sucrose_mass_pct') ?? 0;
    return 1000 * densityOf(blockOf({ water: 100 - ethanol - sucrose, ethanol, sucrose }), 0, celsiusOf(i));
  },
  tabarie_identity: (i) => gravityWithoutAlcohol(i.number('d_v'), i.number('d_a')),
};
