import { readDocument, type Document, type Tables } from '@washline/engine';
import { parse } from './document/parse.ts';
import { sayProblem, sayReading, type SaidProblem, type SaidReading } from './say/say.ts';

export interface ReadTextOptions { readonly tables: Tables; readonly variant?: string | null; readonly why?: string; readonly file?: string; readonly bench?: string }
export interface Answer { readonly reading: SaidReading; readonly problems: readonly SaidProblem[]; readonly document: Document }

/** From the text of a spec to what is in the glass, with every sentence filled. Never throws on any text. */
export function readText(text: string, options: ReadTextOptions): Answer {
  const document = parse(text);
  const { reading, problems } = readDocument(document, options.tables, { variant: options.variant ?? null, why: options.why ?? null });
  return { reading: sayReading(reading, options.file), problems: problems.map((p) => sayProblem(p, options.file)), document };
}
