import type { Binding, Bindings } from '../types.ts';
import { freezingPoint, waterActivityNorrish } from '../../liquids/index.ts';
import { blockOf, solution, SOLUTES } from './mixture.ts';
import { ethanolMassFraction } from './quantities.ts';

const ethanol: Binding = (i) => freezingPoint(solution('ethanol', 100 * ethanolMassFraction(i)), 0);

/** Freezing points of one solute in water. */
export const freezing: Bindings = {
  ...Object.fromEntries(Object.entries(SOLUTES).map(([name, constituent]): [string, Binding] => [
    `${name}_fpd_crc`, (i) => freezingPoint(solution(constituent, i.number('mass_pct', `${name}_mass_pct`)), 0),
  ])),
  ethanol_fpd_crc: ethanol,
  ethanol_freeze_melinder: ethanol,
  ethanol_freeze_lange: ethanol,
  sucrose_fpd_goff: (i) => freezingPoint(blockOf({ water: 100, sucrose: i.number('g_sucrose_per_100g_water') }), 0),
  water_activity_of_sucrose_syrup_norrish: (i) => waterActivityNorrish(i.number('brix', 'mass_pct') / 100, i.maybe('M', 'g_per_mol') ?? 342.297, i.number('K')),
};
