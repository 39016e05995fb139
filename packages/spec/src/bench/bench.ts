import type { Bench, Problem, Section, ShelfEntry, Span } from '@washline/engine';
import { LIMITS, utf8Length } from '../document/limits.ts';
import { printedName } from '../document/parse.ts';
import { edits } from '../names/nearest.ts';
import { fold } from '../names/fold.ts';
import { problem, type ProblemCode } from '../problems/codes.ts';
import { givenOf } from '../sections/given.ts';
import { isNote } from '../sections/heading.ts';
import { shelfEntry } from '../sections/shelf.ts';
import { badCharacter, rows, type Row } from '../text/rows.ts';
import { atoms } from './atoms.ts';
import { BENCH_WORDS, benchRow, newDraft, type BenchRow, type Draft } from './draft.ts';
import { headKey, headValue, MAY_SAY, NO_HEAD, type BenchHead } from './head.ts';
import { partOf, type Part } from './parts.ts';
import { rowOf } from './row.ts';
import { SPECIAL } from './special.ts';

type Tell = (code: ProblemCode, at: number, length: number, words?: Record<string, string | number>) => void;

/**
 * Reads a bench: the maker's own bottles, tools, places, prices and customs.
 * @param text `key: value` lines and the sections `Shelf:`, `Tools:`, `Places:`
 * @returns the bench, and what is not understood with its line and column; the rest is read all the same, whatever the text
 * @source none - definition
 */
