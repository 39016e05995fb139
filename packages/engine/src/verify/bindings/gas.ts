import type { Bindings, Inputs } from '../types.ts';
import { beerPressure, beerVolumes, bunsen, bunsenInEthanol, carbonDioxide, gasVolume, henry, ostwald, overrunOf, siphonPressure, wineGrams, wineLitres } from '../../gas/index.ts';
import type { Gas } from '../../gas/index.ts';
import { celsiusOf } from './quantities.ts';

const GASES: readonly Gas[] = ['CO2', 'N2O', 'N2', 'O2'];
const gasOf = (i: Inputs): Gas | undefined => GASES.find((gas) => gas === i.text('gas'));
const WATER_MOL_M3 = 55_345; // mol of water in a m³ at 25 °C
const fahrenheit = (i: Inputs) => i.maybe('t_F') ?? celsiusOf(i) * 1.8 + 32;

/** Gases dissolved, carbonation, siphons. */
export const gas: Bindings = {
  co2_water_crc: (i) => 1000 * carbonDioxide(celsiusOf(i), i.number('p_CO2_kPa')),
  co2_bunsen_murray: (i) => bunsen('CO2', celsiusOf(i)) * (i.maybe('p_CO2_atm') ?? 1),
  co2_bunsen_kaye: (i) => bunsen('CO2', celsiusOf(i)),
  co2_ostwald_kunerth: (i) => ostwald('CO2', celsiusOf(i)),
  n2o_bunsen_kaye: (i) => bunsen('N2O', celsiusOf(i)),
  n2_bunsen_kaye: (i) => bunsen('N2', celsiusOf(i)),
  n2_henry_nbs: (i) => (1e6 * henry('N2', celsiusOf(i)) * 1e5 * (i.maybe('p_bar') ?? 1)) / WATER_MOL_M3,
  beer_volumes: (i) => beerVolumes(fahrenheit(i), i.number('gauge_psi')),
  beer_pressure: (i) => beerPressure(fahrenheit(i), i.number('volumes')),
  wine_co2: (i, unit) => (unit.startsWith('g') ? wineGrams : wineLitres)(i.number('p_Pa'), i.number('abv'), i.number('sugar_g_l')),
  pure_solvent_bunsen_15C: (i) => {
    const which = gasOf(i);
    if (!which) return undefined;
    return i.text('solvent') === 'water' ? bunsen(which, celsiusOf(i, 15)) : bunsenInEthanol(which, celsiusOf(i, 15));
  },
  n2o_pressure_in_vessel: (i) => siphonPressure(i.number('g_N2O'), i.number('liquid_L'), i.number('gross_L'), celsiusOf(i)),
  henry_constant_n2o_at_5_c: (i) => { const which = gasOf(i); return which && henry(which, celsiusOf(i)); },
  gas_volume_of_8_g_at_20_c_1_atm: (i) => gasVolume('N2O', i.number('g'), celsiusOf(i)),
  overrun_of_a_4_fold_volume: (i) => overrunOf(i.number('multiple')),
};
