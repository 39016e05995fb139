import type { Tables } from '@washline/engine';
import { METHODS } from '../sections/methods.ts';
import { fold, foldTyped } from '../names/fold.ts';
import { names } from '../vocabulary/names.ts';
import { category, compact } from '../vocabulary/vocabulary.ts';

export type CompletionKind = 'prep' | 'bottle' | 'ingredient' | 'unit' | 'step' | 'method' | 'glass' | 'ice' | 'sieve' | 'key' | 'section';
export type CompletionLanguage = 'en' | 'de';

/** One thing that may be meant, with what is known of it. */
export interface Candidate {
  readonly kind: CompletionKind;
  /** as it is shown and written */
  readonly name: string;
  /** what is written behind it: a blank after a unit, the colon of a heading */
  readonly after: string;
  /** of a prep its METHOD, of an ingredient its category in the larder, of a unit what it is counted in, of all others their key */
  readonly of: string;
  /** % vol, where it has one */
  readonly strength?: number;
  /** of a unit: how much of `of` it is; of a glass: mL to the brim */
  readonly low?: number;
  readonly high?: number;
}

/** A candidate by all the forms it may be typed in: the whole, and from the beginning of each further word. */
export interface Indexed { readonly id: string; readonly candidate: Candidate; readonly forms: readonly (readonly string[])[]; readonly rank: number }

/** Every way the words may be begun: from the first word, then from each later one; each as it is and without its marks. */
export function formsOf(name: string): string[][] {
  const parts = name.split(/[\s\-/]+/), typed = /[äöü]/i.test(name);
  return parts.map((_, at) => { const rest = parts.slice(at).join(''); return typed ? [fold(rest), foldTyped(rest)] : [fold(rest)]; });
}
const made = new Map<string, readonly Indexed[]>();
function once(key: string, make: () => Indexed[]): readonly Indexed[] {
  const known = made.get(key);
  if (known !== undefined) return known;
  const list = make();
  made.set(key, list);
  return list;
}
const indexed = (id: string, candidate: Candidate, rank = 0): Indexed => ({ id, candidate, forms: formsOf(candidate.name), rank });

const RANK = { preferred: 0, synonym: 1, plural: 2, spelling: 3, old: 4, ambiguous: 5 } as const;

/** German nouns have capitals: as the preferred names print them, else by a word's place and ending. */
let capitals: { readonly large: ReadonlySet<string>; readonly small: ReadonlySet<string> } | undefined;
function printedGerman(name: string): string {
  if (capitals === undefined) {
    const words = names('de').rows.flatMap((row) => (row.kind === 'preferred' ? (row.printed ?? row.name).split(' ') : []));
    capitals = { large: new Set(words.filter((word) => word !== word.toLowerCase()).map((word) => word.toLowerCase())), small: new Set(words.filter((word) => word === word.toLowerCase())) };
  }
  const { large, small } = capitals, parts = name.split(' ');
  return parts.map((word, at) => (PARTICLE.test(word) || small.has(word) || (!large.has(word) && at < parts.length - 1 && /(?:e[rsnm]?|isch)$/.test(word)) ? word : word.replace(/^\p{L}|(?<=-)\p{L}/gu, (letter) => letter.toUpperCase()))).join(' ');
}
const tongue = (language: CompletionLanguage, name: string): string => (language === 'de' ? printedGerman(name) : name);
const unitIn = (language: CompletionLanguage, name: string): string => (language === 'en' ? name : /^[bet]l$/.test(name) ? name.toUpperCase() : /^\p{L}{4,}/u.test(name) ? printedGerman(name) : name);
const PARTICLE = /^(?:mit|von|vom|aus|in|im|der|die|das|des|den|dem|ohne|und|einer?|eines|zum|zur|für|auf|nach|de|la|al|bis|je|pro|ganz|gemischt|frisch|rot|weiß|weiss|süß|trocken|dunkel|hell|gibt|wiegt|behält|fasst|hält|wächst|um|nimmt|bei|zeigt|vertreibt|an|über|ungefähr|klären|klärung|durch)$/;