export function parseBench(text: string): { readonly bench: Bench; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const draft = newDraft(), head: BenchHead = { ...NO_HEAD }, shelf: ShelfEntry[] = [];
  const done = (): { bench: Bench; problems: readonly Problem[] } => ({ bench: { ...draft, ...head, shelf: [section(shelf)] }, problems });
  const whole = (code: ProblemCode, limit: number): void => { problems.push(problem(code, null, 1, 1, START, { limit })); };
  if (text.length > LIMITS.bytes || utf8Length(text) > LIMITS.bytes) { whole('text-too-large', LIMITS.bytes / 1024); return done(); }
  const all = rows(text);
  // the currency goes for prices above it too
  for (const row of all) { const line = keyed(row); if (line && headKey(line.word) === 'currency') head.currency ??= headValue('currency', line.rest); }

  let part: Part | null = 'things', seen = 0;
  const told = new Set<string>();
  for (const [n, row] of all.entries()) {
    const trimmed = row.text.trim(), indent = row.text.length - row.text.trimStart().length;
    const tell: Tell = (code, at, length, filled = {}) => { problems.push(problem(code, null, n + 1, indent + at + 1, { from: row.from + indent + at, to: row.from + indent + at + length }, filled)); };
    if (trimmed === '' || isNote(trimmed)) continue;
    if (++seen > LIMITS.lines) { tell('too-many-lines', 0, trimmed.length, { limit: LIMITS.lines }); break; }
    if (row.text.length > LIMITS.lineUnits) { tell('line-too-long', 0, trimmed.length, { limit: LIMITS.lineUnits }); continue; }
    const bad = badCharacter(row.text);
    if (bad >= 0) { tell('control-character', bad - indent, 1, { character: `U+${row.text.charCodeAt(bad).toString(16).toUpperCase().padStart(4, '0')}` }); continue; }
    const bare = trimmed.replace(/\s#.*$/, '').trimEnd(), line = keyed({ text: bare });
    if (line === null || line.rest.trim() === '') {
      const name = bare.replace(/:$/, '').trimEnd(), opens = bare.endsWith(':') ? partOf(name) : null;
      if (opens !== null) part = opens;
      else if (bare.endsWith(':') && benchRow(name) === undefined && headKey(name) === undefined && part !== 'shelf') { tell('bench-unclear', 0, bare.length, { section: printedName(name) }); part = null; }
      else if (part === 'shelf') bottle(bare, row.from + indent, head.currency, shelf, tell);
      else if (seen > 1) tell('bench-line-unclear', 0, bare.length, { text: bare, example: benchRow(name)?.example ?? 'freezer: -18 °C' });
      continue;
    }
    const key = headKey(line.word);
    if (key !== undefined) headLine(key, line, head, told, tell);
    else if (part === 'shelf') bottle(bare, row.from + indent, head.currency, shelf, tell);
    else if (part !== null) thing(bare, line, row.from + indent, n + 1, draft, told, tell);
    else tell('bench-line-unclear', 0, bare.length, { text: bare, example: 'freezer: -18 °C' });
  }
  return done();
}

const START: Span = { from: 0, to: 0 };
interface Keyed { readonly word: string; readonly rest: string; readonly restAt: number }
function keyed({ text }: Pick<Row, 'text'>): Keyed | null {
  const trimmed = text.trim(), colon = trimmed.indexOf(':');
  return colon <= 0 ? null : { word: trimmed.slice(0, colon).trim(), rest: trimmed.slice(colon + 1), restAt: colon + 1 };
}
const section = (shelf: readonly ShelfEntry[]): Section => ({ kind: 'shelf', name: '', key: 'shelf', variant: null, method: 'mix', methodWritten: false, heading: null, headingLine: null, lines: [], shelf });

function headLine(key: keyof BenchHead, line: Keyed, head: BenchHead, told: Set<string>, tell: Tell): void {
  if (told.has(key)) { tell('key-twice', 0, line.word.length, { key: line.word }); return; }
  told.add(key);
  const value = headValue(key, line.rest);
  if (value === null) tell('bench-head-unclear', line.restAt + (line.rest.length - line.rest.trimStart().length), line.rest.trim().length, { key: line.word, value: printedName(line.rest), may: MAY_SAY[key] });
  else (head as unknown as Record<string, string>)[key] = value;
}

function bottle(bare: string, from: number, currency: string | null, shelf: ShelfEntry[], tell: Tell): void {
  const read = shelfEntry(bare, from, currency);
  if (read === undefined) { tell('shelf-unclear', 0, bare.length, { text: bare }); return; }
  if (read.unused !== null) tell('number-unused', read.unused.at, read.unused.text.length, { number: read.unused.text });
  if ((read.entry.strength ?? 0) > 100) { tell('share-too-large', 0, bare.length, { number: read.entry.strength! }); return; }
  if (currency !== null && read.entry.price?.currency !== undefined && read.entry.price.currency !== currency) tell('bench-other-money', 0, bare.length, { currency, other: read.entry.price.currency });
  shelf.push({ ...read.entry, name: printedName(read.entry.name) });
}

/** A tool or a place. */
function thing(bare: string, line: Keyed, from: number, number: number, draft: Draft, told: Set<string>, tell: Tell): void {
  const row = benchRow(line.word);
  if (row === undefined) {
    const fact = givenOf(bare);
    if (fact === null) tell('bench-word-unknown', 0, line.word.length, { word: printedName(line.word), nearest: nearestWord(line.word) });
    else if (fact.value === null) tell('bench-line-unclear', 0, bare.length, { text: bare, example: `${line.word}: 30 ml` });
    else if (told.has(fact.key)) tell('key-twice', 0, line.word.length, { key: line.word });
    else { told.add(fact.key); draft.given.push({ key: fact.key, value: fact.value, span: { from, to: from + bare.length }, line: number }); }
    return;
  }
  const name = row.special === 'cloth' || row.special === 'ice' || row.special === 'siphon' ? '' : row.words[0]!;
  if (name !== '' && told.has(name)) { tell('key-twice', 0, line.word.length, { key: line.word }); return; }
  if (name !== '') told.add(name);
  const found = atoms(line.rest), off = found.find((a) => a.off && (a.of === null || a.of === row.of));
  const none = /^\s*(?:none|no|keine?r?s?)\s*$/i.test(line.rest);
  const unclear = (): void => tell('bench-line-unclear', 0, bare.length, { text: bare, example: row.example });
  for (const a of found) {
    if (a.off || a.of !== row.of || row.special === 'thermometer' || a.value >= row.min && a.value <= row.max) continue;
    tell('bench-value-unlikely', line.restAt + a.at, a.text.length, { value: a.text, low: row.min, high: row.max, unit: row.of });
    return;
  }
  if (none && row.none === undefined && row.special !== 'siphon') { unclear(); return; }
  if (none) for (const [key, value] of Object.entries(row.none ?? {})) draft.values.set(key, { value, low: null, high: null, unit: 'tool', grade: 'own', source: 'bench', say: '' });
  const said = { word: line.word, rest: line.rest, atoms: found, plusMinus: off?.value ?? null, none };
  const used = row.special === undefined ? plain(draft, row, said) : SPECIAL[row.special]!(draft, row, said);
  if (used === null) { unclear(); return; }
  for (const a of found) if (!used.includes(a) && a !== off) tell('number-unused', line.restAt + a.at, a.text.length, { number: a.text });
  const left = found.reduce((rest, a) => rest.slice(0, a.at) + ' '.repeat(a.text.length) + rest.slice(a.at + a.text.length), line.rest), stray = /\d[\d.,]*/.exec(left);
  if (stray) tell('number-unused', line.restAt + stray.index, stray[0].length, { number: stray[0] });
}

/** One number for one or more rows, and for a unit. */
function plain(draft: Draft, row: BenchRow, line: { readonly atoms: ReturnType<typeof atoms>; readonly plusMinus: number | null }): ReturnType<typeof atoms> | null {
  const atom = line.atoms.find((a) => a.of === row.of && !a.off);
  if (atom === undefined) return null;
  for (const set of row.sets ?? []) draft.values.set(set.key, rowOf(atom, line.plusMinus, set, row.of));
  const own = row.sets?.[0] && draft.values.get(row.sets[0].key);
  if (row.unit !== undefined && own) draft.units.set(row.unit, { unit: row.unit, of: 'ml', factor: atom.value, low: own.low!, high: own.high!, defined: false, source: 'bench' });
  return [atom];
}

function nearestWord(word: string): string {
  const folded = fold(word);
  return BENCH_WORDS.reduce((best, one) => (edits(folded, fold(one), 30) < edits(folded, fold(best), 30) ? one : best));
}
