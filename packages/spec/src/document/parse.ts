import type { AcceptEntry, Document, Given, Line, Path, Problem, Section, ShelfEntry, Span } from '@washline/engine';
import { fold } from '../names/fold.ts';
import { lookup } from '../names/lookup.ts';
import { readLine } from '../line/line.ts';
import { foldOwn, OwnNames, type OwnName } from '../phrase/own-names.ts';
import type { Place } from '../phrase/phrase.ts';
import { problem, type ProblemCode } from '../problems/codes.ts';
import { languageNamed } from '../say/messages.ts';
import { acceptEntry, nearestCode } from '../sections/accept.ts';
import { givenOf } from '../sections/given.ts';
import { glassOf, nearestGlass } from '../sections/glass.ts';
import { headingOf, isNote, keyOf, type Heading } from '../sections/heading.ts';
import { shelfEntry } from '../sections/shelf.ts';
import { badCharacter, rows, type Row } from '../text/rows.ts';
import { measuredAbove } from './again.ts';
import { cachedLine } from './cache.ts';
import { checkAmounts } from './check.ts';
import { LIMITS, utf8Length } from './limits.ts';
import { rings } from './rings.ts';
import { sharesOf } from './shares.ts';
import { together } from './together.ts';

export interface ParseOptions { readonly language?: 'en' | 'de'; readonly measures?: string }

type Report = (code: ProblemCode, line: number, column: number, span: Span, words?: Record<string, string | number>, path?: Path | null) => void;
type Head = { -readonly [K in keyof Document['head']]: Document['head'][K] };

/** A section while it is read: its rows are kept until all names are known. */
interface Draft {
  kind: Section['kind'];
  name: string;
  key: string;
  variant: string | null;
  method: string;
  methodWritten: boolean;
  heading: Span | null;
  headingLine: number | null;
  rows: { row: Row; line: number; text: string; offset: number; note: boolean }[];
  counts: boolean;
}

const KEY_OF: Readonly<Record<string, keyof Head>> = { about: 'about', glass: 'glass', source: 'source', serves: 'serves', measures: 'measures', language: 'language', 'one-part': 'part' };
const SYSTEMS = new Set(['us', 'uk', 'au', 'metric', 'us-1910']);

