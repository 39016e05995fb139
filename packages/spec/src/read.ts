import { readDocument, type Document, type Problem, type Section, type Tables } from '@washline/engine';
import { parse } from './document/parse.ts';
import { problem } from './problems/codes.ts';
import { sayProblem, sayReading, type SaidProblem, type SaidReading } from './say/say.ts';

export interface ReadTextOptions {
  readonly tables: Tables; readonly variant?: string | null; readonly file?: string;
  /** a figure of the drink (`strength`), of a prep (`coconut rum/strength`) or `washline_mm` to be explained */
  readonly why?: string;
  /** the maker's own bottles as text: its shelf goes before the spec's */
  readonly bench?: string;
}
export interface Answer { readonly reading: SaidReading; readonly problems: readonly SaidProblem[]; readonly document: Document }

const START = { from: 0, to: 0 };

/** From the text of a spec to what is in the glass, with every sentence filled. Never throws on any text. */
export function readText(text: string, options: ReadTextOptions): Answer {
  const document = parse(text);
  const asked: Problem[] = [];
  let variant = options.variant ?? null;
  if (variant !== null && !document.variants.some((v) => v.toLowerCase() === variant!.toLowerCase())) {
    asked.push(problem('variant-unknown', null, 1, 1, START, { variant, variants: document.variants.join(', ') || 'none' }));
    variant = null;
  }
  const bench = options.bench === undefined ? { shelf: [], problems: [] } : benchOf(options.bench);
  const { reading, problems } = readDocument(document, options.tables, { variant, why: options.why ?? null, shelf: bench.shelf });
  if (options.why !== undefined && reading.why?.method === '') {
    asked.push(problem('figure-unknown', null, 1, 1, START, { figure: options.why, figures: Object.keys(reading.figures).join(', ') }));
  }
  return { reading: sayReading(reading, options.file), problems: [...asked, ...bench.problems, ...problems].map((p) => sayProblem(p, options.file)), document };
}

function benchOf(text: string): { shelf: Section[]; problems: Problem[] } {
  const document = parse(text);
  const shelf = document.sections.filter((s) => s.kind === 'shelf');
  const other = document.sections.filter((s) => s.kind !== 'shelf' && s.lines.length > 0);
  return { shelf, problems: other.map((s) => problem('bench-unclear', null, s.headingLine ?? 1, 1, s.heading ?? START, { section: s.name || 'the build' })) };
}
