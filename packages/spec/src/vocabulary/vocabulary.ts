import json from '../generated/vocabulary.json' with { type: 'json' };
import { fold, foldTyped } from '../names/fold.ts';

/** Languages the tables hold; a spec is read in English first, then in the others. */
export type Language = 'en' | 'de' | 'fr' | 'es' | 'it' | 'pt' | 'sv';

type UnitCells = readonly [string, string, number | string | null, number | null, number | null, string, string, string, Readonly<Record<string, readonly string[]>>];
type VerbCells = readonly [string, string, string, Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>];
type WordCells = readonly [string, string, number | null, number | null, number | null, Readonly<Record<string, readonly string[]>>];
type GivenCells = readonly [string, string, Readonly<Record<string, readonly string[]>>];
interface Compact {
  readonly names: Readonly<Record<string, readonly string[]>>;
  readonly categories: Readonly<Record<string, readonly string[]>>;
  readonly units: readonly UnitCells[];
  readonly verbs: readonly VerbCells[];
  readonly words: readonly WordCells[];
  readonly given: readonly GivenCells[];
}
export const compact = json as unknown as Compact;

export interface NameRow {
  readonly id: string;
  readonly name: string;
  /** of a preferred name: the capitals it is printed with */
  readonly printed?: string;
  readonly kind: 'preferred' | 'synonym' | 'spelling' | 'plural' | 'old' | 'ambiguous';
  /** of an ambiguous name: the reading taken when nothing else decides */
  readonly assumed: boolean;
  /** of an ambiguous name, when the reading holds: v by volume, c counted, w weighed, j after "juice of", p of the peel, o in old books */
  readonly when: string;
}

export interface Names {
  readonly byFold: ReadonlyMap<string, readonly NameRow[]>;
  /** beginnings of names at the ends of their words, folded: where none of them fits, no longer name does */
  readonly beginnings: ReadonlySet<string>;
  /** every word of every name */
  readonly words: ReadonlySet<string>;
  readonly rows: readonly NameRow[]; readonly preferred: ReadonlyMap<string, string> }

const KINDS: Readonly<Record<string, NameRow['kind']>> = { '=': 'preferred', '+': 'synonym', '~': 'spelling', '*': 'plural', '^': 'old', '?': 'ambiguous' };
const namesOf = new Map<string, Names>();

/** German adjectives stand in one ending in the table; the stem of every word but the last is what is compared. */
export function stemGerman(text: string): string {
  const parts = text.split(/[\s-]+/);
  return parts.map((part, index) => (index === parts.length - 1 ? fold(part) : fold(part).replace(/(e[rsnm]?)$/, ''))).join('');
}

function put(map: Map<string, NameRow[]>, key: string, row: NameRow): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [row]);
  else if (!list.some((other) => other.id === row.id)) list.push(row);
}

/** All names of one language, folded. */
export function names(language: Language): Names {
  const known = namesOf.get(language);
  if (known !== undefined) return known;
  const byFold = new Map<string, NameRow[]>(), rows: NameRow[] = [], preferred = new Map<string, string>(), beginnings = new Set<string>(), words = new Set<string>();
  const note = (name: string): string => {
    let joined = '';
    for (const part of name.includes('-') ? name.split(/[\s-]+/) : name.split(' ')) { const folded = fold(part); words.add(folded); joined += folded; beginnings.add(joined); }
    return joined;
  };
  for (const entry of compact.names[language] ?? []) {
    const cells = entry.split('|');
    const id = cells[0] ?? '';
    for (const cell of cells.slice(1)) {
      const kind = KINDS[cell.charAt(0)] ?? 'synonym';
      const colon = kind === 'ambiguous' ? cell.indexOf(':') : 0;
      const printed = cell.slice(colon + 1), name = printed.toLowerCase();
      const row: NameRow = { id, name, ...(printed === name ? {} : { printed }), kind, assumed: kind === 'ambiguous' && cell.charAt(1) === 'a', when: kind === 'ambiguous' ? cell.slice(2, colon) : '' };
      rows.push(row);
      if (kind === 'preferred') preferred.set(id, name);
      put(byFold, note(name), row);
      if (language === 'de' && /[äöü]/i.test(name)) { const typed = foldTyped(name); put(byFold, typed, row); beginnings.add(typed); }
    }
  }
  const made = { byFold, rows, preferred, beginnings, words };
  namesOf.set(language, made);
  return made;
}

const stems = new Map<string, NameRow[]>();

