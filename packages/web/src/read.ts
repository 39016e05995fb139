import { differences, type Difference, type Document, type Ranged } from '@washline/engine';
// What a view takes from the engine it takes from here, so that the engine stays one piece that comes after the first picture.
export { INTO_GLASS, MIXERS, STRAINS } from '@washline/engine';
export { measureOf, setAmount, stepped, verbIn, writtenIn } from '@washline/spec';
export { amountAt, reach, takeHold, turnLine, turnsLine, typedAmount } from './hand/levels.ts';
export { toldOf } from './sheet/told.ts';
export { benchLines, fromFree, withBenchLine } from '@washline/spec';
import { completions, loadLanguage, messagesIn, readText, writtenIn, type Answer, type Completions, type MessageLanguage } from '@washline/spec';
import { tables } from '@washline/tables';

export type Reading = Answer['reading'];
export type Told = Reading['findings'][number];
export type Trouble = Answer['problems'][number];
export interface Read { readonly reading: Reading; readonly document: Document; readonly findings: readonly Told[]; readonly problems: readonly Trouble[];
  /** true where the ranges are still those of the text before */
  readonly carried: boolean;
  /** g of what each line puts in, by its path */
  readonly weights?: Readonly<Record<string, number>> | undefined;
  /** what of the bench was not understood, by its own lines */
  readonly benchProblems?: readonly Trouble[] }
/** Where the ranges of a reading come from: those of the text before, carried along; differences alone; differences and draws. */
export type Depth = 'carried' | 'quick' | 'whole';

let before: Ranged | null = null, bench = '';
const BENCH = 'bench';
/** The bench that every text is read with from now on; '' for none. What was read before is not carried along. */
export function setBench(text: string): void { bench = text; before = null; }
const own = (): { readonly bench?: string; readonly benchFile?: string } => (bench.trim() === '' ? {} : { bench, benchFile: BENCH });

/** A text read in this browser: the same engine and tables as the command line. `why` names one figure of the drink to be taken apart. */
export function read(text: string, why?: string, language: MessageLanguage = 'en', depth: Depth = 'whole'): Read {
  const { reading, problems, document, ranged, weights } = readText(text, why === undefined ? { tables, language, quick: depth !== 'whole', before: depth === 'carried' ? before : null, ...own() } : { tables, language, why, ...own() });
  before = ranged ?? before;
  const ofBench = problems.filter(({ where }) => where.file === BENCH);
  return { reading, document, findings: reading.findings, problems: problems.filter(({ where }) => where.file !== BENCH), ...(ofBench.length === 0 ? {} : { benchProblems: ofBench }), carried: ranged === null, weights };
}

/** Rows of the tables that the last reading took numbers from. */
export const rowsTaken = (): ReadonlySet<string> => new Set(before?.compiled.program.inputs.flatMap(({ row, key }) => (key.startsWith('unit/') ? [row, `units ${key.slice(5)}`] : [row])) ?? []);

/** The same text with what the drink is in its glass for half an hour, apart from the reading that is drawn. */
export function readLater(text: string, language: MessageLanguage): Reading { return readText(text, { tables, language, later: 'alone', ...own() }).reading; }

/** Sentences of a language, and its words for what the engine names. */
export async function learn(language: MessageLanguage): Promise<Readonly<Record<string, string>>> {
  await loadLanguage(language);
  return messagesIn(language).values;
}
/** True where what is put into a spec must be German. */
export const isGerman = (now: Pick<Read, 'document'>): boolean => writtenIn(now.document) === 'de';

/** The same text at every whole minute of half an hour, with the glass as it stands then. */
export function readMinutes(text: string, language: MessageLanguage): Reading { return readText(text, { tables, language, later: 'alone', each: true, quick: true, ...own() }).reading; }
/** What may be meant at a caret: in the language of the spec, of the page where nothing is written yet. `asked` where no letter need be typed. */
export function complete(now: Pick<Read, 'document'>, offset: number, spoken: MessageLanguage, limit: number, asked: boolean): Completions | null {
  const { document } = now, german = writtenIn(document) === 'de' || (spoken === 'de' && document.sections.length === 0);
  return completions(document.text, offset, german ? 'de' : 'en', { document, tables, limit, asked });
}
/** The engine's own words in a language that has been learnt. */
export const wordsIn = (language: MessageLanguage): Readonly<Record<string, string>> => messagesIn(language).values;

/** Figures that two drinks are held against each other by. */
const HELD = ['strength', 'volume', 'ethanol', 'sugar', 'acidity', 'ph', 'brix', 'dilution', 'temperature', 'co2', 'energy', 'fat', 'protein', 'cost'] as const;
export interface Held { readonly a: Reading; readonly b: Reading; readonly differences: readonly Difference[]; readonly problems: readonly [number, number];
  /** groups of allergens of each, in the page's language */
  readonly allergens: readonly [readonly string[], readonly string[]] }

/** Two texts read side by side, each for a variant or none; ranges by differences alone. `b` less `a`. */
export function hold(a: { readonly text: string; readonly variant: string | null }, b: { readonly text: string; readonly variant: string | null }, language: MessageLanguage): Held {
  const [one, two] = [a, b].map(({ text, variant }) => readText(text, { tables, language, variant, quick: true, before: null, ...own() })) as [Answer, Answer];
  const told = one.ranged == null || two.ranged == null ? [] : differences(one.ranged, two.ranged, [['glass', 'washline_mm'], ...HELD.map((name) => ['drink', name] as const)]);
  const { values } = messagesIn(language), groups = ({ reading }: Answer): string[] => [...new Set(reading.allergens.map(({ group }) => values[group] ?? group))];
  return { a: one.reading, b: two.reading, differences: told, problems: [one.problems.length, two.problems.length], allergens: [groups(one), groups(two)] };
}
