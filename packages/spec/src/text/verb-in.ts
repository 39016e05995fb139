import type { Span, Verb } from '@washline/engine';
import { engineVerb } from '../line/verb.ts';
import { fold } from '../names/fold.ts';
import { verbs } from '../vocabulary/vocabulary.ts';

/**
 * Where an action's verb stands in its words, as it was written there: the longest phrase of the vocabulary that means this verb.
 *
 * @param text words of one action or line
 * @param verb as the engine names it
 * @returns offsets into `text`; null where it is not written in one piece
 * @source none - definition
 */
export function verbIn(text: string, verb: Verb): Span | null {
  const words = [...text.matchAll(/[\p{L}\p{M}]+(?:[-'’][\p{L}\p{M}]+)*/gu)].map((m) => ({ from: m.index, to: m.index + m[0].length }));
  for (let n = 5; n > 0; n -= 1) for (let i = 0; i + n <= words.length; i += 1) {
    const from = words[i]?.from ?? 0, to = words[i + n - 1]?.to ?? 0;
    if ((verbs.get(fold(text.slice(from, to))) ?? []).some((row) => row.verb === verb || engineVerb(row.verb).verb === verb)) return { from, to };
  }
  return null;
}
