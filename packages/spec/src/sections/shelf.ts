import type { ShelfEntry } from '@washline/engine';
import { lookup } from '../names/lookup.ts';

const STRENGTH = /(\d{1,3}(?:[.,]\d{1,3})?)\s*%/;
const PRICE = /(?:([€$£]|EUR|USD|GBP|CHF|AUD|SEK|DKK|NOK)\s*)?(\d{1,6})(?:[.,](\d{1,2}))?\s*(?:€|\$|£|EUR|USD|GBP|CHF|AUD|SEK|DKK|NOK)?\s*(?:per|for|pro|je|\/)\s*(\d{1,5}(?:[.,]\d{1,3})?)?\s*(ml|cl|dl|l|litre|liter|g|kg)\b/i;
const ML: Readonly<Record<string, number>> = { ml: 1, cl: 10, dl: 100, l: 1000, litre: 1000, liter: 1000 };
const G: Readonly<Record<string, number>> = { g: 1, kg: 1000 };

/** One line of a shelf: "white rum: 40 %, 24.00 per 700 ml". Undefined where it does not read so. */
export function shelfEntry(line: string, from: number): { readonly entry: ShelfEntry; readonly unused: { readonly at: number; readonly text: string } | null } | undefined {
  const colon = line.indexOf(':');
  const name = (colon < 0 ? line : line.slice(0, colon)).trim();
  if (name === '' || name.length > 80) return undefined;
  const rest = colon < 0 ? '' : line.slice(colon + 1);
  const strength = STRENGTH.exec(rest);
  const price = PRICE.exec(rest);
  const found = lookup(name, 'volume');
  let left = rest;
  const blank = (match: RegExpExecArray | null): void => { if (match !== null) left = left.slice(0, match.index) + ' '.repeat(match[0].length) + left.slice(match.index + match[0].length); };
  blank(strength);
  blank(price);
  const stray = /\d[\d.,]*/.exec(left);
  const unit = (price?.[5] ?? '').toLowerCase();
  const size = price?.[4] === undefined ? 1 : Number(price[4].replace(',', '.'));
  const minor = price === null ? 0 : Number(price[2]) * 100 + Number((price[3] ?? '').padEnd(2, '0').slice(0, 2));
  const per = ML[unit] !== undefined ? { per_mL: size * (ML[unit] ?? 1) } : G[unit] !== undefined ? { per_g: size * (G[unit] ?? 1) } : {};
  return {
    entry: {
      name, larder: found?.id ?? null, span: { from, to: from + line.length },
      ...(strength !== null ? { strength: Number((strength[1] ?? '0').replace(',', '.')) } : {}),
      ...(price !== null ? { price: { minor, ...per } } : {}),
    },
    unused: stray === null || colon < 0 ? null : { at: colon + 1 + stray.index, text: stray[0] },
  };
}
