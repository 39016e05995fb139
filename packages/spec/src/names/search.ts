import type { LarderId } from '@washline/engine';
import { fold } from './fold.ts';
import { edits } from './nearest.ts';
import { names, type NameRow } from '../vocabulary/names.ts';
import { category, type Language } from '../vocabulary/vocabulary.ts';

export interface Hit { readonly id: LarderId; readonly name: string; readonly matched: string; readonly category: string | null; readonly score: number }

interface Indexed { readonly row: NameRow; readonly fold: string; readonly parts: readonly string[] }
const indexOf = new Map<Language, readonly Indexed[]>();
function index(language: Language): readonly Indexed[] {
  const known = indexOf.get(language);
  if (known !== undefined) return known;
  const made = names(language).rows.map((row) => ({ row, fold: fold(row.name), parts: row.name.split(/[\s\-/,()]+/).map(fold).filter((part) => part !== '') }));
  indexOf.set(language, made);
  return made;
}
const KIND: Readonly<Record<NameRow['kind'], number>> = { preferred: 6, synonym: 3, plural: 2, ambiguous: 2, spelling: 1, old: 0 };

/** How well the words asked for stand in one name, 0 for not at all. */
function match(asked: readonly string[], whole: string, one: Indexed): number {
  if (one.fold === whole) return 100;
  if (one.fold.startsWith(whole)) return 80 - Math.min(20, one.fold.length - whole.length) / 2;
  let score = 0;
  for (const [at, word] of asked.entries()) {
    let best = 0;
    for (const part of one.parts) {
      if (part === word) best = Math.max(best, 10);
      else if (part.startsWith(word)) best = Math.max(best, at === asked.length - 1 ? 8 : 6);
      else if (part.length > 3 && word.length > 3) {
        const most = word.length > 6 ? 2 : 1;
        const slips = edits(word, part.length > word.length + most ? part.slice(0, word.length) : part, most);
        if (slips <= most) best = Math.max(best, 7 - 2 * slips);
      }
    }
    if (best === 0) return 0;
    score += best;
  }
  return 6 * score / asked.length - Math.min(10, (one.parts.length - asked.length) * 2);
}

/**
 * Ingredients whose names hold the words: whole name, beginning, whole words, beginnings of words, then with slips of the pen.
 *
 * @param phrase what was typed; empty finds nothing
 * @param limit how many at most
 * @param language whose names are asked; the others' are asked when it has none
 * @returns each ingredient once, best first, with the name that matched
 * @source none - definition
 */
export function search(phrase: string, limit = 10, language: Language = 'en'): readonly Hit[] {
  const whole = fold(phrase);
  const asked = phrase.split(/[\s\-/,()]+/).map(fold).filter((part) => part !== '');
  if (whole === '' || whole.length > 80) return [];
  const best = new Map<LarderId, Hit>();
  const preferred = names('en').preferred;
  for (const from of language === 'en' ? (['en', 'de'] as const) : ([language, 'en'] as const)) {
    if (from !== language && best.size > 0) break;
    for (const one of index(from)) {
      const found = match(asked, whole, one);
      if (found <= 0) continue;
      const score = found + KIND[one.row.kind] / 4 + (one.row.kind === 'ambiguous' && !one.row.assumed ? -3 : 0);
      const known = best.get(one.row.id);
      if (known === undefined || score > known.score) best.set(one.row.id, { id: one.row.id, name: preferred.get(one.row.id) ?? one.row.id, matched: one.row.name, category: category(one.row.id) ?? null, score });
    }
  }
  return [...best.values()].sort((a, b) => b.score - a.score || (a.name < b.name ? -1 : 1)).slice(0, limit);
}
