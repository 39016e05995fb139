import { compile, crowdOf, hands, handsInSteps, kitchenOf, place, runMakers, type Compiled, type Document, type EachHand, type Hands, type HandsAsked, type Matter, type Odds, type Path, type Problem } from '@washline/engine';
import { prepared, type Asked } from './prepared.ts';
import { problem } from './problems/codes.ts';
import { messagesIn, type MessageLanguage, type Messages } from './say/messages.ts';
import { sayProblem, type SaidProblem } from './say/say.ts';
import { inputWords } from './say/why.ts';

export interface HandsTextOptions extends Asked, HandsAsked { readonly file?: string; readonly benchFile?: string; /** of the sentences; they must have been loaded */ readonly language?: MessageLanguage }
/** `line`: the line of the spec it is about, counted from 1, where it is about one. */
export interface SaidOdds extends Odds { readonly line?: number }
/** The input in words, without the words of its line where it has one. */
export interface SaidMatter extends Matter { readonly words: string; readonly line?: number }
export type SaidHands = Omit<Hands, 'findings' | 'matters'> & { readonly findings: readonly SaidOdds[]; readonly matters: readonly SaidMatter[] };
export interface HandsAnswer { readonly hands: SaidHands; readonly problems: readonly SaidProblem[]; readonly document: Document }

/** The same with every maker kept apart (`EachHand`), and what moves the level in words. */
export interface EachHandAnswer extends HandsAnswer, Pick<EachHand, 'levels' | 'holds'> { readonly moves: readonly SaidMatter[] }

/**
 * What many kitchens make of a spec, from its text. `record`: the makers' rows in order, where they were run elsewhere (`makersOfText`). Never throws on any text.
 */
export function handsText(text: string, options: HandsTextOptions, record?: Float64Array): HandsAnswer {
  const { compiled, tables, document, problems, messages } = from(text, options);
  return { hands: sayHands(hands(compiled, tables, options, record), document, messages), problems, document };
}

/** The same in steps of `aStep` makers, 1 or more: between two of them other things can be done, or the rest left undone. Never throws on any text. */
export function* handsTextInSteps(text: string, options: HandsTextOptions, aStep: number): Generator<undefined, EachHandAnswer> {
  const { compiled, tables, document, problems, messages } = from(text, options);
  yield;
  const { hands: found, levels, holds, moves } = yield* handsInSteps(compiled, tables, options, aStep);
  return { hands: sayHands(found, document, messages), problems, document, levels, holds, moves: moves.map(sayMatter(document, messages)) };
}

function from(text: string, options: HandsTextOptions) {
  const p = prepared(text, options);
  const compiled = compile(p.document, p.tables, p.variant, p.shelf);
  const language = options.language ?? 'en';
  const problems = [
    ...p.asked.map((x) => sayProblem(x, options.file, language)), ...p.ofBench.map((x) => sayProblem(x, options.benchFile ?? 'bench', language)),
    ...[...p.document.problems, ...rings(compiled)].map((x) => sayProblem(x, options.file, language)),
  ];
  return { compiled, tables: p.tables, document: p.document, problems, messages: messagesIn(language) };
}

/** The rows of makers `from` up to, not including, `to`: what one worker of several does. */
export function makersOfText(text: string, options: Asked & HandsAsked, from: number, to: number): Float64Array {
  const p = prepared(text, options);
  const { program, draws, want } = crowdOf(compile(p.document, p.tables, p.variant, p.shelf), kitchenOf(options.profile, p.tables));
  return runMakers(program, draws, want, options.seed, from, to);
}

function rings({ ordered }: Compiled): Problem[] {
  return ordered.rings.map((ring) => problem('prep-ring', ['preps', ring.key], ring.headingLine ?? 1, 1, ring.heading ?? { from: 0, to: 0 }, { prep: ring.name }));
}

const lineOf = (document: Document, path: Path | undefined): { readonly line?: number } => { const line = path === undefined ? undefined : place(document, path).line; return line === undefined ? {} : { line }; };

function sayHands(found: Hands, document: Document, messages: Messages): SaidHands {
  return { ...found, findings: found.findings.map((f) => ({ ...f, ...lineOf(document, f.path) })), matters: found.matters.map(sayMatter(document, messages)) };
}

function sayMatter(document: Document, messages: Messages): (matter: Matter) => SaidMatter {
  return (m) => ({ ...m, words: wordsOf(m, document, messages), ...lineOf(document, m.at) });
}

/** The line stands beside the words, so that it is not said in them. */
function wordsOf(matter: Matter, document: Document, messages: Messages): string {
  const where = place(document, matter.at ?? []);
  const words = inputWords({ key: matter.input, where }, document, messages);
  if (!where.span || where.line === undefined) return words;
  return words.replace(`: ${document.text.slice(where.span.from, where.span.to).trim().replace(/\s+/g, ' ')}`, () => '');
}