/** Only what may be shown: control and bidirectional characters out. */
export function printedName(name: string): string {
  return name.replace(/[\u0000-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g, '').replace(/\s+/g, ' ').trim();
}

/**
 * Reads a spec: text to document, every line with its place, problems as values.
 *
 * @param text the decoded text, its byte order mark kept
 * @param options `language`: that in which near names are offered where the head says none; `measures`: how units are meant there
 * @returns the document; never throws, whatever the text
 * @source none - definition
 */
export function parse(text: string, options: ParseOptions = {}): Document {
  const problems: Problem[] = [];
  const report: Report = (code, line, column, span, words = {}, path = null) => { problems.push(problem(code, path, line, column, span, words)); };
  const empty: Document = { text, name: '', head: {}, serves: 1, sections: [], variants: [], problems, cut: true };
  if (text.length > LIMITS.bytes || utf8Length(text) > LIMITS.bytes) { report('text-too-large', 1, 1, { from: 0, to: 0 }, { limit: LIMITS.bytes / 1024 }); return empty; }

  const head: Head = Object.create(null) as Head;
  const drafts: Draft[] = [];
  const given: Given[] = [];
  let name = '', nameSeen = false, inHead = true, cut = false, seen = 0;
  let current: Draft | null = null;
  const all = rows(text);

  const open = (draft: Omit<Draft, 'rows' | 'counts'>, counts = true): Draft => { const made: Draft = { ...draft, rows: [], counts }; drafts.push(made); return made; };
  const buildOf = (variant: string | null, heading: Span | null, headingLine: number | null): Draft => {
    const known = drafts.find((draft) => draft.kind === 'build' && draft.variant === variant);
    return known ?? open({ kind: 'build', name: '', key: 'build', variant, method: 'mix', methodWritten: false, heading, headingLine });
  };

  for (let n = 0; n < all.length; n++) {
    const row = all[n];
    if (row === undefined) break;
    const line = n + 1, trimmed = row.text.trim();
    if (trimmed === '') continue;
    const indent = row.text.length - row.text.trimStart().length;
    const offset = row.from + indent, span = { from: offset, to: offset + trimmed.length };
    if (++seen > LIMITS.lines) { report('too-many-lines', line, 1, span, { limit: LIMITS.lines }); cut = true; break; }
    if (row.text.length > LIMITS.lineUnits) { report('line-too-long', line, 1, span, { limit: LIMITS.lineUnits }); if (!nameSeen) nameSeen = true; else { inHead = false; current ??= buildOf(null, null, null); current.rows.push({ row, line, text: '', offset, note: false }); } continue; }
    const bad = badCharacter(row.text);
    if (bad >= 0) { report('control-character', line, bad + 1, { from: row.from + bad, to: row.from + bad + 1 }, { character: `U+${row.text.charCodeAt(bad).toString(16).toUpperCase().padStart(4, '0')}` }); if (!nameSeen) nameSeen = true; else if (!inHead || current !== null) { current ??= buildOf(null, null, null); current.rows.push({ row, line, text: '', offset, note: false }); } continue; }

    const note = isNote(trimmed);
    const strict = current !== null && (current.kind === 'shelf' || current.kind === 'accept');
    const heading = note ? null : headingOf(trimmed, strict);

    if (!nameSeen) {
      nameSeen = true;
      const section = heading !== null && (heading.methodWritten || heading.kind !== 'prep');
      const key = note ? null : keyOf(trimmed);
      if (!note && !section && key === null && givenOf(trimmed) === null && !isMeasure(trimmed)) { name = printedName(heading !== null && heading.kind === 'prep' && !heading.methodWritten && heading.unknownMethod === null || trimmed.endsWith(':') ? trimmed.replace(/:$/, '') : trimmed); continue; }
      report('name-missing', line, 1, span);
    }
    if (note) { if (current !== null) current.rows.push({ row, line, text: trimmed, offset, note: true }); continue; }
    const key = strict || heading !== null ? null : keyOf(trimmed);
    if (key !== null) {
      const field = KEY_OF[key.key];
      if (field !== undefined) {
        if (!inHead) { report('key-late', line, 1 + indent, span, { key: key.word }); continue; }
        if (head[field] !== undefined) { report('key-twice', line, 1 + indent, span, { key: key.word }); continue; }
        head[field] = { value: printedName(remarkOff(key.value)), span: { from: offset + key.valueFrom, to: offset + key.valueFrom + key.value.length }, line };
        continue;
      }
    }
    const fact = strict || heading !== null ? null : givenOf(trimmed);
    if (fact !== null) {
      const place: Span = { from: offset + fact.valueFrom, to: offset + fact.valueFrom + fact.written.length };
      if (!inHead) report('key-late', line, 1 + indent, span, { key: fact.word });
      else if (given.some((other) => other.key === fact.key)) report('key-twice', line, 1 + indent, span, { key: fact.word });
      else if (fact.value === null) report('key-unclear', line, 1 + indent + fact.valueFrom, place, { key: fact.word, value: printedName(fact.written) });
      else given.push({ key: fact.key, value: fact.value, span: place, line });
      continue;
    }
    if (heading !== null) {
      inHead = false;
      if (heading.kind === 'same') { current ??= buildOf(null, null, null); continue; }
      if (drafts.length >= LIMITS.sections) { report('too-many-sections', line, 1, span, { limit: LIMITS.sections }); cut = true; break; }
      current = startSection(heading, drafts, open, buildOf, span, line, indent, report);
      continue;
    }
    inHead = false;
    current ??= buildOf(null, null, null);
    current.rows.push({ row, line, text: trimmed, offset, note: false });
  }
  if (!nameSeen) report('name-missing', 1, 1, { from: 0, to: 0 });

  settleVariants(drafts, report);
  const system = headValue(head, 'measures', problems, all) ?? options.measures ?? null;
  const language = languageOf(head, problems);
  const serves = servesOf(head, problems);
  const glass = head.glass === undefined ? undefined : glassOf(head.glass.value);
  if (head.glass !== undefined && glass === undefined) report('glass-unknown', head.glass.line, columnIn(all, head.glass.line, head.glass.span.from), head.glass.span, { glass: head.glass.value, nearest: nearestGlass(head.glass.value) });

  twiceNamed(drafts, report);
  const own = ownNames(drafts);
  const known = drafts.some((draft) => draft.kind === 'accept') ? knownLines(drafts, head, text) : new Set<string>();
  const sections = drafts.map((draft): Section => readSection(draft, own, system, known, problems, language ?? options.language ?? 'en', language, text));
  for (const section of sections) if (section.heading !== null && section.headingLine !== null && section.lines.length === 0) report('section-empty', section.headingLine, columnIn(all, section.headingLine, section.heading.from), section.heading, { section: section.kind === 'prep' ? section.name : section.kind }, sectionPath(section));
  rings(sections, problems);
  checkAmounts(sections, problems, all);
  problems.sort((a, b) => a.span.from - b.span.from);
  const variants = [...new Set(sections.map((section) => section.variant).filter((variant): variant is string => variant !== null))];
  return { text, name, head: { ...head }, ...(given.length > 0 ? { given } : {}), ...(glass !== undefined ? { glass } : {}), serves, sections, variants, problems, cut };
}

const sectionPath = (section: Pick<Section, 'kind' | 'key'>): Path => (section.kind === 'prep' ? ['preps', section.key] : [section.kind]);
const columnIn = (all: readonly Row[], line: number, from: number): number => from - (all[line - 1]?.from ?? 0) + 1;
const remarkOff = (text: string): string => { const at = text.search(/\s#/); return at < 0 ? text : text.slice(0, at).trimEnd(); };

/** It takes a number, a unit and a known thing for a first line to be no name ("3 dots and a dash" is one). */
function isMeasure(text: string): boolean {
  if (!/^[\d½⅓⅔¼¾⅛⅜⅝⅞⅙⅚.~]/.test(text)) return false;
  const read = readLine(text, { path: ['build', 0], line: 1, base: 0, own: new OwnNames([]), inside: null, system: null, where: 'build', listed: false });
  const first = read.actions[0];
  return first !== undefined && first.kind === 'measure' && first.amount !== null && first.amount.unitSpan !== undefined && first.thing.link.kind === 'larder';
}

function startSection(heading: Heading, drafts: readonly Draft[], open: (draft: Omit<Draft, 'rows' | 'counts'>, counts?: boolean) => Draft, buildOf: (variant: string | null, heading: Span | null, line: number | null) => Draft, span: Span, line: number, indent: number, report: Report): Draft {
  const variant = heading.variant === null ? null : printedName(heading.variant).toLowerCase();
  if (heading.kind === 'build') {
    const known = drafts.find((draft) => draft.kind === 'build' && draft.variant === variant);
    if (known !== undefined && known.heading !== null) report('build-twice', line, 1 + indent, span, {}, ['build']);
    const build = buildOf(variant, span, line);
    build.heading ??= span;
    build.headingLine ??= line;
    return build;
  }
  if (heading.kind === 'shelf' || heading.kind === 'accept') {
    const known = drafts.find((draft) => draft.kind === heading.kind && draft.variant === variant);
    if (known !== undefined) { report('section-twice', line, 1 + indent, span, { section: heading.kind }, [heading.kind]); return known; }
    return open({ kind: heading.kind, name: '', key: heading.kind, variant, method: 'mix', methodWritten: false, heading: span, headingLine: line });
  }
  const name = printedName(heading.name);
  const key = name.toLowerCase();
  if (heading.unknownMethod !== null) report('method-unknown', line, 1 + indent + heading.unknownMethod.at, { from: span.from + heading.unknownMethod.at, to: span.from + heading.unknownMethod.at + heading.unknownMethod.text.length }, { method: heading.unknownMethod.text, nearest: heading.unknownMethod.nearest }, ['preps', key]);
  if (name === '') report('section-nameless', line, 1 + indent, span);
  const made = open({ kind: 'prep', name, key, variant, method: heading.method, methodWritten: heading.methodWritten, heading: span, headingLine: line });
  (made as Draft & { whole?: string }).whole = printedName(heading.whole);
  return made;
}

/** "lemon / lime cordial": no variant where only this section has it and no section is named by the rest. */
function settleVariants(drafts: readonly Draft[], report: Report): void {
  for (const draft of drafts) {
    if (draft.variant === null) continue;
    const shared = drafts.some((other) => other !== draft && other.variant === draft.variant);
    const base = draft.kind !== 'prep' ? true : drafts.some((other) => other.variant === null && other.kind === 'prep' && foldOwn(other.name) === foldOwn(draft.name));
    if (shared || base) continue;
    const whole = (draft as Draft & { whole?: string }).whole ?? draft.name;
    const words = { variant: draft.variant, section: draft.name };
    if (draft.heading !== null && draft.headingLine !== null) report('variant-unclear', draft.headingLine, 1, draft.heading, words, ['preps', whole.toLowerCase()]);
    draft.variant = null;
    draft.name = whole;
    draft.key = whole.toLowerCase();
  }
}

/** The same name twice in one variant: the first counts. */
function twiceNamed(drafts: Draft[], report: Report): void {
  const first = new Map<string, Draft>();
  for (const draft of drafts) {
    if (draft.kind !== 'prep') continue;
    const folded = `${draft.variant ?? ''}/${foldOwn(draft.name)}`;
    if (!first.has(folded)) { first.set(folded, draft); continue; }
    draft.counts = false;
    if (draft.heading !== null && draft.headingLine !== null) report('prep-twice', draft.headingLine, 1, draft.heading, { prep: draft.name }, ['preps', draft.key]);
  }
  for (let i = drafts.length - 1; i >= 0; i--) if (drafts[i]?.counts === false) drafts.splice(i, 1);
  // a variant's section goes by the base section's printed name
  for (const draft of drafts) {
    if (draft.kind !== 'prep' || draft.variant === null) continue;
    const base = first.get(`/${foldOwn(draft.name)}`);
    if (base !== undefined) draft.key = base.key;
  }
}

function ownNames(drafts: readonly Draft[]): OwnNames {
  const list: (OwnName & { name: string })[] = [];
  for (const draft of drafts) {
    if (draft.kind === 'prep') list.push({ kind: 'prep', key: draft.key, larder: null, name: draft.name });
    else if (draft.kind === 'shelf') {
      for (const { text, note } of draft.rows) {
        if (note || text === '') continue;
        const name = printedName(text.split(':')[0] ?? '');
        if (name !== '') list.push({ kind: 'shelf', key: name.toLowerCase(), larder: lookup(name, 'volume')?.id ?? null, name });
      }
    }
  }
  return new OwnNames(list);
}

function knownLines(drafts: readonly Draft[], head: Head, text: string): ReadonlySet<string> {
  const known = new Set<string>(head.glass === undefined ? ['build', 'glass'] : ['build']);
  for (const [key, { value }] of Object.entries(head)) known.add(fold(`${key}: ${value}`));
  for (const draft of drafts) {
    if (draft.kind === 'accept') continue;
    if (draft.name !== '') known.add(fold(draft.name));
    if (draft.heading !== null) known.add(fold(text.slice(draft.heading.from, draft.heading.to).replace(/:\s*$/, '')));
    for (const { text, note } of draft.rows) if (!note) known.add(fold(remarkOff(text)));
  }
  return known;
}

function headValue(head: Head, field: 'measures', problems: Problem[], all: readonly Row[]): string | null {
  const value = head[field];
  if (value === undefined) return null;
  const word = value.value.toLowerCase();
  if (SYSTEMS.has(word)) return word;
  problems.push(problem('key-unclear', null, value.line, columnIn(all, value.line, value.span.from), value.span, { key: field, value: value.value }));
  return null;
}
/** The spec's own language, where its head says one. */
function languageOf(head: Head, problems: Problem[]): 'en' | 'de' | undefined {
  const value = head.language;
  if (value === undefined) return undefined;
  const named = languageNamed(value.value);
  if (named !== undefined) return named;
  problems.push(problem('key-unclear', null, value.line, 1, value.span, { key: 'language', value: value.value }));
  return undefined;
}
function servesOf(head: Head, problems: Problem[]): number {
  const value = head.serves;
  if (value === undefined) return 1;
  const match = /^(?:about |ca\.? |etwa )?(\d{1,4})(?:\s+(?:drinks?|people|glasses|servings|persons?|portionen|gläser|drink))?$/i.exec(value.value);
  const number = match === null ? 0 : Number(match[1]);
  if (number >= 1) return number;
  problems.push(problem('key-unclear', null, value.line, 1, value.span, { key: 'serves', value: value.value }));
  return 1;
}

/** Lines numbered "1." "2." count on. */
function isListed(draft: Draft, index: number): boolean {
  const number = (at: number): number | null => { const match = /^(\d{1,3})[.)]\s/.exec(draft.rows[at]?.text ?? ''); return match === null ? null : Number(match[1]); };
  const own = number(index);
  if (own === null) return false;
  return number(index + 1) === own + 1 || number(index - 1) === own - 1;
}

function readSection(draft: Draft, own: OwnNames, system: string | null, known: ReadonlySet<string>, problems: Problem[], near: 'en' | 'de', language: 'en' | 'de' | undefined, source: string): Section {
  const base = sectionPath(draft);
  const lines: Line[] = [], shelf: ShelfEntry[] = [], accept: AcceptEntry[] = [];
  let index = 0;
  draft.rows.forEach(({ row, line, text, offset, note }, at) => {
    const path: Path = [...base, index];
    const span = { from: offset, to: row.from + row.text.trimEnd().length };
    if (note) { lines.push({ path: index === 0 ? base : [...base, index - 1], line, span, text: row.text.trim(), actions: [], kind: 'note' }); return; }
    const bare = remarkOff(text);
    if (text === '') lines.push({ path, line, span, text: row.text.trim(), actions: [], kind: 'unread' });
    else if (draft.kind === 'shelf') {
      const read = shelfEntry(bare, offset);
      if (read === undefined) problems.push(problem('shelf-unclear', path, line, offset - row.from + 1, span, { text: bare }));
      else {
        shelf.push({ ...read.entry, name: printedName(read.entry.name) });
        if (read.unused !== null) problems.push(problem('number-unused', path, line, offset - row.from + 1 + read.unused.at, { from: offset + read.unused.at, to: offset + read.unused.at + read.unused.text.length }, { number: read.unused.text }));
        if ((read.entry.strength ?? 0) > 100) problems.push(problem('share-too-large', path, line, offset - row.from + 1, span, { number: String(read.entry.strength) }));
      }
      lines.push({ path, line, span, text: bare, actions: [], kind: read === undefined ? 'unread' : 'note' });
    } else if (draft.kind === 'accept') {
      const entry = acceptEntry(bare, offset, known);
      if (entry === undefined) problems.push(problem('accept-unclear', path, line, offset - row.from + 1, span, { text: bare }));
      else {
        accept.push(entry);
        const nearest = nearestCode(entry.code);
        if (nearest !== null) problems.push(problem('accept-code-unknown', path, line, offset - row.from + 1, { from: offset, to: offset + entry.code.length }, { code: entry.code, nearest }));
      }
      lines.push({ path, line, span, text: bare, actions: [], kind: entry === undefined ? 'unread' : 'note' });
    } else {
      const place: Place = { path, line, base: offset, own, inside: draft.kind === 'prep' ? draft.key : null, system, where: draft.kind === 'prep' ? 'prep' : 'build', listed: isListed(draft, at), ...(language === undefined ? {} : { language }) };
      const first = cachedLine(bare, place, offset - row.from, near), again = first.actions.map((action) => measuredAbove(action, first.label.kind === 'step', source, lines));
      const read = again[0] !== undefined && first.actions[0]?.kind === 'measure' ? cachedLine(bare, { ...place, poured: true }, offset - row.from, near) : first;
      const actions = again.every((path) => path === undefined) ? read.actions : read.actions.map((action, k) => (again[k] !== undefined && (action.kind === 'step' || action.kind === 'fill') ? { ...action, again: again[k] } : action));
      problems.push(...read.problems);
      lines.push({ path, line, span, text: row.text.trim(), actions, kind: read.actions[0]?.kind ?? 'unread' });
    }
    index++;
  });
  return {
    kind: draft.kind, name: draft.name, key: draft.key, variant: draft.variant, method: draft.method, methodWritten: draft.methodWritten, heading: draft.heading, headingLine: draft.headingLine, lines: sharesOf(draft.kind === 'build' ? together(lines, source) : lines),
    ...(draft.kind === 'shelf' ? { shelf } : {}), ...(draft.kind === 'accept' ? { accept } : {}),
  };
}
