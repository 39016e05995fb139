import gas from '../../../../data/physics/gas.json' with { type: 'json' };
import table from '../../../../data/physics/siphon.json' with { type: 'json' };
import { henry, molarMass } from './dissolved.ts';

const R = 8.314462618;
const M = molarMass('N2O');
const { pct: PCT, factor: FACTOR, per_brix, brix_to } = gas.n2o_in_drinks;

/** Gas of one charger in g and its range. @source charger 7.8 to 8.0, 8.4 marketed */
export const CHARGER = table.charger;
/** Where overrun stands by what makes the foam, per cent of the mix, with its range. @source common-practice; cream-volume by hand */
export const OVERRUN = table.overrun;
/** Bound of the class a siphon is sold under, bar times litre: no rating of any vessel, its maker's limits win. @source siphon-notice */
export const CLASS_BOUND = table.class_bound_bar_L.value;
/** Warmer than this a mix is not charged, °C. @source common-practice */
export const COOL_BEFORE_CHARGING = table.cool_before_charging_C.value;
/** At this it is hot: pressure stands twice what it is cold, and little gas dissolves, °C. @source common-practice */
export const TOO_HOT_TO_CHARGE = table.too_hot_to_charge_C.value;

/**
 * How well N2O dissolves in a drink, against water. pct: % vol, 0 to 100; brix: 0 to 40 (held there). ± 0.15.
 * @source memory 0.95 at 10 to 25 % vol, 1.15 at 40; bunsen-carius 4.2 in ethanol
 */
export function nitrousFactor(pct: number, brix: number): number {
  let i = 1;
  while (i < PCT.length - 1 && pct > PCT[i]!) i++;
  const a = PCT[i - 1]!, b = PCT[i]!;
  const t = (Math.min(Math.max(pct, 0), 100) - a) / (b - a);
  return (FACTOR[i - 1]! + (FACTOR[i]! - FACTOR[i - 1]!) * t) * (1 + per_brix * Math.min(Math.max(brix, 0), brix_to));
}

/** mol of N2O per Pa that liquid and headspace of a vessel take up. */
function capacity(liquid_L: number, gross_L: number, celsius: number, factor: number): number {
  const head_m3 = Math.max(0, gross_L - liquid_L) / 1000;
  return head_m3 / (R * (celsius + 273.15)) + (henry('N2O', celsius) * factor * liquid_L) / 1000;
}

/**
 * Partial pressure of N2O in bar, at rest in a closed siphon: what stands on the gauge if the air was driven out, a bar less than absolute with the air in it.
 * grams: N2O, 0 and up; liquid_L; gross_L: water-full volume of the vessel, above 0; celsius: 0 to 80; factor: of `nitrousFactor`, 1 for water.
 * Ideal gas and Henry's law: not a safety calculation, the maker's mark and number of chargers come first.
 * @source sander-n2o Henry's constant and its slope
 */
export function siphonPressure(grams: number, liquid_L: number, gross_L: number, celsius: number, factor = 1): number {
  return grams / M / capacity(liquid_L, gross_L, celsius, factor) / 1e5;
}

/** Share of the N2O that is in the liquid at rest, 0 to 1; arguments as in `siphonPressure`. @source sander-n2o */
export function nitrousDissolved(liquid_L: number, gross_L: number, celsius: number, factor = 1): number {
  return (henry('N2O', celsius) * factor * liquid_L) / 1000 / capacity(liquid_L, gross_L, celsius, factor);
}

/**
 * Most a foam can swell: overrun in per cent if all the dissolved gas stayed in it as bubbles at 1 atm. Practice is lower. 0 without liquid.
 * grams, liquid_L, gross_L, celsius, factor as in `siphonPressure`; ambient_kPa: air pressure outside.
 * @source sander-n2o; ideal gas
 */
export function overrunBound(grams: number, liquid_L: number, gross_L: number, celsius: number, factor = 1, ambient_kPa = 101.325): number {
  if (!(liquid_L > 0)) return 0;
  const mol = (grams / M) * nitrousDissolved(liquid_L, gross_L, celsius, factor);
  return (100 * mol * R * (celsius + 273.15)) / ambient_kPa / liquid_L;
}

/** Overrun in per cent of a foam that stands at so many times its liquid's volume. @source cream-volume four times is 300 % */
export function overrunOf(multiple: number): number {
  return 100 * (multiple - 1);
}

/** Overrun in per cent from the mass of a cup of liquid and of the same cup of foam. @source common-practice weighing */
export function overrunByWeight(liquid_g: number, foam_g: number): number {
  return (100 * (liquid_g - foam_g)) / foam_g;
}

/** Volume in mL of a foam from its liquid in mL. overrun: per cent, 0 and up. @source none - definition */
export function foamVolume(liquid_mL: number, overrun: number): number {
  return liquid_mL * (1 + overrun / 100);
}

/** Density of a foam in g/mL from its liquid's; the gas is not weighed. @source none - definition */
export function foamDensity(liquid_density: number, overrun: number): number {
  return liquid_density / (1 + overrun / 100);
}

/** A siphon by its nominal mL: usable and gross volume in mL, chargers for a foam, a thin foam, an infusion. The gross volume of a size not in the table is 1.45 times. @source common-practice */
export function siphonOf(nominal_mL: number): { readonly usable_mL: number; readonly gross_mL: number; readonly foam: number; readonly thin_foam: number; readonly infusion: number } {
  const rows: Readonly<Record<string, { usable_mL: number; gross_mL: number; foam: number; thin_foam: number; infusion: number }>> = table.vessels;
  const chargers = Math.max(1, Math.round(nominal_mL / 500));
  return rows[String(nominal_mL)] ?? { usable_mL: nominal_mL, gross_mL: 1.45 * nominal_mL, foam: chargers, thin_foam: chargers + 1, infusion: Math.max(1, chargers) };
}

/** Pressure times volume in bar L against the bound of the class: positive is beyond it. bar: gauge; gross_L. @source siphon-notice 50 bar L */
export function classMargin(bar: number, gross_L: number): number {
  return bar * gross_L - CLASS_BOUND;
}
