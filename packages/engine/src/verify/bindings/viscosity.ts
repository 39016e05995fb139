import type { Binding, Bindings } from '../types.ts';
import { viscosityOf } from '../../liquids/index.ts';
import { solution } from './mixture.ts';
import { celsiusOf, ethanolMassFraction } from './quantities.ts';

const ethanol: Binding = (i) => viscosityOf(solution('ethanol', 100 * ethanolMassFraction(i)), 0, celsiusOf(i));
const sucrose: Binding = (i) => viscosityOf(solution('sucrose', i.number('sucrose_mass_pct', 'mass_pct')), 0, celsiusOf(i));

/** Viscosity of ethanol and of sucrose in water. */
export const viscosity: Bindings = {
  ethanol_visc20_crc: ethanol,
  ethanol_visc_melinder: ethanol,
  sucrose_visc_T: sucrose,
  sucrose_visc20_crc: sucrose,
};
