import type { Ingredient } from './types.ts';
import { labelStrengthOf } from './form.ts';
import type { Grade, SourceKey } from '../provenance/types.ts';

/** The bottle as its label would say it. */
export interface Alcoholic {
  readonly strength: number; readonly sugar_g_L: number;
  /** key of `data/spreads.tsv` for how far the bottle may lie from its label */
  readonly tolerance: string;
  readonly grade: Grade; readonly source: SourceKey;
}

/**
 * The usual strength and sugar of an ingredient that carries alcohol; what a label says goes before it.
 * @returns strength in % vol (0 to 100) and sugar in g/L; null for what carries no alcohol
 * @source common-practice typical label strengths, data/larder/ingredients.tsv
 */
export function alcoholic(ingredient: Ingredient): Alcoholic | null {
  const strength = ingredient.cells['abv_pct'];
  if (!strength || strength.value <= 0) return null;
  return { strength: strength.value, sugar_g_L: sugarOf(ingredient), tolerance: labelStrengthOf(ingredient) ?? 'label/strength/spirits', grade: strength.grade, source: strength.source };
}

/** Sugar in g/L: as the label class has it, else from sugars per 100 g and the density. */
function sugarOf(ingredient: Ingredient): number {
  const label = ingredient.cells['sugar_g_l'];
  if (label) return label.value;
  return (ingredient.cells['sugars_g']?.value ?? 0) * (ingredient.cells['density_g_ml']?.value ?? 1) * 10;
}

/** What law asks of a drink sold under this name: lowest and highest strength in % vol, least sugar in g/L. */
export interface LawOfStrength { readonly min: number | null; readonly max: number | null; readonly sugar_min_g_L: number | null; readonly source: SourceKey; readonly grade: Grade }

/**
 * The limits of law on strength and sugar of a drink sold under this name.
 * @returns limits in % vol and g/L, null where there is none; null when the row has no limit at all
 * @source eu-2019-787 Annex I and the laws named in data/larder/ingredients.tsv
 */
export function lawOfStrength(ingredient: Ingredient): LawOfStrength | null {
  const [min, max, sugar] = [ingredient.cells['abv_min_law'], ingredient.cells['abv_max_law'], ingredient.cells['sugar_min_law_g_l']];
  const any = min ?? max ?? sugar;
  if (!any) return null;
  return { min: min?.value ?? null, max: max?.value ?? null, sugar_min_g_L: sugar?.value ?? null, source: any.source, grade: any.grade };
}

/** g of ethanol in a standard drink; the British unit is 10 mL of ethanol at 20 °C. */
const STANDARD_g = { US: 14, UK: 10 * 0.78924, AU: 10 } as const;

/**
 * How many standard drinks an amount of ethanol makes.
 * @param ethanol_g grams of ethanol, 0 or more
 * @returns drinks of 14 g (US), units of 10 mL = 7.9 g (UK), drinks of 10 g (AU)
 * @source us_dga15 14 g; stddrink_add16 UK and AU
 */
export function standardDrinks(ethanol_g: number): Readonly<Record<'US' | 'UK' | 'AU', number>> {
  return { US: ethanol_g / STANDARD_g.US, UK: ethanol_g / STANDARD_g.UK, AU: ethanol_g / STANDARD_g.AU };
}
