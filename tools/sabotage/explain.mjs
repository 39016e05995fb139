// Which survivors have a reason, by the classes of explained.json.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { dataFiles, numbersOf } from './numbers.mjs';
import { pattern } from './residuals.mjs';

const JUDGED = { 'common-practice': 'trade', memory: 'memory', COMMON: 'trade', MEMORY: 'memory' };

/** The grade and source a number has: those of its cell where the sheet has them by column, of its row, or of the nearest entry above it. */
export function gradeOf(number) {
  if (number.row) {
    const { row, column, file } = number;
    const listed = (list) => /\[(\w+)\]$/.exec((list ?? '').split(';').find((part) => part.startsWith(`${column}:`) || part.startsWith(`${column.replace(/_g$/, '')}:`)) ?? '')?.[1];
    if (file.endsWith('craft.tsv')) return listed(row.sources);
    if (file.endsWith('ingredients.tsv')) {
      if (column === 'ph_low' || column === 'ph_high') return row.ph_grade;
      if (column === 'density_g_ml') return row.density_grade;
      if (column === 'abv_pct') return row.abv_grade;
      if (column.startsWith('abv_')) return row.abv_law_grade;
      if (column === 'sugar_g_l') return row.sugar_grade;
      if (column.startsWith('sugar_min')) return row.sugar_law_grade;
      return listed(row.acids_source) ?? row.grade;
    }
    return row.grade ?? JUDGED[row.status] ?? row.status ?? 'trade';
  }
  for (const node of [...number.above].reverse()) {
    const at = number.path.find((key) => `${key}Source` in node || `${key}_source` in node);
    const source = at ? node[`${at}Source`] ?? node[`${at}_source`] : node.source ?? node.sources?.[0];
    if (node.grade) return node.grade;
    if (source) return JUDGED[source] ?? 'compiled';
  }
  return 'none';
}

const { never, classes } = JSON.parse(readFileSync(join(root, 'tools/sabotage/explained.json'), 'utf8'));
for (const one of [...never, ...classes]) { one.files = pattern(one.file); one.places = pattern(one.place ?? '*'); }
export { classes };

const fits = (one, number) => one.files.test(number.file) && one.places.test(number.place) && (!one.grade || one.grade.includes(gradeOf(number)));

/** The class that explains why a shift of the number is not noticed; undefined where none does, or where none may. */
export function explanation(number) {
  return never.some((one) => fits(one, number)) ? undefined : classes.find((one) => fits(one, number));
}

/** Entries that name no number of data/ any more. */
export function stale() {
  const numbers = dataFiles().flatMap(numbersOf);
  return [...never, ...classes].filter((one) => !numbers.some((number) => fits(one, number)));
}
