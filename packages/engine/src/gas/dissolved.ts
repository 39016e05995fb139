import table from '../../../../data/physics/gas.json' with { type: 'json' };
import { densityOfWater } from '../liquids/index.ts';

export type Gas = keyof typeof table.molar_mass;

const R = 8.314462618; // J/(mol K)
const KELVIN = 273.15;
const ATM = 101325; // Pa
const WATER = 18.01528; // g/mol
/** Volume of a mole of ideal gas at 0 °C and 1 atm, L. */
const MOLAR_VOLUME = (1000 * R * KELVIN) / ATM;

/**
 * Henry's constant of a gas in water, mol/(m³ Pa): what dissolves at a partial pressure. celsius: 0 to 80; CO2 below 15 °C is 8 % low here, see `carbonDioxide`.
 * @source sander-n2o, sander-co2, sander-n2 two-parameter form
 */
export function henry(gas: Gas, celsius: number): number {
  const row = table.henry[gas];
  return row.H * Math.exp(row.C * (1 / (celsius + KELVIN) - 1 / 298.15));
}

/** Molar mass of a gas in g/mol. @source none - formula */
export function molarMass(gas: Gas): number {
  return table.molar_mass[gas];
}

/**
 * Mole fraction of CO2 in water at its partial pressure. celsius: 0 to 160; kPa: 0 to 1000.
 * @source carroll-1991 ln(H/MPa) over 1/T
 */
export function carbonDioxide(celsius: number, kPa: number): number {
  const [a, b, c, d] = table.carroll.coef as [number, number, number, number];
  const T = celsius + KELVIN;
  return kPa / 1000 / Math.exp(a + b / T + c / (T * T) + d / (T * T * T));
}

/** mol/L of CO2 in water at its partial pressure in kPa. @source carroll-1991 */
export function carbonDioxideMolar(celsius: number, kPa: number): number {
  const x = carbonDioxide(celsius, kPa);
  return ((x / (1 - x)) * densityOfWater(celsius)) / WATER;
}

/** Partial pressure of CO2 in kPa over water that holds mol/L of it: the inverse of `carbonDioxideMolar`. @source carroll-1991 */
export function carbonDioxideOver(celsius: number, molar: number): number {
  const ratio = (molar * WATER) / densityOfWater(celsius);
  return ((ratio / (1 + ratio)) * 100) / carbonDioxide(celsius, 100);
}

/**
 * Bunsen coefficient: volumes of gas (0 °C, 1 atm) that a volume of water holds under 1 atm of it. celsius: 0 to 80.
 * @source carroll-1991 CO2; sander-n2o, sander-n2 the others
 */
export function bunsen(gas: Gas, celsius: number): number {
  return gas === 'CO2' ? carbonDioxideMolar(celsius, ATM / 1000) * table.molar_volume_CO2.value : (henry(gas, celsius) * ATM * MOLAR_VOLUME) / 1000;
}

/** Ostwald coefficient: volumes of gas, at its own temperature and pressure, in a volume of water. celsius: 0 to 80. @source carroll-1991; sander-n2o */
export function ostwald(gas: Gas, celsius: number): number {
  const molar = gas === 'CO2' ? carbonDioxideMolar(celsius, ATM / 1000) / (ATM / 1000) : henry(gas, celsius);
  return molar * R * (celsius + KELVIN);
}

/** Bunsen coefficient in pure ethanol: water's, times the ratio printed at 15 °C. celsius: 0 to 40. @source bunsen-carius water and alcohol at 15 °C */
export function bunsenInEthanol(gas: Gas, celsius: number): number {
  const row = table.ethanol15[gas];
  return (bunsen(gas, celsius) * row.alcohol) / row.water;
}

/** Ideal volume in L of a mass of gas in g. celsius; kPa: absolute, above 0. @source none - ideal gas */
export function gasVolume(gas: Gas, grams: number, celsius: number, kPa: number = ATM / 1000): number {
  return ((grams / table.molar_mass[gas]) * R * (celsius + KELVIN)) / kPa;
}