/** The larder's names in one language; with tables each spirit has its strength. */
export function ingredients(language: CompletionLanguage, tables: Tables | undefined): readonly Indexed[] {
  return once(`ingredient/${language}/${tables === undefined ? '' : tables.version}`, () => names(language).rows.map((row) => {
    const strength = tables?.ingredient(row.id)?.cells['abv_pct']?.value;
    return indexed(row.id, { kind: 'ingredient', name: row.printed ?? (language === 'de' ? printedGerman(row.name) : row.name), after: '', of: category(row.id) ?? '', ...(strength === undefined || strength <= 0 ? {} : { strength }) }, RANK[row.kind]);
  }));
}

/** Words of a group of `words.tsv` in one language. */
export function group(of: 'glass' | 'ice' | 'sieve' | 'method', language: CompletionLanguage): readonly Indexed[] {
  return once(`${of}/${language}`, () => compact.words.flatMap(([from, key, , low, high, languages]) => (from !== of || key === 'no-ice' || key === 'wet' || key === 'dry' || (of === 'method' && !METHODS.includes(key)) ? [] : (languages[language] ?? []).map((name, at) => indexed(key, { kind: of, name: of === 'method' ? name : tongue(language, name), after: of === 'method' ? '):' : '', of: key, ...(low === null || high === null ? {} : { low, high }) }, at)))));
}

/** Units in the order of their table: those of the bar first. */
export function units(language: CompletionLanguage): readonly Indexed[] {
  return once(`unit/${language}`, () => compact.units.flatMap(([unit, of, factor, low, high, , , mark, languages]) => (mark === 'o' ? [] : (languages[language] ?? []).map((name, at) => {
    const least = low ?? (typeof factor === 'number' ? factor : null), most = high ?? (typeof factor === 'number' ? factor : null);
    return indexed(unit, { kind: 'unit', name: unitIn(language, name), after: ' ', of, ...(least === null || most === null ? {} : { low: least, high: most }) }, at);
  }))));
}

export function steps(language: CompletionLanguage): readonly Indexed[] {
  return once(`step/${language}`, () => compact.verbs.flatMap(([verb, reading, , languages]) => (language === 'de' ? (['infinitive', 'imperative', 'phrase'] as const) : (['imperative', 'infinitive', 'phrase'] as const)).flatMap((form, at) => (languages[language]?.[form] ?? []).flatMap((name, n) => (name.includes('…') ? [] : [indexed(verb, { kind: 'step', name, after: ' ', of: reading }, n + 10 * at)])))));
}

const HEAD = new Set(['about', 'glass', 'source', 'serves', 'measures', 'one-part']);
/** Keys and facts of the head. */
export function keys(language: CompletionLanguage): readonly Indexed[] {
  return once(`key/${language}`, () => [
    ...compact.words.flatMap(([from, key, , , , languages]) => (from !== 'section' || !HEAD.has(key) ? [] : (languages[language] ?? []).map((name, at) => indexed(key, { kind: 'key', name: tongue(language, name), after: ': ', of: key }, at)))),
    indexed('language', { kind: 'key', name: language === 'de' ? 'Sprache' : 'language', after: ': ', of: 'language' }),
    ...compact.given.flatMap(([key, of, languages]) => (languages[language] ?? []).map((name, at) => indexed(key, { kind: 'key', name: tongue(language, name), after: ': ', of }, at + 1))),
  ]);
}
/** Headings of sections. */
export function sections(language: CompletionLanguage): readonly Indexed[] {
  return once(`section/${language}`, () => compact.words.flatMap(([from, key, , , , languages]) => (from !== 'section' || (key !== 'build' && key !== 'shelf' && key !== 'accept') ? [] : (languages[language] ?? []).map((name, at) => indexed(key, { kind: 'section', name: name.charAt(0).toUpperCase() + name.slice(1), after: ':', of: key }, at)))));
}
