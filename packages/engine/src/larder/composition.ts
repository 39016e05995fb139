import type { Ingredient } from './types.ts';
import { at, CONSTITUENTS } from '../matter/constituents.ts';
import { energyOf } from './energy.ts';
import { acidsUnknown, strongIons } from './ions.ts';
import { putAcids, putAsh, putCarbohydrate, putFat, putProtein, putSugars, restOf } from './parts.ts';

/** What 100 g of an ingredient are made of. */
export interface Composition {
  /** g per 100 g in the order of CONSTITUENTS; they sum to 100, or to 0 for a gas */
  readonly grams: Float64Array;
  /** g of the 100 that no column accounts for; they are counted among the solubles or insolubles */
  readonly unknown_g: number;
  /** g of the 100 that belong to a row which should hold acids but states none beyond ascorbic */
  readonly acids_unknown_g: number;
  /** net charge of strong ions (K + Na of other than table salt) in mol per 100 g: where a solution for the row's own pH starts */
  readonly charge_mol: number;
  readonly energy_kcal: number;
  /** columns the row leaves empty */
  readonly missing: readonly string[];
}

/** Water of the table may differ by this much from 100 less the other parts before the difference counts as unknown mass, g per 100 g. */
const GAP_g = 3;
const ASKED = ['water_g', 'protein_g', 'fat_g', 'carb_g', 'fibre_g', 'sugars_g', 'ash_g', 'sodium_mg', 'potassium_mg'];

/**
 * Fills up to 100 g: water takes the small gap that separate means leave; a larger one, and any gap of what is dry or fat, goes to the
 * solids the row names. Parts beyond 100 g (fats printed as 100 with traces beside) are scaled back. Returns the g that stay unknown.
 */
function fillUp(grams: Float64Array, ingredient: Ingredient): number {
  let solids = 0;
  for (const mass of grams) solids += mass;
  if (solids > 100) for (let i = 0; i < grams.length; i++) grams[i]! *= 100 / solids;
  const left = Math.max(0, 100 - solids);
  const rest = restOf(ingredient);
  const stated = ingredient.cells['water_g']?.value ?? (solids > 0 ? left : 0);
  const gap = left - stated;
  const wet = rest !== 'insolubles' && rest !== 'fat';
  if (gap <= 0 || (wet && gap <= GAP_g)) { grams[at.water]! += left; return 0; }
  grams[at.water]! += stated;
  grams[at[rest]]! += gap;
  return solids === 0 || rest === 'other_solubles' ? gap : 0;
}

/** Columns an answer may want and the row does not have. */
function missingOf(ingredient: Ingredient): string[] {
  const missing = ASKED.filter((column) => !ingredient.cells[column]);
  if (ingredient.category === 'dairy' && (ingredient.cells['protein_g']?.value ?? 0) > 0.5 && !ingredient.cells['casein_g']) missing.push('casein_g');
  return missing;
}

/**
 * What 100 g of an ingredient are made of, by constituent.
 * Acids, tannin and caffeine lie inside the carbohydrate where the row says so, beside it otherwise. Water is what the other parts leave
 * of 100 g; where that is more than 3 g above the water of the table, the water stays and the gap is counted as unknown solids.
 * @param ingredient a row of the larder
 * @returns grams by constituent (sum 100; 0 for gases), what is unknown, starting charge in mol per 100 g, energy in kcal per 100 g
 * @source none - definition (docs/models/larder.md)
 */
export function composition(ingredient: Ingredient): Composition {
  const grams = new Float64Array(CONSTITUENTS.length);
  const missing = missingOf(ingredient);
  const nothing = { acids_unknown_g: 0, charge_mol: 0, energy_kcal: 0, missing };
  if (ingredient.text['form'] === 'gas') return { grams, unknown_g: 0, ...nothing };

  grams[at.ethanol]! += ingredient.cells['alcohol_g']?.value ?? 0;
  const sugars = putSugars(grams, ingredient);
  const acids = putAcids(grams, ingredient);
  putProtein(grams, ingredient);
  putFat(grams, ingredient);
  putAsh(grams, ingredient);
  putCarbohydrate(grams, ingredient, sugars, acids);
  grams[at.quinine]! += (ingredient.cells['quinine_mg_kg']?.value ?? 0) / 10_000;

  const unknown_g = fillUp(grams, ingredient);
  return {
    grams, unknown_g, acids_unknown_g: acidsUnknown(ingredient), charge_mol: strongIons(ingredient),
    energy_kcal: ingredient.cells['energy_kcal']?.value ?? energyOf(grams), missing,
  };
}
