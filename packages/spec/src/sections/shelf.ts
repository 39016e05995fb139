import { minorDigits, smallestCoins, type ShelfEntry } from '@washline/engine';
import money from '../../../../data/currencies.json' with { type: 'json' };
import { lookup } from '../names/lookup.ts';

const STRENGTH = /(\d{1,3}(?:[.,]\d{1,3})?)\s*%/;
const SIGN = '[€$£¥]|[A-Z]{3}', AMOUNT = '(\\d{1,7})(?:[.,](\\d{1,3}))?', SIZE = '(\\d{1,5}(?:[.,]\\d{1,3})?)?\\s*(ml|cl|dl|l|litres?|liters?|oz|gal|gallon|g|kg|lb)\\b';
/** "24.00 per 700 ml", "EUR 24 / l", "¥2400 per bottle of 700 ml". */
const PER = new RegExp(`(?:(${SIGN})\\s*)?${AMOUNT}\\s*(${SIGN})?\\s*(?:per|for|pro|je|/)\\s*(?:(?:bottle|carton|can|bag|pack|flasche|packung|dose)\\s+(?:of|mit|zu|von|à)\\s+)?${SIZE}`, 'iu');
/** "700 ml for 24.00", "700 ml at EUR 24". */
const FOR = new RegExp(`${SIZE}\\s+(?:bottle\\s+)?(?:for|at|für|zu)\\s+(?:(${SIGN})\\s*)?${AMOUNT}(?![\\d.,%])\\s*(${SIGN})?(?!\\s*(?:%|°))`, 'iu');
const HELD = new RegExp(SIZE.replace(')?', ')'), 'i');
const ML: Readonly<Record<string, number>> = { ml: 1, cl: 10, dl: 100, l: 1000, litre: 1000, liter: 1000, oz: 29.5735295625, gal: 3785.411784, gallon: 3785.411784 };
const G: Readonly<Record<string, number>> = { g: 1, kg: 1000, lb: 453.59237 };
const SYMBOLS: Readonly<Record<string, string>> = money.symbols;
const DOLLARS = new Set(money.dollars.split(' '));

/** Which currency a sign or code is: a dollar is the bench's own where that is one. Null: no currency. */
function currencyOf(sign: string, own: string | null): string | null {
  if (sign === '$' && own !== null && DOLLARS.has(own)) return own;
  const code = SYMBOLS[sign] ?? sign.toUpperCase();
  return minorDigits(code) === undefined ? null : code;
}

interface Price { readonly minor: number; readonly per_mL?: number; readonly per_g?: number; readonly currency?: string }
function priceOf(whole: string, fraction: string, sign: string, size: string | undefined, unit: string, own: string | null): Price | null {
  // three letters that are no capitals are a word of the line
  const written = /[€$£¥]|[A-Z]{3}/.test(sign) ? sign : '';
  const currency = written === '' ? own : currencyOf(written, own);
  if (written !== '' && currency === null) return null;
  const minor = smallestCoins(whole, fraction, currency === null ? 2 : minorDigits(currency) ?? 2);
  return minor === null ? null : { minor, ...per(size, unit), ...(currency === null ? {} : { currency }) };
}
const amountIn = (size: string | undefined): number => (size === undefined ? 1 : Number(size.replace(',', '.')));
function per(size: string | undefined, unit: string): { per_mL?: number; per_g?: number } {
  const name = unit.toLowerCase().replace(/^(litre|liter)s$/, '$1');
  return ML[name] !== undefined ? { per_mL: amountIn(size) * ML[name] } : { per_g: amountIn(size) * (G[name] ?? 1) };
}

/**
 * One line of a shelf: "white rum: 40 %, 24.00 per 700 ml". Undefined where it does not read so.
 * @param currency that of the bench, for prices without one; null in a spec
 */
export function shelfEntry(line: string, from: number, currency: string | null = null): { readonly entry: ShelfEntry; readonly unused: { readonly at: number; readonly text: string } | null } | undefined {
  const colon = line.indexOf(':');
  const name = (colon < 0 ? line : line.slice(0, colon)).trim();
  if (name === '' || name.length > 80) return undefined;
  let left = colon < 0 ? '' : line.slice(colon + 1);
  const take = (match: RegExpExecArray | null): void => { if (match !== null) left = left.slice(0, match.index) + ' '.repeat(match[0].length) + left.slice(match.index + match[0].length); };
  const strength = STRENGTH.exec(left);
  take(strength);
  const [forward, backward] = [PER.exec(left), FOR.exec(left)];
  const read = forward !== null ? priceOf(forward[2] ?? '', forward[3] ?? '', forward[1] ?? forward[4] ?? '', forward[5], forward[6] ?? '', currency)
    : backward !== null ? priceOf(backward[4] ?? '', backward[5] ?? '', backward[3] ?? backward[6] ?? '', backward[1], backward[2] ?? '', currency) : null;
  if (read !== null && (read.per_mL ?? read.per_g ?? 0) > 0) take(forward ?? backward);
  const held = HELD.exec(left), holds = held === null ? null : per(held[1], held[2] ?? '');
  take(held);
  const stray = /\d[\d.,]*/.exec(left);
  const found = lookup(name, 'volume');
  return {
    entry: {
      name, larder: found?.id ?? null, span: { from, to: from + line.length },
      ...(strength !== null ? { strength: Number((strength[1] ?? '0').replace(',', '.')) } : {}),
      ...(read !== null && (read.per_mL ?? read.per_g ?? 0) > 0 ? { price: read } : {}),
      ...(holds !== null ? { size: holds.per_mL !== undefined ? { mL: holds.per_mL } : { g: holds.per_g! } } : {}),
    },
    unused: stray === null || colon < 0 ? null : { at: colon + 1 + stray.index, text: stray[0] },
  };
}
