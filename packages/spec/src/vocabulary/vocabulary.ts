import json from '../generated/vocabulary.json' with { type: 'json' };
import { fold, foldTyped } from '../names/fold.ts';

/** Languages the tables hold; a spec is read in English first, then in the others. */
export type Language = 'en' | 'de' | 'fr' | 'es' | 'it' | 'pt' | 'sv';

type UnitCells = readonly [string, string, number | string | null, number | null, number | null, string, string, string, Readonly<Record<string, readonly string[]>>];
type VerbCells = readonly [string, string, string, Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>];
type WordCells = readonly [string, string, number | null, number | null, number | null, Readonly<Record<string, readonly string[]>>];
type GivenCells = readonly [string, string, Readonly<Record<string, readonly string[]>>];
interface Compact {
  /** by language a line a thing: its id, then its names with their marks */
  readonly names: Readonly<Record<string, string>>;
  readonly categories: Readonly<Record<string, readonly string[]>>;
  readonly units: readonly UnitCells[];
  readonly verbs: readonly VerbCells[];
  readonly words: readonly WordCells[];
  readonly given: readonly GivenCells[];
}
export const compact = json as unknown as Compact;

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
          const own = fold(written), typed = foldTyped(written);
          for (const key of own === typed ? [own] : [own, typed]) {
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
