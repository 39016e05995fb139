import type { LarderId } from '@washline/engine';
import { fold } from './fold.ts';
import { names, type NameRow } from '../vocabulary/names.ts';
import type { Language } from '../vocabulary/vocabulary.ts';

export interface Near { readonly id: LarderId; readonly name: string }

const rowA = new Uint8Array(130), rowB = new Uint8Array(130), rowC = new Uint8Array(130);

/** Edits to get from a to b (one letter put in, left out, changed, or two swapped), or `most` + 1 when there are more. Words over 120 letters count as too far. */
export function edits(a: string, b: string, most: number): number {
  const n = a.length, m = b.length;
  if (Math.abs(n - m) > most || n > 120 || m > 120) return most + 1;
  let before = rowA, row = rowB, next = rowC;
  for (let j = 0; j <= m; j++) row[j] = j;
  for (let i = 1; i <= n; i++) {
    next[0] = i;
    let least = i;
    const x = a.charCodeAt(i - 1), w = i > 1 ? a.charCodeAt(i - 2) : -1;
    for (let j = 1; j <= m; j++) {
      const y = b.charCodeAt(j - 1);
      let cost = (row[j - 1] as number) + (x === y ? 0 : 1);
      const above = (row[j] as number) + 1, left = (next[j - 1] as number) + 1;
      if (above < cost) cost = above;
      if (left < cost) cost = left;
      if (j > 1 && x === b.charCodeAt(j - 2) && w === y) { const swapped = (before[j - 2] as number) + 1; if (swapped < cost) cost = swapped; }
      next[j] = cost;
      if (cost < least) least = cost;
    }
    if (least > most) return most + 1;
    const spare = before;
    before = row;
    row = next;
    next = spare;
  }
  return Math.min(row[m] as number, most + 1);
}

/** Which letters a word holds, one bit each: two words too many bits apart cannot be near. */
export function letters(text: string): number {
  let bits = 0;
  for (let i = 0; i < text.length; i++) bits |= 1 << (text.charCodeAt(i) % 31);
  return bits;
}
export function apart(a: number, b: number): number {
  let x = a ^ b, count = 0;
  while (x !== 0) { x &= x - 1; count++; }
  return count;
}

interface Indexed { readonly row: NameRow; readonly fold: string; readonly parts: readonly string[]; readonly bits: number; readonly partBits: readonly number[] }
const indexOf = new Map<Language, readonly Indexed[]>();
function index(language: Language): readonly Indexed[] {
  const known = indexOf.get(language);
  if (known !== undefined) return known;
  const made = names(language).rows.map((row) => {
    const folded = fold(row.name), parts = row.name.split(/[\s\-/,]+/).map(fold).filter((part) => part !== '');
    return { row, fold: folded, parts, bits: letters(folded), partBits: parts.map(letters) };
  });
  indexOf.set(language, made);
  return made;
}
const cache = new Map<string, readonly Near[]>();

/**
 * The rows whose names come nearest to words that are no name: by slips of the pen, by the head noun, by shared words.
 *
 * @param phrase the words as written
 * @param n how many are wanted
 * @param language whose names are asked
 * @returns at most n rows, best first, none twice; fewer where nothing comes near
 * @source none - definition
 */
export function nearest(phrase: string, n: number, language: Language = 'en'): readonly Near[] {
  const folded = fold(phrase);
  if (folded === '' || folded.length > 60) return [];
  const key = `${language}:${n}:${folded}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const parts = phrase.split(/[\s\-/,]+/).map(fold).filter((part) => part !== '');
  const last = parts[parts.length - 1] ?? '';
  const most = folded.length <= 4 ? 1 : folded.length <= 8 ? 2 : 3;
  const best = new Map<LarderId, number>();
  const bits = letters(folded), asked = parts.map(letters);
  for (const { row, fold: name, parts: own, bits: nameBits, partBits } of index(language)) {
    let score = 0;
    const slips = Math.abs(name.length - folded.length) > most || apart(bits, nameBits) > 2 * most ? most + 1 : edits(folded, name, most);
    if (slips <= most) score = 100 - 12 * slips;
    else {
      let shared = 0;
      for (let n = 0; n < own.length; n++) {
        const part = own[n] as string, partBit = partBits[n] as number;
        for (let k = 0; k < parts.length; k++) {
          const other = parts[k] as string;
          if (part === other || (part.length > 4 && other.length > 4 && Math.abs(part.length - other.length) <= 1 && apart(partBit, asked[k] as number) <= 2 && edits(part, other, 1) <= 1)) { shared += part.length; break; }
        }
      }
      if (shared > 0) score = 60 * (2 * shared) / (folded.length + name.length) + (own[own.length - 1] === last ? 12 : 0) + (own.length === 1 && own[0] === last ? 10 : 0);
      else if (name.length >= 5 && folded.startsWith(name)) score = 20;
    }
    if (row.kind === 'ambiguous') score -= row.assumed ? 1 : 4;
    if (row.kind === 'preferred') score += 1;
    if (score > 15 && score > (best.get(row.id) ?? 0)) best.set(row.id, score);
  }
  const preferred = names(language).preferred;
  const out = [...best].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).slice(0, n).map(([id]) => ({ id, name: preferred.get(id) ?? id }));
  if (cache.size > 2000) cache.clear();
  cache.set(key, out);
  return out;
}
