import { timeAt } from '../phrase/facts.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { words, type WordRow } from '../vocabulary/vocabulary.ts';
import { verbAt, type VerbAt } from './verb.ts';

const glasses = words('glass');
const PUT = /^(put|place|set|move|transfer|return|stick|pop|stand|lay|slide)$/;
const BEFORE = /^(the|an?|your|my|its|each|both|empty|serving|das|die|den|dem|eine?n?|leere[sn]?)$/;
/** What these hold is meant, not they. */
const HOLDS = new Set(['jar', 'siphon', 'punch-bowl', 'carafe', 'clay']);

/** "put the jar in the fridge 2 h", "set it in the freezer": what is put where it is cold is chilled or frozen. */
export function putCold(p: Phrase, i: number, end: number): VerbAt | undefined {
  if (!PUT.test(p.word(i))) return undefined;
  for (let k = i + 1; k < Math.min(end, i + 10); k++) {
    if (p.isNumber(k) && glassNamed(p, k + 1, end) === undefined) {
      // an amount of something is put in, a time is how long
      const time = timeAt(p, k, end);
      if (time === undefined) return undefined;
      k = time.end - 1;
      continue;
    }
    if (!/^(in|into|to|inside)$/.test(p.word(k))) continue;
    const place = p.word(/^(the|a|your)$/.test(p.word(k + 1)) ? k + 2 : k + 1), verb = /^(fridge|refrigerator)$/.test(place) ? 'chill' : place === 'freezer' ? 'freeze' : undefined;
    if (verb !== undefined) return { row: { verb, reading: verbAt(p, i, end)?.row.reading ?? verb, form: 'imperative', waiting: true, language: 'en', words: 1 }, from: i, end: i + 1, rows: [] };
  }
  return undefined;
}

/** The glass that is chilled, where a step is about one and not about what is in it: "chill a coupe in the freezer", "das Glas vorkühlen". */
export function chilledGlass(p: Phrase, i: number, verb: VerbAt, end: number): ReturnType<typeof glassNamed> {
  return glassNamed(p, verb.end, end) ?? glassNamed(p, i, verb.from);
}

/** A glass at i, behind articles: its key where it is one of a kind. */
function glassNamed(p: Phrase, i: number, end: number): { readonly key: string | undefined; readonly from: number; readonly end: number } | undefined {
  let k = i;
  while (k < end && (BEFORE.test(p.word(k)) || p.isNumber(k) && k === i)) k++;
  const found = p.longest<WordRow>(k, end, 4, glasses) ?? plural(p, k), to = found?.end ?? k, plain = /^(glass|glasses|glas|glaser)$/.test(p.word(to));
  if (found === undefined ? !plain : HOLDS.has(found.value.key)) return undefined;
  const after = plain ? to + 1 : to;
  return /^(of|bottles?|jars?|mit|voll)$/.test(p.word(after)) ? undefined : { key: found?.value.key, from: k, end: after };
}

/** "2 coupes". */
export function plural(p: Phrase, k: number): { readonly value: WordRow; readonly end: number } | undefined {
  const word = p.word(k), value = word.endsWith('s') ? glasses.get(word.slice(0, -1)) : undefined;
  return value === undefined ? undefined : { value, end: k + 1 };
}
