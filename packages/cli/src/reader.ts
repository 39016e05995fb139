import type { Path } from '@washline/engine';
import type { readText } from '@washline/spec';
import type { Problem } from './problems.ts';
import { say } from './sentences.ts';

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
    const asked = unanswered(options, document.variants, reading);
    return { reading, problems: [...problems, ...asked.map((problem) => ({ ...problem, ...(options.file === undefined ? {} : { where: { file: options.file } }) }))], lineAt: (path) => all.find((line) => line.path.length <= path.length && line.path.every((part, at) => part === path[at])) };
  };
}

/** What was asked for and is not in the spec: a variant or a figure of another name. */
function unanswered({ variant, why, bench }: ReadOptions, variants: readonly string[], reading: Reading): Problem[] {
  const found: Problem[] = [];
  if (variant !== undefined && !variants.includes(variant.toLowerCase()) && !variants.includes(variant)) found.push({ code: 'variant-unknown', message: say(variants.length === 0 ? 'read.variants.none' : 'read.variants', { variant, variants: variants.join(', ') }) });
  if (why !== undefined && reading.figures[why] === undefined) found.push({ code: 'figure-unknown', message: say('read.figures', { figure: why, figures: Object.keys(reading.figures).join(', ') }) });
  if (bench !== undefined) found.push({ code: 'bench-unread', message: say('read.bench') });
  return found;
}
