import type { Path } from '@washline/engine';
import type { readText } from '@washline/spec';
import type { Problem } from './problems.ts';

export type Reading = ReturnType<typeof readText>['reading'];
export type Finding = Reading['findings'][number];
export interface ReadOptions { readonly variant?: string; readonly why?: string; readonly bench?: string; readonly file?: string }
export interface Answer { readonly reading: Reading | null; readonly problems: readonly Problem[]; readonly lineAt?: LineAt }
/** The line a path means, as it stands in the text. */
export type LineAt = (path: Path) => { readonly line: number; readonly text: string } | undefined;

/** What reads one spec. Loaded when first wanted, so that `--help` costs nothing. */
export async function loadReader(): Promise<(text: string, options: ReadOptions) => Answer> {
  const [{ readText: read }, { tables }] = await Promise.all([import('@washline/spec'), import('@washline/tables')]);
  return (text, options) => {
    const { reading, problems, document } = read(text, { tables, ...options });
    const all = document.sections.flatMap((section) => section.lines);
    return { reading, problems, lineAt: (path) => all.find((line) => line.path.length <= path.length && line.path.every((part, at) => part === path[at])) };
  };
}
