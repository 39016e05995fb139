import type { Measure } from '../document/types.ts';
import type { Ingredient } from '../larder/types.ts';
import type { Context, Source } from './context.ts';

const FRUIT = /^(lime|lemon|orange|grapefruit)(-|$)/;

/** What one counted thing is: inputs whose product is its size. */
export interface Each { readonly inputs: readonly number[]; readonly of: 'ml' | 'g' }

/** Keys of the assumptions, the first that fits: by thing and unit, then by class of thing. */
function keyOf(ctx: Context, id: string, unit: string): { key: string; of: 'ml' | 'g'; part?: string } | null {
  const own = [`each/${id}/${unit}`, unit === 'piece' || unit === 'pod' || unit === 'fruit' ? `each/${id}` : ''].find((key) => key !== '' && ctx.tables.assumption(key));
  if (own) return { key: own, of: 'g' };
  const fruit = FRUIT.exec(id)?.[1];
  if (fruit && !/peel|soda|acid|stretched|cordial/.test(id)) {
    if (unit === 'wedge') return fruit === 'lemon' || fruit === 'lime' ? { key: `fruit/yield/${fruit} wedge`, of: 'ml' } : null;
    if (unit === 'piece') return { key: `fruit/yield/${fruit}`, of: 'ml' };
    return unit === 'slice' || unit === 'wheel' ? { key: 'garnish/citrus wheel', of: 'g' } : null;
  }
  if (/-peel$/.test(id)) return { key: unit === 'strip' || unit === 'slice' ? 'garnish/citrus twist' : `fruit/peel/${FRUIT.exec(id)?.[1] ?? 'lemon'}`, of: 'g' };
  if (/^egg-white/.test(id)) return { key: 'egg/white', of: 'g' };
  if (/^egg-yolk/.test(id)) return { key: 'egg/yolk', of: 'g' };
  if (id === 'egg-whole') return { key: 'egg/size', of: 'g', part: 'egg/out of shell' };
  if (/^passion-fruit(-pulp)?$/.test(id)) return { key: 'fruit/yield/passion fruit pulp', of: 'g' };
  if (unit === 'sprig') return { key: 'garnish/mint sprig', of: 'g' };
  if (unit === 'leaf') return { key: 'garnish/mint sprig', of: 'g', part: 'garnish/leaf of a sprig' };
  if (unit === 'slice' || unit === 'wheel') return { key: 'garnish/citrus wheel', of: 'g' };
  if (/^cherry/.test(id)) return { key: 'garnish/cherry', of: 'g' };
  if (/^olive/.test(id)) return { key: 'garnish/olive', of: 'g' };
  return null;
}

/** How large one of a counted thing is: its own unit mass, else a row of the assumptions; null where the piece is not known. */
export function eachOf(ctx: Context, m: Measure, unit: string, source: Source): Each | null {
  const row = source.ingredient;
  if (!row) return null;
  const mass = row.cells['unit_mass_g'];
  if (mass && (unit === 'piece' || unit === 'sheet' || unit === 'packet' || unit === 'leaf')) {
    const input = ctx.spread(`unit/${row.id}`, unit === 'sheet' || unit === 'leaf' ? 'tool/gelatin sheet' : 'tool/egg white', mass.value, 'g', 'nature', { at: m.path, from: `craft ${row.id} unit_mass_g` });
    return { inputs: [input], of: 'g' };
  }
  const known = keyOf(ctx, row.id, unit);
  if (!known || !ctx.tables.assumption(known.key)) return null;
  return { inputs: [ctx.assume(known.key, m.path), ...(known.part ? [ctx.assume(known.part, m.path)] : [])], of: known.of };
}

/** Dry things, which a spoon holds with air between them. */
export function isDry(row: Ingredient | undefined, form: string): boolean {
  if (!row) return false;
  const wet = (row.cells['water_g']?.value ?? 0) > 50;
  return form === 'botanical' || form === 'piece' || ((form === 'soluble' || form === 'agent' || form === 'insoluble') && !wet);
}

/** An input for how many grams of a dry thing a mL of spoon or cup holds; -1 where it is poured, or not known. */
export function spooned(ctx: Context, m: Measure, source: Source): number {
  const row = source.ingredient;
  if (!row || !isDry(row, source.form)) return -1;
  const key = [`spooned/${row.id}`, `spooned/${row.category}`].find((k) => ctx.tables.assumption(k));
  return key ? ctx.assume(key, m.path) : -1;
}

/**
 * The row a counted fruit is taken for: a lime by count is its juice, as recipes mean it, unless it is its peel.
 * @source common-practice
 */
export function countedAs(id: string, unit: string | null): string {
  const fruit = /^(lime|lemon)-flesh$|^(orange|grapefruit)$/.exec(id);
  if (!fruit || (unit !== null && unit !== 'piece' && unit !== 'wedge')) return id;
  return { lime: 'lime-juice', lemon: 'lemon-juice', orange: 'orange-juice', grapefruit: 'grapefruit-juice-white' }[fruit[1] ?? fruit[2] ?? ''] ?? id;
}
