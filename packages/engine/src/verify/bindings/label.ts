import type { Binding, Bindings, Inputs } from '../types.ts';
import { densityOfEthanolWater } from '../../liquids/index.ts';
import { energyOf, energyOf_kJ, standardDrinks } from '../../larder/index.ts';
import { fillTolerance, labelledStrength, mustStateStrength, strengthTolerance } from '../../label/index.ts';
import { blockOf } from './mixture.ts';

function ethanol_g(i: Inputs): number {
  const density = i.maybe('density') ?? densityOfEthanolWater(1, 20) / 1000;
  return (i.number('mL') * i.number('abv') * density) / 100;
}
const energy: Binding = (i, unit) => {
  const block = blockOf({ ethanol: ethanol_g(i), sucrose: i.maybe('sugar_g') ?? 0, citric: i.maybe('acid_g') ?? 0, fat: i.maybe('fat_g') ?? 0, whey: i.maybe('protein_g') ?? 0, polyols: i.maybe('polyol_g') ?? 0 });
  return unit === 'kJ' ? energyOf_kJ(block) : energyOf(block);
};
const tolerance: Binding = (i) => strengthTolerance(i.text('kind') ?? 'other', i.maybe('abv'));

/** What labels say: ethanol, energy, tolerances. */
export const label: Bindings = {
  us_standard_drink: ethanol_g,
  uk_units_in_25_ml_at_40: (i) => standardDrinks(ethanol_g(i)).UK,
  australian_drinks_in_285_ml_at_4_8: (i) => standardDrinks(ethanol_g(i)).AU,
  energy_from_ethanol: energy,
  energy,
  energy_b: energy,
  eu_tolerance_for_a_17_liqueur: tolerance,
  eu_tolerance: tolerance,
  us_spirit_labelled_40: (i) => labelledStrength(i.number('label'), i.number('test')),
  us_fill_tolerance_750_ml: (i) => fillTolerance(i.number('mL')),
  must_a_1_2_drink_state_abv_in_the_eu: (i) => mustStateStrength(i.number('abv')),
};
