import type { LarderId } from '@washline/engine';
import { fold } from './fold.ts';
import { unitForms } from '../vocabulary/units.ts';
import { germanStems, names, stemGerman, type NameRow } from '../vocabulary/names.ts';
import { englishSteps, words, type Language } from '../vocabulary/vocabulary.ts';

/** How the thing is measured, which settles names with two meanings: "lime" is juice by volume, fruit by count. */
export type Measured = 'volume' | 'count' | 'weight' | 'juice' | 'peel' | null;
export interface Found { readonly id: LarderId; readonly name: string; readonly assumed: boolean; readonly others: readonly LarderId[] }

const LETTER: Readonly<Record<string, string>> = { volume: 'v', count: 'c', weight: 'w', juice: 'j', peel: 'p' };
const OLD = 'us-1910';

function settle(rows: readonly NameRow[], measured: Measured, system: string | null): Found {
  const sure = rows.find((row) => row.kind !== 'ambiguous');
  if (sure !== undefined) return { id: sure.id, name: sure.name, assumed: false, others: [] };
  const letter = measured === null ? '' : LETTER[measured] ?? '';
  const fits = (row: NameRow): boolean => letter !== '' && row.when.includes(letter);
  const old = system === OLD ? rows.find((row) => row.when.includes('o')) : undefined;
  const chosen = old ?? rows.find((row) => row.assumed && fits(row)) ?? rows.find((row) => !row.assumed && fits(row) && rows.every((other) => !other.assumed || (other.when !== '' && !fits(other))))
    ?? rows.find((row) => row.assumed) ?? rows[0]!;
  return { id: chosen.id, name: chosen.name, assumed: true, others: rows.filter((row) => row.id !== chosen.id).map((row) => row.id) };
}

const RESPELT: readonly (readonly [RegExp, string])[] = [
  [/gelatine/g, 'gelatin'], [/flavoured/g, 'flavored'], [/flavored/g, 'flavoured'], [/pasteuri[sz]ed/g, 'pasteurised'], [/yoghurt/g, 'yogurt'], [/colour/g, 'color'], [/syrop/g, 'syrup'],
  [/curacao/g, 'curacoa'], [/curacoa/g, 'curacao'], [/whiskey/g, 'whisky'], [/whisky/g, 'whiskey'], [/chil+[iey]+/g, 'chilli'], [/liquorice/g, 'licorice'], [/molasse(s?)$/g, 'molasses'], [/sulph/g, 'sulf'], [/centre/g, 'center'], [/fibre/g, 'fiber'],
];

const ODD = /gelatine|flavou?red|pasteuri|yoghurt|colour|syrop|cura[co]+a|whisk|chil|liquorice|molasse|sulph|centre|fibre/;

/** One form and its singular, plural and respelt neighbours. */
function forms(folded: string): string[] {
  const out = [folded];
  if (folded.endsWith('ies')) out.push(`${folded.slice(0, -3)}y`);
  if (folded.endsWith('es')) out.push(folded.slice(0, -2));
  if (folded.endsWith('s')) out.push(folded.slice(0, -1));
  else out.push(`${folded}s`);
  if (folded.endsWith('leaves')) out.push(`${folded.slice(0, -6)}leaf`);
  if (ODD.test(folded)) for (const [from, to] of RESPELT) {
    const other = folded.replace(from, to);
    if (other !== folded) out.push(other);
  }
  return out;
}

/** The exact name, in one language, whole phrase; undefined where the table has none. */
function exact(phrase: string, folded: string, language: Language, measured: Measured, system: string | null): Found | undefined {
  const table = names(language);
  const rows0 = table.of(folded);
  if (rows0 !== undefined) return settle(rows0, measured, system);
  for (const form of forms(folded)) {
    const rows = table.of(form);
    if (rows !== undefined) return settle(rows, measured, system);
  }
  if (language === 'de') {
    const rows = germanStems().get(stemGerman(phrase));
    if (rows !== undefined) return settle(rows, measured, system);
  }
  return undefined;
}

const LANGUAGES: Readonly<Record<'en' | 'de', readonly Language[]>> = { en: ['en', 'de'], de: ['de', 'en'] };

