import type { BuildResult } from '../program/build.ts';
import type { Context } from '../program/context.ts';
import { moneyOf, settled } from '../program/shelf.ts';
import { reached } from './reached.ts';
import type { Cost, Figure } from './types.ts';

/** Tap water and ice are not paid for unless a shelf prices them. */
const FREE = new Set(['water-tap', 'water', 'ice']);

/**
 * What the drink costs in coins, and which lines have no price: their cost is not in it, and is never taken for nothing.
 * @param figure the figure `cost`, in units of the currency; absent where no line has a price
 * @returns null where no line has a price
 * @source common-practice
 */
export function costOf(ctx: Context, build: BuildResult | null, figure: Figure | undefined): Cost | null {
  if (!figure) return null;
  const { currency, digits, said } = moneyOf(ctx);
  const coins = (value: number): number => Math.round(value * 10 ** digits);
  const unpriced: Cost['unpriced'][number][] = [];
  for (const { put: { measure, source } } of reached(ctx, build)) {
    const id = source.ingredient?.id ?? null, held = settled(ctx, measure, id);
    if (held.price || id !== null && FREE.has(id)) continue;
    const other = held.first?.entry.price?.currency;
    unpriced.push({ path: measure.path, thing: measure.thing.words, ...(other ? { currency: other } : {}) });
  }
  return { currency, digits, assumed: !said, coins: coins(figure.value), low: coins(figure.low), high: coins(figure.high), partial: unpriced.length > 0, unpriced };
}
