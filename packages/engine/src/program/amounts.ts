import type { Amount, Measure } from '../document/types.ts';
import { toolFor } from '../larder/index.ts';
import type { Tables } from '../larder/types.ts';
import type { Context, Source } from './context.ts';

/** What an amount is of: an input for what was poured or weighed, and what one unit of it holds. */
export interface Poured {
  /** index of the input, in `unit` */
  readonly input: number;
  /** index of a shared factor (the jigger's own error), or -1 */
  readonly bias: number;
  /** further inputs that turn pieces into mL or g, or -1 */
  readonly each: number;
  readonly of: 'ml' | 'g';
  readonly factor: number;
}

const FRUIT = /^(lime|lemon|orange|grapefruit)(-|$)/;

/** Which tool measures an amount: chosen from what is written, the same while a level is dragged. */
function toolOf(unit: string, of: 'ml' | 'g', amount: number, tables: Tables): { row: string; shared?: string } {
  switch (unit) {
    case 'dash': return { row: 'tool/dash' };
    case 'drop': return { row: 'tool/drop' };
    case 'barspoon': return { row: 'tool/bar spoon' };
    case 'tsp': return { row: 'tool/tsp pour' };
    case 'tbsp': return { row: 'tool/tablespoon' };
    case 'pinch': return { row: 'tool/pinch' };
    case 'sheet': return { row: 'tool/gelatin sheet' };
    case 'splash': case 'handful': case 'scoop': case 'glass': case 'wineglass': return { row: 'tool/free pour' };
  }
  const row = toolFor(of, amount, tables);
  return row === 'tool/jigger' ? { row: 'tool/pour into jigger', shared: row } : { row };
}

/**
 * A written amount as inputs. Volumes are at 20 °C. Pieces go by the unit's row, the fruit's yield or the row's own unit mass;
 * null where the piece is not known.
 */
export function pour(ctx: Context, m: Measure, amount: Amount, source: Source, occurrence: string): Poured | null {
  const low = amount.low * (amount.factorLow ?? 1), high = amount.high * (amount.factorHigh ?? 1);
  const value = (low + high) / 2;
  const system = amount.system ?? ctx.document.head.measures?.value ?? null;
  const unit = amount.unit ?? 'piece';
  const solid = source.form === 'soluble' || source.form === 'botanical' || source.form === 'fat' || source.form === 'agent';
  let row = ctx.tables.unit(unit === 'oz' && solid ? 'oz-weight' : unit, system);
  if (unit === 'part') {
    const one = ctx.document.head.one?.value ?? ctx.document.head.part?.value;
    const ml = one ? /([\d.]+)\s*ml/i.exec(one) : null;
    if (ml) row = { unit, of: 'ml', factor: Number(ml[1]), low: Number(ml[1]), high: Number(ml[1]), defined: true, source: 'written' };
    else {
      const each = ctx.assume('measure/part', m.path, 'measure');
      return { input: pieces(ctx, m, value, occurrence), bias: -1, each, of: 'ml', factor: 1 };
    }
  }
  if (!row) return null;
  if (row.of === 'piece') return piece(ctx, m, unit, value * row.factor, source, occurrence);
  if (row.of !== 'ml' && row.of !== 'g') return null;
  const base = value * row.factor;
  const tool = toolOf(unit, row.of, base, ctx.tables);
  const range = low !== high || !row.defined && row.low !== row.high;
  const input = range
    ? ctx.book.add({ key: `pour/${occurrence}`, value: base, unit: row.of === 'ml' ? 'mL' : 'g', role: 'measure', at: m.path, grade: 'trade', source: row.source,
      spread: { kind: 'range', low: low * Math.min(row.factor, row.low || row.factor), high: high * Math.max(row.factor, row.high || row.factor), min: 0 } })
    : ctx.spread(`pour/${occurrence}`, tool.row, base, row.of === 'ml' ? 'mL' : 'g', 'measure', { at: m.path, bounds: { min: 0 } });
  const bias = tool.shared ? ctx.spread(`${tool.shared}/bias`, tool.shared, 1, 'share', 'tool') : -1;
  return { input, bias, each: -1, of: row.of, factor: 1 };
}

function pieces(ctx: Context, m: Measure, count: number, occurrence: string): number {
  return ctx.book.add({ key: `pour/${occurrence}`, value: count, unit: 'pieces', spread: { kind: 'exact' }, grade: 'defined', source: 'written', role: 'measure', at: m.path });
}

/** Share of an egg that is not shell. @source usda-sr28 refuse 12 % */
const OUT_OF_SHELL = 0.88;
/** Leaves on a sprig. @source common-practice */
const LEAVES_OF_A_SPRIG = 10;

/** What one of a counted thing is, by unit and row: keys of the assumptions, the first that fits. */
function eachOf(id: string, unit: string): { key: string; of: 'ml' | 'g'; factor?: number } | null {
  const fruit = FRUIT.exec(id)?.[1];
  if (fruit && !/peel|soda|acid|stretched|cordial/.test(id)) {
    if (unit === 'wedge') return fruit === 'lemon' || fruit === 'lime' ? { key: `fruit/yield/${fruit} wedge`, of: 'ml' } : null;
    if (unit === 'piece') return { key: `fruit/yield/${fruit}`, of: 'ml' };
    return null;
  }
  if (/-peel$/.test(id)) return { key: `fruit/peel/${FRUIT.exec(id)?.[1] ?? 'lemon'}`, of: 'g' };
  if (/^egg-white/.test(id)) return { key: 'egg/white', of: 'g' };
  if (/^egg-yolk/.test(id)) return { key: 'egg/yolk', of: 'g' };
  if (id === 'egg-whole') return { key: 'egg/size', of: 'g', factor: OUT_OF_SHELL };
  if (id === 'passion-fruit') return { key: 'fruit/yield/passion fruit pulp', of: 'g' };
  if (unit === 'sprig') return { key: 'garnish/mint sprig', of: 'g' };
  if (unit === 'leaf') return { key: 'garnish/mint sprig', of: 'g', factor: 1 / LEAVES_OF_A_SPRIG };
  if (unit === 'slice' || unit === 'wheel') return { key: 'garnish/citrus wheel', of: 'g' };
  if (/^cherry/.test(id)) return { key: 'garnish/cherry', of: 'g' };
  if (/^olive/.test(id)) return { key: 'garnish/olive', of: 'g' };
  return null;
}

function piece(ctx: Context, m: Measure, unit: string, count: number, source: Source, occurrence: string): Poured | null {
  const row = source.ingredient;
  if (!row) return null;
  const mass = row.cells['unit_mass_g'];
  if (mass && (unit === 'piece' || unit === 'sheet' || unit === 'packet' || unit === 'leaf')) {
    const each = ctx.spread(`unit/${row.id}`, unit === 'sheet' || unit === 'leaf' ? 'tool/gelatin sheet' : 'tool/egg white', mass.value, 'g', 'nature', { at: m.path, grade: mass.grade, source: mass.source });
    return { input: pieces(ctx, m, count, occurrence), bias: -1, each, of: 'g', factor: 1 };
  }
  const known = eachOf(row.id, unit);
  if (!known || !ctx.tables.assumption(known.key)) return null;
  return { input: pieces(ctx, m, count, occurrence), bias: -1, each: ctx.assume(known.key, m.path), of: known.of, factor: known.factor ?? 1 };
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