/** The whole phrase as it stands, in the spec's own language (English where none is written), then the other. */
export function lookupWhole(phrase: string, measured: Measured = null, system: string | null = null, own: 'en' | 'de' = 'en'): Found | undefined {
  const folded = fold(phrase);
  if (folded === '') return undefined;
  for (const language of LANGUAGES[own]) {
    if (language !== 'en' && own === 'en' && isEnglish(phrase)) continue;
    const found = exact(phrase, folded, language, measured, system);
    if (found !== undefined) return found;
  }
  return undefined;
}
/** What a thing is linked to, with the name that could mean nothing else where the written one could. */
export function linkOf(found: Found): { readonly kind: 'larder'; readonly id: LarderId; readonly assumed: boolean; readonly others: readonly LarderId[]; readonly name?: string } {
  const language = found.assumed && !names('en').has(fold(found.name)) ? 'de' : 'en';
  const name = found.assumed ? names(language).preferred.get(found.id) ?? names('en').preferred.get(found.id) : undefined;
  return { kind: 'larder', id: found.id, assumed: found.assumed, others: found.others, ...(name === undefined ? {} : { name }) };
}

/** True for a folded word of some English name, an English step and an English unit (of more than a letter: H-Milch). */
export const isEnglishWord = (folded: string): boolean =>
  names('en').words.has(folded) || (folded.length > 1 && (englishSteps.has(folded) || unitForms(folded)?.[0]?.language === 'en'));

/** True where every word is an English one: no other language is asked then, nor loaded. */
export function isEnglish(phrase: string): boolean {
  if (!/^[\x20-\x7e]*$/.test(phrase)) return false;
  for (const part of phrase.split(/[\s,-]+/)) if (part !== '' && !isEnglishWord(fold(part))) return false;
  return true;
}

const articles = /^(?:the|an?|some|of|de|du|des|d['’])\s+/i;

/**
 * The larder's row for words: the whole phrase first, then without treatments of `words.tsv`, one at a time, front and back.
 * A part of a name is never a reading.
 *
 * @param phrase the words as written
 * @param measured how the thing is measured, where that is known: settles a name with two meanings
 * @param system `measures:` of the spec; `us-1910` settles old-book words
 * @param own the spec's own language, whose names go first
 * @returns the row, whether it was assumed among several, and the others; undefined where no name fits
 * @source none - definition
 */
export function lookup(phrase: string, measured: Measured = null, system: string | null = null, own: 'en' | 'de' = 'en'): Found | undefined {
  const key = `${own}|${measured ?? ''}|${system ?? ''}|${phrase}`;
  const known = found.get(key);
  if (known !== undefined) return known === null ? undefined : known;
  const made = find(phrase, measured, system, own);
  if (found.size > 5000) found.clear();
  if (phrase.length < 120) found.set(key, made ?? null);
  return made;
}
const found = new Map<string, Found | null>();

function find(phrase: string, measured: Measured, system: string | null, own: 'en' | 'de'): Found | undefined {
  const bare = phrase.trim().replace(articles, '');
  const first = lookupWhole(bare, measured, system, own);
  if (first !== undefined) return first;
  let parts = bare.split(/[\s]+/).map((part) => part.replace(/[,;]+$/, '')).filter((part) => part !== '');
  for (let round = 0; round < 4 && parts.length > 1; round++) {
    const width = parts.length;
    let cut: string[] | undefined;
    for (const back of [false, true]) {
      for (let n = Math.min(3, width - 1); n >= 1; n--) {
        const piece = back ? parts.slice(width - n) : parts.slice(0, n);
        const rest = back ? parts.slice(0, width - n) : parts.slice(n);
        if (!treated(fold(piece.join(''))) && !(n === 1 && !back && SMALL.has(fold(piece.join(''))))) continue;
        const found = lookupWhole(rest.join(' '), measured, system, own);
        if (found !== undefined) return found;
        cut ??= rest;
      }
    }
    if (cut === undefined) return undefined;
    parts = cut;
  }
  return undefined;
}
/** A treatment, German ones in any ending. */
function treated(folded: string): boolean {
  const treatments = words('treatment');
  return treatments.has(folded) || treatments.has(folded.replace(/e[rsnm]?$/, ''));
}
const SMALL = new Set(['and', 'very', 'extra', 'good', 'plain', 'real', 'ripe', 'your', 'more', 'freshly', 'lightly', 'nice', 'well', 'finely', 'roughly', 'chilled', 'whole']);
