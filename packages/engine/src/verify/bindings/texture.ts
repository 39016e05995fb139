import type { Bindings, Inputs } from '../types.ts';
import { AGENTS, byBloom, bySheet, driedWhite, enzymeOf, GRADES, gramsToSheets, inactivationMargin, NEEDED_DECADES, sheetsToGrams, treatedLeft } from '../../texture/index.ts';
import type { SheetGrade } from '../../texture/index.ts';

const gradeOf = (i: Inputs): SheetGrade | undefined => (Object.keys(GRADES) as SheetGrade[]).find((grade) => grade === i.text('grade'));
const converted = (i: Inputs, grams: number, from: number, to: number) => (i.text('rule') === 'sheet' || i.text('rule') === 'linear' ? bySheet(grams, from, to) : byBloom(grams, from, to));

/** `kiwi, raw`: whether gelatin comes through what is left of its enzyme. */
function withGelatin(i: Inputs): string | undefined {
  const [fruit = '', treatment = 'raw'] = (i.text('ingredient') ?? '').split(',').map((word) => word.trim());
  const enzyme = enzymeOf(fruit);
  if (fruit === '') return undefined;
  if (enzyme === undefined) return 'pass';
  const celsius = i.maybe('t_C', 'held_C'), minutes = i.maybe('min', 'held_min');
  if (celsius !== undefined && minutes !== undefined) return inactivationMargin(enzyme, celsius, 60 * minutes) > 0 ? 'fail' : 'pass';
  return treatedLeft(enzyme, treatment) > 10 ** -NEEDED_DECADES ? 'fail' : 'pass';
}

/** Against the ceiling of the supplier's table. */
function inSpirit(i: Inputs): string | undefined {
  const limit = AGENTS[i.text('gum') ?? '']?.alcohol.supplier;
  return limit === undefined ? undefined : `${i.number('abv') > limit ? 'warn' : 'ok'} (limit ${limit})`;
}

/** Gelatin and other agents. */
export const texture: Bindings = {
  gelatin_weight_factor_between_blooms: (i) => converted(i, 1, i.number('recipe_bloom'), i.number('own_bloom')),
  '21_g_platinum_250_as_silver_160': (i) => converted(i, i.number('mass_g'), i.number('from_bloom'), i.number('to_bloom')),
  '10_silver_sheets_in_grams': (i) => { const grade = gradeOf(i); return grade && sheetsToGrams(i.number('sheets'), grade); },
  '6_g_gold_sheets': (i) => { const grade = gradeOf(i); return grade && gramsToSheets(i.number('g'), grade); },
  dried_white_for_90_g_liquid: (i) => driedWhite(i.number('liquid_g')).powder_g,
  water_for_90_g_liquid_white: (i) => driedWhite(i.number('liquid_g')).water_g,
  gelatin_blocked_by_fresh_kiwi: withGelatin,
  gelatin_at_35_abv: inSpirit,
};
