import type { Compiled } from '../program/compile.ts';
import type { Context, Put } from '../program/context.ts';
import { bottles, moneyOf, priceIn, settled, type From } from '../program/shelf.ts';
import { reached } from './reached.ts';
import type { Taken } from './types.ts';

/**
 * Where values were taken from, wherever a bench or a shelf had a say: written on the line, else the maker's bench, else the spec's
 * shelf, else the tables; and what was passed over, where it differs.
 * @source none - definition
 */
export function takenOf({ ctx, build, program }: Pick<Compiled, 'ctx' | 'build' | 'program'>): Taken[] {
  const out: Taken[] = [], seen = new Set<string>();
  const add = (t: Taken): void => { if (!seen.has(t.key)) { seen.add(t.key); out.push(t); } };
  for (const { put } of reached(ctx, build)) { strength(ctx, put, add); price(ctx, put, add); unit(ctx, put, add); }
  for (const i of program.inputs) {
    if (i.source !== 'bench' || !i.from?.startsWith('assumptions ')) continue;
    const key = i.from.slice('assumptions '.length);
    const low = i.spread.kind === 'range' ? { low: i.spread.low, high: i.spread.high } : {};
    add({ key, from: 'bench', value: i.value, unit: i.unit, ...low, ...over(ctx, key, i.value) });
  }
  for (const w of ctx.book.words) if (w.source === 'bench') add({ key: w.key, from: 'bench', value: w.value, unit: '', ...over(ctx, w.key, w.value) });
  return out;
}

/** What the tables would have said. */
function over(ctx: Context, key: string, value: number | string): Pick<Taken, 'over'> {
  const row = ctx.tables.under?.assumption(key);
  return row === undefined || row.value === value ? {} : { over: [{ from: 'table', value: row.value }] };
}

function strength(ctx: Context, { measure, source }: Put, add: (t: Taken) => void): void {
  const held = bottles(ctx, measure, source.ingredient?.id ?? null).filter((b) => b.entry.strength !== undefined);
  if (held.length === 0) return;
  const table = source.ingredient?.cells['abv_pct']?.value;
  const all: { from: From; value: number }[] = [
    ...(measure.strength ? [{ from: 'line' as const, value: measure.strength.value }] : []),
    ...held.map((b) => ({ from: b.from, value: b.entry.strength! })), ...(table === undefined ? [] : [{ from: 'table' as const, value: table }]),
  ];
  const [first, ...rest] = all as [typeof all[number], ...typeof all];
  const passed = rest.filter((r) => r.value !== first.value);
  add({ key: `bottle/${measure.thing.words.toLowerCase()}/strength`, from: first.from, value: first.value, unit: '% vol', ...(passed.length > 0 ? { over: passed } : {}) });
}

function price(ctx: Context, { measure, source }: Put, add: (t: Taken) => void): void {
  const id = source.ingredient?.id ?? null, held = settled(ctx, measure, id).price;
  if (!held) return;
  const money = moneyOf(ctx);
  const per = (entry: typeof held.entry): { value: number; unit: string } => {
    const p = entry.price!, by = p.per_mL ?? p.per_g ?? 1, { perMl, perG } = priceIn(money, entry)!;
    return { value: ((perMl || perG) * by) / 10 ** money.digits, unit: `${money.currency} per ${by} ${p.per_mL ? 'mL' : 'g'}` };
  };
  const chosen = per(held.entry);
  const passed = bottles(ctx, measure, id).filter((b) => b !== held && b.from !== held.from && priceIn(money, b.entry) !== null).map((b) => ({ from: b.from, value: per(b.entry).value }));
  add({ key: `bottle/${measure.thing.words.toLowerCase()}/price`, from: held.from, ...chosen, ...(passed.length > 0 ? { over: passed } : {}) });
}

/** The maker's own bar spoon, dash or drop. */
function unit(ctx: Context, { measure }: Put, add: (t: Taken) => void): void {
  const name = measure.amount?.unit ?? '', own = ctx.tables.bench?.units.get(name);
  if (!own) return;
  const table = ctx.tables.under?.unit(name, measure.amount?.system ?? null)?.factor;
  add({ key: `unit/${name}`, from: 'bench', value: own.factor, unit: own.of === 'g' ? 'g' : 'mL', low: own.low, high: own.high, ...(table === undefined || table === own.factor ? {} : { over: [{ from: 'table', value: table }] }) });
}
