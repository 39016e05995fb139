import type { Bindings } from '../types.ts';
import {
  brixFromGravity, brixFromIndex, brixToAddForAcid, densityOfSucroseSolution, gravityFromBrix, refractometerBrix, refractometerCorrection, sucroseSaturation, supersaturated,
} from '../../liquids/index.ts';
import { solution } from './mixture.ts';
import { celsiusOf, ethanolMassFraction } from './quantities.ts';

/** Sucrose in water: density, scales, saturation, what a refractometer shows. */
export const sugar: Bindings = {
  crc_density20: (i) => densityOfSucroseSolution(i.number('mass_pct', 'sucrose_mass_pct') / 100, celsiusOf(i)),
  cross_model_density_t: (i) => densityOfSucroseSolution(i.number('mass_pct', 'sucrose_mass_pct') / 100, celsiusOf(i)),
  sg_true_20_20: (i) => gravityFromBrix(i.number('mass_pct', 'sucrose_mass_pct'), false),
  brix_polynomial: (i) => brixFromGravity(i.number('apparent_sg_20_20')),
  ri_to_brix: (i) => brixFromIndex(i.number('n20D')),
  refractometer_t_corr: (i) => refractometerCorrection(celsiusOf(i), i.number('read_pct')),
  acid_brix_correction: (i) => brixToAddForAcid(i.number('citric_acid_pct')),
  ethanol_apparent_brix: (i) => refractometerBrix(solution('ethanol', 100 * ethanolMassFraction(i)), 0),
  solubility: (i) => sucroseSaturation(celsiusOf(i)),
  sucrose_saturation_at_20_c: (i) => sucroseSaturation(celsiusOf(i)),
  is_66_7_brix_syrup_supersaturated_at_5_c: (i) => supersaturated(i.number('brix'), celsiusOf(i)),
};
