import type { Ingredient } from './types.ts';

const MOLAR = { sodium: 22.990, potassium: 39.098 } as const;                            // g/mol
const BUFFERS = ['citric', 'malic', 'tartaric', 'lactic', 'acetic', 'phosphoric', 'quinic', 'succinic', 'other_acid'];

/**
 * Net charge of the strong ions of 100 g: potassium and sodium, without what chloride balances (table salt, calcium chloride) and without the counter-ions of gums and
 * gelatin; of pure calcium salts of a weak acid the calcium too.
 * @returns mol per 100 g, 0 or more; a column that is missing counts as none
 * @source chem-handbook molar masses
 */
export function strongIons(ingredient: Ingredient): number {
  if (ingredient.text['form'] === 'agent') return 0;
  const of = (column: string) => ingredient.cells[column]?.value ?? 0;
  const chloride = ingredient.text['sodium'] === 'salt';
  const sodium_mg = chloride ? 0 : of('sodium_mg');
  const calcium_mmol_kg = ingredient.category === 'mineral' && !chloride ? of('calcium_mmol_kg') : 0;
  return of('potassium_mg') / 1000 / MOLAR.potassium + sodium_mg / 1000 / MOLAR.sodium + (2 * calcium_mmol_kg) / 10_000;
}

/** Whether the row states what buffers: an acid (ascorbic alone does not count), or the casein and phosphate of a dairy. @source none - definition */
export const statesAcids = (ingredient: Ingredient): boolean =>
  BUFFERS.some((acid) => (ingredient.cells[`${acid}_g`]?.value ?? 0) > 0) || ((ingredient.cells['casein_g']?.value ?? 0) > 0 && ingredient.cells['phosphate_mmol_kg'] !== undefined);

/**
 * How much of 100 g brings acids that are not known: all of it where the kind of ingredient holds acids and the row states none,
 * nothing for spirits, sugars, waters, agents and the like, which bring none.
 * @returns 0 or 100 g per 100 g
 * @source common-practice data/larder/forms.tsv
 */
export function acidsUnknown(ingredient: Ingredient): number {
  const acids = ingredient.text['acids'];
  return acids === 'unknown' || (acids === 'stated' && !statesAcids(ingredient)) ? 100 : 0;
}