/** German names of more than one word by their stem: asked only where no name fits as it is written. */
export function germanStems(): ReadonlyMap<string, readonly NameRow[]> {
  if (stems.size === 0) for (const row of names('de').rows) if (row.name.includes(' ')) put(stems, stemGerman(row.name), row);
  return stems;
}

export interface VerbRow { readonly verb: string; readonly reading: string; readonly form: 'imperative' | 'infinitive' | 'participle' | '-ing' | 'phrase'; readonly waiting: boolean; readonly language: string; readonly words: number }
export interface VerbApart { readonly first: string; readonly last: readonly string[]; readonly row: VerbRow }

/** Verbs by folded phrase; where languages or forms share one, the imperative and English come first. */
export const verbs: ReadonlyMap<string, readonly VerbRow[]> = new Map();
/** "set … aside": verbs in two parts. */
export const verbsApart: readonly VerbApart[] = [];
/** First words of English steps, folded. */
export const englishSteps: ReadonlySet<string> = new Set();
for (const [verb, reading, hands, languages] of compact.verbs) {
  for (const [language, forms] of Object.entries(languages)) {
    for (const [form, list] of Object.entries(forms)) {
      for (const written of list) {
        const parts = written.split(/[\s-]+/), row: VerbRow = { verb, reading, form: form as VerbRow['form'], waiting: hands === 'waiting', language, words: parts.length };
        if (language === 'en') (englishSteps as Set<string>).add(fold(parts[0]!));
        if (written.includes('…')) {
          const [first = '', last = ''] = written.split('…').map((part) => part.trim());
          (verbsApart as VerbApart[]).push({ first: fold(first), last: last.split(' ').map(fold), row });
        } else {
          for (const key of new Set([fold(written), foldTyped(written)])) {
            const known = verbs.get(key) as VerbRow[] | undefined;
            if (known === undefined) (verbs as Map<string, VerbRow[]>).set(key, [row]);
            else if (language === 'en') known.splice(known.findIndex((other) => other.language !== 'en') < 0 ? known.length : known.findIndex((other) => other.language !== 'en'), 0, row);
            else known.push(row);
          }
        }
      }
    }
  }
}

export interface WordRow { readonly group: string; readonly key: string; readonly value: number | null; readonly low: number | null; readonly high: number | null; readonly language: string; readonly written: string }
const groupsOf = new Map<string, Map<string, WordRow>>();
const NONE: ReadonlyMap<string, WordRow> = new Map();

/** The words of one group (`treatment`, `glass`, `sieve` …) of every language, folded; English first. */
export function words(group: string): ReadonlyMap<string, WordRow> {
  if (groupsOf.size === 0) for (const english of [true, false]) gather(english);
  return groupsOf.get(group) ?? NONE;
}
function gather(english: boolean): void {
  for (const [group, key, value, low, high, languages] of compact.words) {
    let made = groupsOf.get(group);
    if (made === undefined) { made = new Map(); groupsOf.set(group, made); }
    for (const [language, list] of Object.entries(languages)) {
      if ((language === 'en') !== english) continue;
      for (const written of list) {
        const row = { group, key, value, low, high, language, written };
        for (const folded of [fold(written), foldTyped(written)]) if (!made.has(folded)) made.set(folded, row);
      }
    }
  }
}

const categoryOf = new Map<string, string>();
for (const [category, ids] of Object.entries(compact.categories)) for (const id of ids) categoryOf.set(id, category);

/** The larder's kind of an ingredient: `spirit`, `liqueur`, `fruit`, `sugar` … */
export const category = (id: string): string | undefined => categoryOf.get(id);
const ALCOHOLIC = new Set(['spirit', 'liqueur', 'fortified', 'wine', 'beer', 'bitters']);
export const isAlcoholic = (id: string): boolean => ALCOHOLIC.has(categoryOf.get(id) ?? '');
const SOLID = new Set(['fruit', 'fruit-dried', 'sugar', 'spice', 'herb', 'vegetable', 'nut', 'cocoa', 'mineral', 'texture', 'seaweed', 'garnish', 'sweetener']);
const SOLID_IDS = /^(butter|ghee|lard|coconut-oil|parmesan|blue-cheese|cream-cheese|chocolate|cocoa|egg-white-powder|milk-powder|.*-powder|beef-tallow|tea-leaf|coffee-instant|matcha|citric|malic-acid$|tartaric|ascorbic|ice$|dry-ice|almond-paste)/;
/** True where an ounce of it is one of weight. */
export const isSolid = (id: string): boolean => SOLID.has(categoryOf.get(id) ?? '') || SOLID_IDS.test(id);
