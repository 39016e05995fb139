import type { Inputs } from '../types.ts';
import { InputMissing } from '../inputs.ts';
import { massFractionFromStrength } from '../../liquids/index.ts';
import { celsiusFromFahrenheit } from '../../units/index.ts';

const M_ETHANOL = 46.068, M_WATER = 18.0153;

/**
 * Temperature of a case.
 * @param i inputs with `t_C` or `t_F`
 * @param otherwise °C where none is given
 * @returns °C
 * @source none - definition
 */
export function celsiusOf(i: Inputs, otherwise = 20): number {
  const fahrenheit = i.maybe('t_F', 'temp_F');
  return i.maybe('t_C', 'temp_C', 'celsius') ?? (fahrenheit === undefined ? otherwise : celsiusFromFahrenheit(fahrenheit));
}

/**
 * Mass fraction of ethanol in a case, however it is put.
 * @param i inputs with a percentage by mass, by mol or by volume, or proof
 * @returns 0..1
 * @source oiml-r22 definition of q
 */
export function ethanolMassFraction(i: Inputs): number {
  const mass = i.maybe('ethanol_mass_pct', 'mass_pct');
  if (mass !== undefined) return mass / 100;
  const fraction = i.maybe('ethanol_mass_frac', 'mass_frac', 'p');
  if (fraction !== undefined) return fraction;
  const mole = i.maybe('ethanol_mole_pct');
  if (mole !== undefined) return fromMole(mole / 100, M_ETHANOL);
  const at20 = i.maybe('abv_20C', 'abv');
  if (at20 !== undefined) return massFractionFromStrength(at20, '20C');
  const at60 = i.maybe('abv_at_15_56C', 'abv_60F', 'true_abv_60F');
  if (at60 !== undefined) return massFractionFromStrength(at60, '60F');
  const proof = i.maybe('proof');
  if (proof !== undefined) return massFractionFromStrength(proof / 2, '60F');
  throw new InputMissing(['ethanol_mass_pct', 'mass_pct', 'abv_20C', 'abv_60F', 'proof']);
}

/**
 * Mass fraction of a mole fraction in water.
 * @param x mole fraction 0..1
 * @param molar_gPerMol molar mass of the solute
 * @returns 0..1
 * @source none - definition
 */
export function fromMole(x: number, molar_gPerMol: number): number {
  return (x * molar_gPerMol) / (x * molar_gPerMol + (1 - x) * M_WATER);
}
