import table from '../../../../data/physics/gas.json' with { type: 'json' };
import { carbonDioxideMolar, carbonDioxideOver } from './dissolved.ts';

const M = table.molar_mass.CO2;
const R = 8.314462618;
/** CO2 in g/L that is one volume: a litre of gas at 0 °C and 1 atm. @source crc-co2 22.26 L/mol */
export const ONE_VOLUME = M / table.molar_volume_CO2.value;

/** Volumes of CO2 in a liquid that holds g/L of it. @source none - definition */
export function volumes(g_L: number): number {
  return g_L / ONE_VOLUME;
}

/** g/L of CO2 in a liquid that holds so many volumes. @source none - definition */
export function gramsPerLitre(vol: number): number {
  return vol * ONE_VOLUME;
}

/**
 * How well CO2 dissolves in a drink, against water of the same temperature.
 * pct: % vol; to 18 by the rule for wine, held to 30 (dilute ethanol has a flat minimum), then straight in the logarithm to pure ethanol; above 18 judged.
 * sugar: g/L, 0 to 300.
 * @source eu-wine (0.86 - 0.01 A)(1 - 0.00144 S); postigo-katz-1987 minimum; bunsen-carius ethanol
 */
export function carbonationFactor(pct: number, sugar: number): number {
  const { wine, spirit, ethanol15 } = table;
  const a = Math.min(Math.max(pct, 0), 100);
  const low = 1 - (wine.per_pct * Math.min(a, wine.to_pct)) / wine.water;
  const end = ethanol15.CO2.alcohol / ethanol15.CO2.water;
  const share = Math.max(0, (a - spirit.flat_to_pct) / (100 - spirit.flat_to_pct));
  return low * (end / low) ** share * Math.max(0, 1 - wine.per_g_L * sugar);
}

/**
 * CO2 in g/L that a drink holds at rest under a partial pressure. kPa: absolute, of CO2 alone, 0 to 1000; celsius: 0 to 60; pct % vol; sugar g/L.
 * @source carroll-1991 water; eu-wine ethanol and sugar
 */
export function carbonDioxideHeld(kPa: number, celsius: number, pct = 0, sugar = 0): number {
  return carbonDioxideMolar(celsius, kPa) * M * carbonationFactor(pct, sugar);
}

/** Partial pressure of CO2 in kPa, absolute, over a drink that holds g/L of it: the inverse of `carbonDioxideHeld`. @source carroll-1991; eu-wine */
export function carbonDioxidePressure(g_L: number, celsius: number, pct = 0, sugar = 0): number {
  return carbonDioxideOver(celsius, g_L / (M * carbonationFactor(pct, sugar)));
}

/**
 * Partial pressure of CO2 in kPa, absolute, in a closed bottle: shared between liquid and headspace, both straight in the pressure (0.3 % off at 500 kPa).
 * grams: all CO2 in it; liquid_L, head_L: 0 and up; celsius; pct % vol; sugar g/L.
 * @source carroll-1991; eu-wine; ideal gas in the headspace
 */
export function bottlePressure(grams: number, liquid_L: number, head_L: number, celsius: number, pct = 0, sugar = 0): number {
  const inLiquid = (carbonDioxideHeld(100, celsius, pct, sugar) / 100) * liquid_L; // g per kPa
  const inHead = (M * head_L) / (R * (celsius + 273.15)); // g per kPa: kPa L = J
  return grams / (inLiquid + inHead);
}

/** CO2 in g from a mass of sugar in g that yeast ferments out (glucose; 1.053 times for sucrose). @source common-practice stoichiometry C6H12O6 → 2 C2H5OH + 2 CO2 */
export function carbonDioxideFromSugar(grams: number): number {
  return grams * table.fermentation.co2_per_g_hexose;
}

/** CO2 of a wine in g/L. Pa: absolute pressure of CO2 at 20 °C; pct: 0 to 18 % vol; sugar: g/L. @source eu-wine CO2 formula */
export function wineGrams(Pa: number, pct: number, sugar: number): number {
  const { wine } = table;
  return wine.grams * Pa * (wine.water - wine.per_pct * pct) * (1 - wine.per_g_L * sugar);
}

/** The same in litres of gas (0 °C, 1 atm) per litre. @source eu-wine CO2 formula */
export function wineLitres(Pa: number, pct: number, sugar: number): number {
  return (wineGrams(Pa, pct, sugar) * table.wine.litres) / table.wine.grams;
}

/** Gauge pressure in psi that keeps beer at so many volumes. fahrenheit: 30 to 70; vol: 1.5 to 4. @source beer-chart-formula */
export function beerPressure(fahrenheit: number, vol: number): number {
  const [a, b, c, d, e, f] = table.beer.coef as [number, number, number, number, number, number];
  return a + fahrenheit * (b + c * fahrenheit) + vol * (d * fahrenheit + e + f * vol);
}

/** Volumes of CO2 in beer at rest under a gauge pressure in psi: the inverse of `beerPressure`. NaN above what the formula reaches. @source beer-chart-formula */
export function beerVolumes(fahrenheit: number, psi: number): number {
  const [a, b, c, d, e, f] = table.beer.coef as [number, number, number, number, number, number];
  const constant = a + fahrenheit * (b + c * fahrenheit) - psi, slope = d * fahrenheit + e;
  return (-slope + Math.sqrt(slope * slope - 4 * f * constant)) / (2 * f);
}
