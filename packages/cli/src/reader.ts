import type { Reading } from './reading.ts';
import type { Problem } from './problems.ts';

/** Reads one spec. Loaded when first wanted, so that `--help` costs nothing. */
export interface ReadOptions { readonly variant?: string; readonly why?: string; readonly bench?: string; readonly file?: string }
export interface Answer { readonly reading: Reading | null; readonly problems: readonly Problem[] }

export async function loadReader(): Promise<(text: string, options: ReadOptions) => Answer> {
  const [{ readText }, { tables }] = await Promise.all([import('@washline/spec'), import('@washline/tables')]);
  return (text, options) => readText(text, { tables, ...options });
}
