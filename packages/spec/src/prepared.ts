import { withBench, type Document, type Problem, type Section, type Tables } from '@washline/engine';
import { parseBench } from './bench/bench.ts';
import { parse } from './document/parse.ts';
import { problem } from './problems/codes.ts';
import { readsGerman } from './say/written.ts';

export interface Asked { readonly tables: Tables; readonly variant?: string | null; readonly bench?: string }
/** A text made ready to compile: its document, the tables with the bench before them, and what was wrong so far. */
export interface Prepared {
  readonly document: Document; readonly tables: Tables; readonly variant: string | null; readonly shelf: readonly Section[];
  readonly asked: readonly Problem[]; readonly ofBench: readonly Problem[];
}

const START = { from: 0, to: 0 };

/** Parses a spec and its bench, and looks whether the variant is there. Never throws on any text. */
export function prepared(text: string, options: Asked): Prepared {
  const own = options.bench === undefined ? null : parseBench(options.bench);
  const measures = own?.bench.measures ?? undefined;
  const document = parse(text, { language: readsGerman(text) ? 'de' : 'en', ...(measures === undefined ? {} : { measures }) });
  const asked: Problem[] = [];
  let variant = options.variant ?? null;
  if (variant !== null && !document.variants.some((v) => v.toLowerCase() === variant!.toLowerCase())) {
    asked.push(problem('variant-unknown', null, 1, 1, START, { variant, variants: document.variants.join(', ') || 'none' }));
    variant = null;
  }
  return { document, tables: own === null ? options.tables : withBench(options.tables, own.bench), variant, shelf: own?.bench.shelf ?? [], asked, ofBench: own?.problems ?? [] };
}
