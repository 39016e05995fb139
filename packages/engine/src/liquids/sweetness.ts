import table from '../../../../data/physics/sweetness.json' with { type: 'json' };

export interface Sweetness { readonly low: number; readonly value: number; readonly high: number; readonly sources: readonly string[] }

/**
 * How sweet is a sweetener by mass, sucrose being 1?
 * @param name as in the table: `fructose`, `invert sugar`, `sucralose` …
 * @returns lowest, mean and highest of the printed values with their sources; undefined for a name that is not in the table
 * @source sweet-enc; sweet-ph table 2; sweet-nutr table 2; goff2013 table 3.4
 */
export function relativeSweetness(name: string): Sweetness | undefined {
  const row = table.rows.find((r) => r.name === name);
  if (!row) return undefined;
  const mean = row.values.reduce((a, b) => a + b, 0) / row.values.length;
  return { low: Math.min(...row.values), value: mean, high: Math.max(...row.values), sources: row.sources };
}
