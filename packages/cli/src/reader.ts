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

/** What reads a spec, `text` or any where none is given. Loaded when first wanted, so that `--help` costs nothing. */
export async function loadReader(text?: string): Promise<(text: string, options: ReadOptions) => Answer> {
  const [{ readText: read, loadLanguage, loadLanguageOf }, { tables }] = await Promise.all([import('@washline/spec'), import('@washline/tables')]);
  // a spec may be German whatever is spoken, and is then added to in German
  await Promise.all([text === undefined ? loadLanguage('de') : loadLanguageOf(text), loadLanguage(language())]);
  return (spec, options) => {
    const { reading, problems, document } = read(spec, { tables, language: language(), ...options });
    const all = document.sections.flatMap((section) => section.lines);
    return { reading, problems, lineAt: (path) => all.find((line) => line.path.length <= path.length && line.path.every((part, at) => part === path[at])) };
  };
}
