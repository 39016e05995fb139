import type { Cell, Ingredient, SourDose } from '@washline/engine';
import { plain } from '../plain.ts';
import { inkFor } from '../print/ink.ts';
import { number } from '../print/numbers.ts';
import { soursShown } from '../print/sours.ts';
import { wrap } from '../print/text.ts';
import { printJson, refuse } from '../problems.ts';
import { say } from '../sentences.ts';
import { EXIT, type World } from '../world.ts';

export interface LarderFlags { readonly json: boolean; readonly color: boolean; readonly limes?: string; readonly lemons?: string }

/** Ingredients shown for a search, and how many of them with their values. */
const SHOWN = 12;

/** The least and most that fruit can titrate to, g of citric acid in a litre. */
const LEAST = 1, MOST = 150;

/** `washline larder [WORDS]`: ingredients by name, the best match first, each value with grade and source; for a juice what makes it as sour as lime or lemon. */
export async function larder(world: World, flags: LarderFlags, words: readonly string[]): Promise<number> {
  const [{ search }, { tables }, { acidDoses, sournessOf }] = await Promise.all([import('@washline/spec'), import('@washline/tables'), import('@washline/engine')]);
  const week: { lime?: number; lemon?: number } = {};
  for (const [fruit, written] of [['lime', flags.limes], ['lemon', flags.lemons]] as const) {
    if (written === undefined) continue;
    const value = Number(written);
    if (!(value >= LEAST && value <= MOST)) return refuse(world, flags.json, { code: 'acidity', message: say('larder.week', { value: written }) });
    week[fruit] = value;
  }
  const asked = words.join(' ').trim();
  const ids = asked === '' ? tables.ids : search(asked, SHOWN).map(({ id }) => id);
  const found = ids.flatMap((id) => { const ingredient = tables.ingredient(id); return ingredient ? [ingredient] : []; });
  if (found.length === 0 && asked !== '') return refuse(world, flags.json, { code: 'ingredient-unknown', message: say('larder.none', { words: asked }) });
  const doses = (ingredient: Ingredient): readonly SourDose[] => acidDoses(ingredient, tables, week);
  if (flags.json) { printJson(world, found.map((ingredient) => ({ ...asJson(ingredient), acidity_g_l: sournessOf(ingredient)?.acidity ?? null, acid_doses: doses(ingredient) }))); return EXIT.done; }
  const ink = inkFor(world, flags.color);
  if (asked === '') {
    world.stdout.write(`${found.map((ingredient) => plain(`${ingredient.id}  ${ingredient.name}`)).join('\n')}\n${say('larder.count', { count: found.length })}\n`);
    return EXIT.done;
  }
  const [best, ...others] = found;
  if (best) world.stdout.write(`${[ink.bold(plain(best.name)), ...valuesOf(best), ...soursShown(sournessOf(best)?.acidity, doses(best))].join('\n')}\n`);
  for (const other of others) world.stdout.write(`${plain(`${other.name} (${other.id})`)}\n`);
  return EXIT.done;
}

function cellsOf(ingredient: Ingredient): [string, Cell][] {
  return Object.entries(ingredient.cells).flatMap(([name, cell]) => (cell ? [[name, cell] as [string, Cell]] : []));
}

function asJson(ingredient: Ingredient): object {
  const { id, name, category, text, vegan, vegetarian, allergens, hazards } = ingredient;
  return { id, name, category, values: Object.fromEntries(cellsOf(ingredient)), text, vegan, vegetarian, allergens, hazards };
}

function valuesOf(ingredient: Ingredient): string[] {
  const values = cellsOf(ingredient).map(([name, { value, grade, source }]) => `  ${name.padEnd(28)} ${number(value).padStart(10)}  ${grade.padEnd(9)} ${source}`);
  const text = Object.entries(ingredient.text).flatMap(([name, value]) => (value === undefined || value === '' ? [] : wrap(plain(`${name}: ${value}`), '  ', '    ')));
  return [`  ${ingredient.id} · ${ingredient.category}`, ...values, ...text];
}
