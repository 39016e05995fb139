import { fold } from '../names/fold.ts';
import { words } from '../vocabulary/vocabulary.ts';

export type Part = 'shelf' | 'things';

const PARTS: Readonly<Record<string, Part>> = { tools: 'things', places: 'things', werkzeug: 'things', gerate: 'things', orte: 'things' };
/** The section a heading opens; null where it is none of a bench. */
export function partOf(name: string): Part | null {
  const folded = fold(name);
  return Object.hasOwn(PARTS, folded) ? PARTS[folded]! : words('section').get(folded)?.key === 'shelf' ? 'shelf' : null;
}
