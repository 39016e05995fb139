import type { Binding, Bindings } from '../types.ts';
import { densityOfIce, excessEnthalpyAt25, FUSION_J_PER_G, heatCapacity, heatCapacityOfIce, heatCapacityOfSyrup } from '../../liquids/index.ts';
import { ethanolKeptBy } from '../../heat/index.ts';
import { blockOf, solution } from './mixture.ts';
import { celsiusOf, ethanolMassFraction, fromMole } from './quantities.ts';

/** J/(g K) of 100 g. */
const perGram = (block: Float64Array, celsius: number): number => heatCapacity(block, 0, celsius) / 100;
const ethanol: Binding = (i) => perGram(solution('ethanol', 100 * ethanolMassFraction(i)), celsiusOf(i));
const mixing: Binding = (i) => (celsiusOf(i, 25) === 25 ? excessEnthalpyAt25(i.number('x_ethanol')) : undefined);

/** Heat capacity, heat of mixing, ice, and what cooking leaves of ethanol. */
export const thermal: Bindings = {
  cp_ethanol_perry: ethanol,
  cp_ethanol_melinder: ethanol,
  cp_glycerol_perry: (i) => perGram(solution('polyols', 100 * fromMole(i.number('glycerol_mole_pct') / 100, 92.094)), celsiusOf(i)),
  cp_sucrose_formula: (i) => heatCapacityOfSyrup(i.number('sucrose_mass_frac'), celsiusOf(i), i.maybe('purity') ?? 1),
  water_cp0: (i) => perGram(blockOf({ water: 100 }), celsiusOf(i, 0)),
  ice_cp: (i) => heatCapacityOfIce(celsiusOf(i, 0)),
  ice_density: (i) => densityOfIce(celsiusOf(i, 0)),
  fusion: (i) => (celsiusOf(i, 0) === 0 ? FUSION_J_PER_G : undefined),
  HE_forum: mixing,
  HE_memory_25C: mixing,
  HE_larkin_25C: mixing,
  retention: (i) => {
    const kept = ethanolKeptBy(i.text('usda_code') ?? '') ?? ethanolKeptBy(i.text('method') ?? '');
    return kept === undefined ? undefined : 100 * kept;
  },
};
