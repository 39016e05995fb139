import type { Ingredient } from './types.ts';

/** What a diet asks of an ingredient; `check` means it depends on finings, colours, rennet or the maker. */
export interface Diet { readonly vegan: Ingredient['vegan']; readonly vegetarian: Ingredient['vegetarian'] }

/** Whether an ingredient is vegan and vegetarian. @source common-practice trade knowledge, data/larder/ingredients.tsv */
export const dietOf = (ingredient: Ingredient): Diet => ({ vegan: ingredient.vegan, vegetarian: ingredient.vegetarian });

/** Allergen groups of the EU an ingredient holds; `certain` false where the maker decides. @source eu-1169-2011-annex2 */
export const allergensOf = (ingredient: Ingredient): Ingredient['allergens'] => ingredient.allergens;

/** Major food allergens of the US an ingredient holds; `certain` false where the maker decides. @source us-falcpa-faster */
export function allergensUsOf(ingredient: Ingredient): Ingredient['allergens'] {
  const written = ingredient.text['allergens_us'];
  return (written ? written.split(/[;,] */) : []).filter(Boolean).map((group) => ({ group: group.replace(/\?$/, ''), certain: !group.endsWith('?') }));
}
