import type { Left, Path } from '@washline/engine';
import type { readText } from '@washline/spec';
import { language } from './language.ts';
import type { Problem } from './problems.ts';

export type Reading = ReturnType<typeof readText>['reading'];
export type Finding = Reading['findings'][number];
export interface ReadOptions { readonly variant?: string; readonly why?: string | readonly string[]; readonly bench?: string; readonly benchFile?: string; readonly later?: Left; readonly file?: string }
export interface Answer { readonly reading: Reading | null; readonly problems: readonly Problem[]; readonly lineAt?: LineAt }
/** The line a path means, as it stands in the text. */
export type LineAt = (path: Path) => { readonly line: number; readonly text: string } | undefined;

/** What reads one spec. Loaded when first wanted, so that `--help` costs nothing. */
export async function loadReader(): Promise<(text: string, options: ReadOptions) => Answer> {
  const [{ readText: read, loadLanguage }, { tables }, { speak }] = await Promise.all([import('@washline/spec'), import('@washline/tables'), import('@washline/drawing')]);
  // a spec may be German whatever is spoken, and is then added to in German
  await Promise.all([loadLanguage('de'), speak(language())]);
  return (text, options) => {
    const { reading, problems, document } = read(text, { tables, language: language(), ...options });
    const all = document.sections.flatMap((section) => section.lines);
    return { reading, problems, lineAt: (path) => all.find((line) => line.path.length <= path.length && line.path.every((part, at) => part === path[at])) };
  };
}
