import type { Phrase } from '../phrase/phrase.ts';
import { isFill } from './fill.ts';
import { isImperative, verbAt, type VerbAt } from './verb.ts';

/** "Into a whiskey glass drop …", "For mixing use …", "In a shaker, shake …": the verb behind a leading phrase. */
export function leadPhrase(p: Phrase, i: number, end: number): VerbAt | undefined {
  if (!/^(into|in|for|with|using|over|to|on|after|while|once|when|at|gently|carefully|slowly|quickly|in|im|mit|auf|lightly|very|vigorously|immediately|briefly|hard|without|thoroughly|nearly|almost|partly|quick|brief|short|light|final)$/.test(p.word(i))) return undefined;
  for (let k = i + 1; k < Math.min(end, i + 9); k++) {
    const word = p.word(k);
    if (/^(drop|break|crack)$/.test(word)) return put(k);
    const verb = verbAt(p, k, end);
    if (verb === undefined || !verb.rows.some(isImperative) || verb.row.language !== 'en') continue;
    if (/^(the|a|an|of|your|this|large|small|bar|in|into)$/.test(p.word(k - 1)) && !/^(into|in|gently)$/.test(p.word(i))) continue;
    if (/^(the|a|an|of|your|this|tall)$/.test(p.word(k - 1))) continue;
    if (/^(glass|cup)$/.test(p.word(verb.end)) && !isFill(verb.row.verb)) continue;
    return verb;
  }
  return undefined;
}
/** "drop", "break" and "crack" put something in. */
export const put = (k: number): VerbAt => ({ row: { verb: 'add', reading: 'other', form: 'imperative', waiting: false, language: 'en', words: 1 }, end: k + 1, from: k, rows: [] });
