import { readDocument, type Document, type Left, type Problem, type Ranged, type Tables, type Why } from '@washline/engine';
import { prepared } from './prepared.ts';
import { problem } from './problems/codes.ts';
import { inShort, nearTo } from './say/asked.ts';
import { messagesIn, type MessageLanguage } from './say/messages.ts';
import { writtenIn } from './say/written.ts';
import { sayProblem, sayReading, type SaidProblem, type SaidReading as Said } from './say/say.ts';
import { sayWhy, type SaidWhy } from './say/why.ts';

export interface ReadTextOptions {
  readonly tables: Tables; readonly variant?: string | null; readonly file?: string;
  /** figures and limits to be explained, with commas between them or as a list: `strength`, `coconut rum/strength`, `stage 2/temperature`, `washline_mm`, `foam-too-strong@26` */
  readonly why?: string | readonly string[];
  /** what the maker owns, as text: bottles, tools, places, prices and customs; it goes before the spec's shelf and the tables */
  readonly bench?: string;
  /** what the bench is called in the places of its problems */
  readonly benchFile?: string;
  /** of the sentences; they must have been loaded */
  readonly language?: MessageLanguage;
  /** ranges by differences alone, for a picture that must keep up with a hand */
  readonly quick?: boolean;
  /** with what the drink is in its glass for half an hour, left alone or in a hand */
  readonly later?: Left | null;
  /** with `later`: every whole minute, and the glass as it stands then */
  readonly each?: boolean;
  /** what an earlier `readText` gave as `ranged`, null at first: its ranges are carried along where the figures are the same */
  readonly before?: Ranged | null;
}
/** A reading with all its sentences; `why` is one for one figure asked, a list for several. */
export type SaidReading = Omit<Said, 'why'> & { readonly why?: SaidWhy | readonly SaidWhy[] };
export interface Answer { readonly reading: SaidReading; readonly problems: readonly SaidProblem[]; readonly document: Document;
  /** where `before` was given: what to give as the next one; null where the ranges are themselves carried */
  readonly ranged?: Ranged | null;
  /** with `before`: g of what each line puts in, by its path */
  readonly weights?: Readonly<Record<string, number>> }

const START = { from: 0, to: 0 };

/** From the text of a spec to what is in the glass, with every sentence filled. Never throws on any text. */
export function readText(text: string, options: ReadTextOptions): Answer {
  const { document, tables, variant, shelf, asked: missing, ofBench } = prepared(text, options);
  const language = options.language ?? 'en';
  const asked: Problem[] = [...missing];
  const { reading, problems, notAsked, compiled, spreads, carried, weights } = readDocument(document, tables, { variant, why: options.why ?? null, shelf, quick: options.quick ?? false, later: options.later ?? null, each: options.each ?? false, before: options.before ?? null });
  for (const { name, names } of notAsked) asked.push(problem('figure-unknown', null, 1, 1, START, { figure: name, near: nearTo(name, names).join(', ') || '-', all: inShort(names).join(', ') }));
  const { why, ...said } = sayReading(reading, options.file, { language, written: writtenIn(document) });
  const messages = messagesIn(language);
  return { reading: { ...said, ...(why === undefined ? {} : { why: Array.isArray(why) ? why.map((one) => sayWhy(one as Why, document, messages)) : sayWhy(why as Why, document, messages) }) }, problems: [...asked.map((p) => sayProblem(p, options.file, language)), ...ofBench.map((p) => sayProblem(p, options.benchFile ?? 'bench', language)), ...problems.map((p) => sayProblem(p, options.file, language))], document, ...(options.before === undefined ? {} : { ranged: carried ? null : { compiled, spreads }, weights: weights() }) };
}
