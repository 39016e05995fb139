import { factsOf, letterOf, sectionsOf } from '@washline/drawing';
import { say } from '../language/language.ts';
import type { Read } from '../read.ts';

/** What is told of a prep beside its figures: what presses in it, and what stays in its cloth. */
export interface ToldOfPrep { readonly letter: string; readonly name: string; readonly lines: readonly string[] }

/** Preps of which there is something to tell, in the order of the sheet. */
export function factsIn({ reading, document }: Pick<Read, 'reading' | 'document'>): ToldOfPrep[] {
  return sectionsOf(document, reading.variant).filter((s) => s.kind === 'prep').flatMap((section, i) => {
    const prep = reading.preps[section.key];
    if (prep === undefined) return [];
    const { pressure, charged, caution, frozen, stays, held } = factsOf(prep);
    const lines = [pressure, charged, caution, frozen, stays === null ? null : say('facts.cloth', { lines: [stays, ...held].join('; ').replace(/:;/g, ':') })].filter((line) => line !== null);
    return lines.length === 0 ? [] : [{ letter: letterOf(i), name: section.name, lines }];
  });
}
