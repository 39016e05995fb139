import type { Tables } from './types.ts';

/** Upper ends of the ranges a tool serves, as in the keys `tool/for/ml/5` … of `data/assumptions.tsv`. */
const UPPER = { ml: [5, 90, 2000, 1_000_000], g: [20, 1_000_000], piece: [1_000_000] } as const;

/**
 * The tool a written amount is taken to be measured with, when none is named.
 * @param of what is measured
 * @param amount in ml, g or pieces; above the last range the last tool serves
 * @returns a key of `data/spreads.tsv` such as `tool/jigger`
 * @source common-practice data/assumptions.tsv tool/for
 */
export function toolFor(of: 'ml' | 'g' | 'piece', amount: number, tables: Pick<Tables, 'assumption'>): string {
  const upper = UPPER[of].find((end) => amount < end) ?? UPPER[of].at(-1);
  const row = tables.assumption(`tool/for/${of}/${upper}`);
  return typeof row?.value === 'string' ? row.value : 'tool/jigger';
}
