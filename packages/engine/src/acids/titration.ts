import table from '../../../../data/physics/acids.json' with { type: 'json' };
import { constantsAt, EQUIVALENT, MOLAR_MASS } from './constants.ts';
import { chargeAt, type Near } from './ph.ts';

/** pH at which a titration ends. @source memory US wine and AOAC end point */
export const END_POINT = table.titration.pH;

/** Aqueous constants at 20 °C, those of titration. */
const AQUEOUS = constantsAt(table.titration.celsius);
const CITRIC_EQUIVALENT = EQUIVALENT[0]!;

/**
 * Titratable acidity to pH 8.2, as g/L of anhydrous citric acid: the base it takes, from what the liquid holds, its pH not being needed.
 * acids: mol/L of each acid in the order of the constituents, from index `from`; strong: mol/L of strong cations less anions (base already there);
 * salt: mol/L of further 1:1 salt. Aqueous constants at 20 °C whatever the strength; proteins and carbonic acid are not counted, nor the
 * volume of the base. Negative where the liquid stands above pH 8.2. Allocates nothing.
 * @source goldberg-2002 constants; awri-tn14 equivalents
 */
export function titratableAcidity(acids: ArrayLike<number>, from: number, strong: number, salt = 0, start: Near | null = null): number {
  return (chargeAt(acids, from, END_POINT, AQUEOUS, salt, 0, start) - strong) * CITRIC_EQUIVALENT;
}

/** `titratableAcidity` written into `out[at]`. @source none - definition */
export function titratableAcidityInto(out: Float64Array, i: number, acids: ArrayLike<number>, from: number, strong: number, salt = 0, start: Near | null = null): void {
  out[i] = titratableAcidity(acids, from, strong, salt, start);
}

/** Grams that give or take one mole of protons, by name. */
const BY_NAME: Readonly<Record<string, number>> = {
  ...Object.fromEntries(table.acids.map((acid) => [acid.id, acid.equivalent])),
  citric_monohydrate: table.equivalents.citric_monohydrate.equivalent,
  sulfuric: table.equivalents.sulfuric.equivalent,
};

/**
 * The mass of one acid that titrates as another does. grams: of `as`, any unit; from, to: ids of the table, `citric_monohydrate` and `sulfuric` too.
 * NaN for a name not in the table.
 * @source awri-tn14 items 1-2; juice-conversions
 */
export function equivalentMass(grams: number, from: string, to: string): number {
  const a = BY_NAME[from], b = BY_NAME[to];
  return a === undefined || b === undefined ? NaN : (grams * b) / a;
}

/** Mass of anhydrous citric acid in a mass of the monohydrate (210.139 g/mol), same unit. @source goldberg-2002 formula */
export function citricFromMonohydrate(grams: number): number {
  return (grams * MOLAR_MASS[0]!) / table.equivalents.citric_monohydrate.molar_mass;
}

/** Mass of citric acid monohydrate that holds a mass of the anhydrous acid, same unit. @source goldberg-2002 formula */
export function monohydrateFromCitric(grams: number): number {
  return (grams * table.equivalents.citric_monohydrate.molar_mass) / MOLAR_MASS[0]!;
}

/**
 * Sum of acid equivalents as citric acid, same unit as the masses: what a full titration of every proton counted would show.
 * grams: of each acid in the order of the constituents, from index `from`.
 * @source awri-tn14 equivalents
 */
export function sumAsCitric(grams: ArrayLike<number>, from: number): number {
  let sum = 0;
  for (let i = 0; i < MOLAR_MASS.length; i++) sum += grams[from + i]! / EQUIVALENT[i]!;
  return sum * CITRIC_EQUIVALENT;
}
