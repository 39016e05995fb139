import type { Measure, Section, ShelfEntry } from '../document/types.ts';
import type { Tables } from '../larder/types.ts';
import { minorDigits } from '../units/money.ts';
import type { Context } from './context.ts';

/** Where a value was taken from: written on the line, the maker's bench, the spec's shelf, the tables. In this order the first wins. */
export type From = 'line' | 'bench' | 'spec' | 'table';
/** A bottle that fits a line, and whose it is. */
export interface Held { readonly entry: ShelfEntry; readonly from: 'bench' | 'spec' }

/**
 * The bottles that fit what a line names: the maker's own before the spec's, one of each, found by name and else by what it is.
 * @param id the ingredient of the line, or null where the larder has none
 * @source none - definition
 */
export function bottles(ctx: Pick<Context, 'shelves'>, m: Measure, id: string | null): Held[] {
  const link = m.thing.link, names = new Set([m.thing.words.toLowerCase(), ...(link.kind === 'shelf' ? [link.shelf.toLowerCase()] : [])]);
  const out: Held[] = [];
  for (const from of ['bench', 'spec'] as const) {
    const entries = ctx.shelves[from], entry = entries.find((e) => names.has(e.name.toLowerCase())) ?? entries.find((e) => id !== null && e.larder === id);
    if (entry) out.push({ entry, from });
  }
  return out;
}

/** The maker's bottles and the spec's. */
export type Shelves = Readonly<Record<'bench' | 'spec', readonly ShelfEntry[]>>;
export function shelvesOf(sections: readonly Section[], tables: Tables): Shelves {
  const own = new Set(tables.bench?.shelf), of = (bench: boolean) => sections.filter((s) => own.has(s) === bench).flatMap((s) => s.shelf ?? []);
  return { bench: of(true), spec: of(false) };
}

/** What the drink is paid in: its code, the digits behind its point, and whether anybody said so. */
export interface Money { readonly currency: string; readonly digits: number; readonly said: boolean }

/**
 * The currency of a reading: the bench's, else the first that a price is written in, else the euro.
 * @source none - definition
 */
export function moneyOf(ctx: Pick<Context, 'sections' | 'tables'>): Money {
  const said = ctx.tables.bench?.currency ?? ctx.sections.flatMap((s) => s.shelf ?? []).find((e) => e.price?.currency)?.price?.currency;
  const currency = said ?? 'EUR';
  return { currency, digits: minorDigits(currency) ?? 2, said: said !== undefined };
}

/** A price as the run takes it, smallest coins for a mL or a g. */
export interface Priced { readonly perMl: number; readonly perG: number }

/**
 * What a bottle costs in this money. A price without a currency is in it; a price in another one does not count, since no rate is known.
 * @returns null where there is no price that counts
 * @source none - definition
 */
export function priceIn(money: Money, entry: ShelfEntry): Priced | null {
  const price = entry.price;
  if (!price || price.currency !== undefined && price.currency !== money.currency) return null;
  // without a currency it was read in hundredths
  const minor = price.currency === undefined ? price.minor * 10 ** (money.digits - 2) : price.minor;
  if (price.per_mL) return { perMl: minor / price.per_mL, perG: 0 };
  return price.per_g ? { perMl: 0, perG: minor / price.per_g } : null;
}

/** The first of the bottles with a strength, and the first with a price that counts. */
export function settled(ctx: Pick<Context, 'sections' | 'tables' | 'shelves'>, m: Measure, id: string | null): { readonly strength: Held | undefined; readonly price: Held | undefined; readonly first: Held | undefined } {
  const fitting = bottles(ctx, m, id);
  const money = fitting.some((b) => b.entry.price) ? moneyOf(ctx) : null;
  return { first: fitting[0], strength: fitting.find((b) => b.entry.strength !== undefined), price: money === null ? undefined : fitting.find((b) => priceIn(money, b.entry) !== null) };
}
