import type { Ingredient, SpreadRow, Tables } from './types.ts';

/**
 * Which row says how wide a value of the larder is: that of the ingredient itself, else that of its class.
 * @param ingredient a row of the larder
 * @param column a number column such as `citric_g`, or `ph`
 * @returns a key of `data/spreads.tsv`: `larder/<id>/<column>` where there is such a row, else `larder/<category>/<column>`, whether or not there is one
 * @source none - definition
 */
export function spreadKey(ingredient: Ingredient, column: string, tables: Pick<Tables, 'spread'>): string {
  const own = `larder/${ingredient.id}/${column}`;
  return tables.spread(own) ? own : `larder/${ingredient.category}/${column}`;
}

/**
 * How wide a value of the larder is: the row of the ingredient itself, else that of its class. For pH the band of the row stands in.
 * @param ingredient a row of the larder
 * @param column a number column such as `citric_g`, or `ph`
 * @returns the row of `data/spreads.tsv`; undefined where none is known
 * @source none - definition
 */
export function spreadOf(ingredient: Ingredient, column: string, tables: Pick<Tables, 'spread'>): SpreadRow | undefined {
  return tables.spread(spreadKey(ingredient, column, tables)) ?? (column === 'ph' ? bandOf(ingredient) : undefined);
}

/** The pH a row prints as a band: its ends are taken as 95 % points. */
function bandOf(ingredient: Ingredient): SpreadRow | undefined {
  const [low, high] = [ingredient.cells['ph_low'], ingredient.cells['ph_high']];
  if (!low || !high) return undefined;
  return { kind: 'absolute', a: low.value, b: high.value, unit: 'pH', grade: low.grade, source: low.source };
}
