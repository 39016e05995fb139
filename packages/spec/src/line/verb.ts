import type { Phrase } from '../phrase/phrase.ts';
import { verbs, verbsApart, type VerbRow } from '../vocabulary/vocabulary.ts';

const APART = new Set(verbsApart.map((one) => one.first));
export interface VerbAt { readonly row: VerbRow; readonly end: number; readonly from: number; readonly apart?: number; readonly apartFrom?: number; readonly rows: readonly VerbRow[] }

/** The longest verb phrase from i; a verb in two parts ("set … aside") counts where its second part follows. */
export function verbAt(p: Phrase, i: number, end: number): VerbAt | undefined {
  if (p.t[i]?.kind !== 'word') return undefined;
  return p.once(verbAt, i, end, () => readVerb(p, i, end));
}
function readVerb(p: Phrase, i: number, end: number): VerbAt | undefined {
  const found = p.longest(i, end, 5, verbs);
  const first = p.word(i);
  let parted: VerbAt | undefined, most = 0;
  if (APART.has(first) && (found === undefined || found.end < i + 2)) for (const { first: head, last, row } of verbsApart) {
    if (head !== first || last.length <= most) continue;
    for (let k = i + 2; k < Math.min(end, i + 10); k++) {
      if (!last.every((part, n) => p.word(k + n) === part)) continue;
      parted = { row, end: i + 1, from: i, apart: k + last.length, apartFrom: k, rows: [row] };
      most = last.length;
      break;
    }
  }
  if (parted !== undefined) return parted;
  const row = found?.value[0];
  return found === undefined || row === undefined ? undefined : { row, end: found.end, from: i, rows: found.value };
}
export const isImperative = (row: VerbRow): boolean => row.form === 'imperative' || row.form === 'infinitive' || row.form === 'phrase';

/** Engine verbs of those that are another verb with a flag. */
export function engineVerb(key: string): { readonly verb: string; readonly flags: readonly ('dry' | 'fine' | 'double')[] } {
  if (key === 'fine-strain') return { verb: 'strain', flags: ['fine'] };
  if (key === 'double-strain') return { verb: 'strain', flags: ['double'] };
  if (key === 'dry-shake') return { verb: 'shake', flags: ['dry'] };
  return { verb: key, flags: [] };
}
