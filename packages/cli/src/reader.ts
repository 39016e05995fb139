import type { readText } from '@washline/spec';
import type { Problem } from './problems.ts';

export type Reading = ReturnType<typeof readText>['reading'];
export type Finding = Reading['findings'][number];
export interface ReadOptions { readonly variant?: string; readonly why?: string; readonly bench?: string; readonly file?: string }
export interface Answer { readonly reading: Reading | null; readonly problems: readonly Problem[] }

/** What reads one spec. Loaded when first wanted, so that `--help` costs nothing. */
export async function loadReader(): Promise<(text: string, options: ReadOptions) => Answer> {
  const [{ readText: read }, { tables }] = await Promise.all([import('@washline/spec'), import('@washline/tables')]);
  return (text, options) => {
    const { reading, problems } = read(text, { tables, ...options });
    return { reading, problems };
  };
}
