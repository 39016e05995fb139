import { edits } from '../names/nearest.ts';
import { fold } from '../names/fold.ts';
import { words } from '../vocabulary/vocabulary.ts';

const methods = words('method');

/** The METHOD a bracket names, or undefined. */
export const methodOf = (text: string): string | undefined => methods.get(fold(text))?.key;

/** The METHOD whose words come nearest. */
export function nearestMethod(text: string): string {
  const folded = fold(text);
  let best = 'mix', least = Infinity;
  for (const [key, row] of methods) {
    const distance = edits(folded, key, 20);
    if (distance < least) { least = distance; best = row.key; }
  }
  return best;
}
export const METHODS: readonly string[] = [...new Set([...methods.values()].map((row) => row.key))];
