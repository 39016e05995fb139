import type { LarderId } from '@washline/engine';
import { fold } from './fold.ts';
import { names, type Language, type NameRow } from '../vocabulary/vocabulary.ts';

export interface Near { readonly id: LarderId; readonly name: string }

/** Edits to get from a to b (one letter put in, left out, changed, or two swapped), or `most` + 1 when there are more. */
export function edits(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [], row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a.charCodeAt(i - 1) === b.charCodeAt(j - 1);
      let cost = Math.min((row[j] as number) + 1, (next[j - 1] as number) + 1, (row[j - 1] as number) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a.charCodeAt(i - 1) === b.charCodeAt(j - 2) && a.charCodeAt(i - 2) === b.charCodeAt(j - 1)) cost = Math.min(cost, (before[j - 2] as number) + 1);
      next.push(cost);
      if (cost < least) least = cost;
    }
    if (least > most) return most + 1;
    before = row;
    row = next;
  }
  return row[b.length] as number;
}

interface Indexed { readonly row: NameRow; readonly fold: string; readonly parts: readonly string[] }
const indexOf = new Map<Language, readonly Indexed[]>();
function index(language: Language): readonly Indexed[] {
  const known = indexOf.get(language);
  if (known !== undefined) return known;
  const made = names(language).rows.map((row) => ({ row, fold: fold(row.name), parts: row.name.split(/[\s\-/,]+/).map(fold).filter((part) => part !== '') }));
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
  for (const { row, fold: name, parts: own } of index(language)) {
    let score = 0;
    const slips = edits(folded, name, most);
    if (slips <= most) score = 100 - 12 * slips;
    else {
      let shared = 0;
      for (const part of own) if (parts.includes(part) || (part.length > 4 && parts.some((other) => other.length > 4 && edits(part, other, 1) <= 1))) shared += part.length;
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
