import type { LarderId, Thing } from '@washline/engine';
import { isEnglishWord, linkOf, lookup, lookupWhole, type Measured } from '../names/lookup.ts';
import { names, type Names } from '../vocabulary/names.ts';
import { verbs } from '../vocabulary/vocabulary.ts';
import { filledCompound } from '../names/compound.ts';
import type { Phrase } from './phrase.ts';
import { PLAIN, treatments } from './treatment.ts';
import { fold } from '../names/fold.ts';

/** Words at which a name ends, unless a longer known name goes on. */
const STOPS = new Set([
  'in', 'into', 'at', 'off', 'from', 'for', 'to', 'on', 'onto', 'over', 'with', 'without', 'per', 'about', 'plus', 'as', 'until', 'till', 'while', 'so', 'by', 'through', 'each', 'via', 'if', 'then', 'per', 'than', 'until', 'which', 'that', 'x', 'around', 'between', 'approx', 'ca', 'circa', 'divided', 'optional', 'straight',
  'dissolved', 'floated', 'dispersed', 'held', 'kept', 'warmed', 'heated', 'mixed', 'whisked', 'beaten', 'cut', 'pressed', 'soaked', 'bloomed', 'melted', 'chilled', 'strained', 'sliced', 'split', 'diced', 'peeled', 'cooled', 'softened', 'hydrated', 'shaken', 'poured', 'drizzled', 'twisted', 'topped',
  'gelost', 'aufgelost', 'dispergiert', 'eingeruhrt', 'eingeweicht', 'geschmolzen', 'gehalten', 'erwarmt', 'erhitzt', 'abgekuhlt', 'abgeseiht', 'geschalt', 'geschnitten', 'gehackt', 'zerstossen', 'angedruckt', 'gewurfelt', 'aufgeschlagen', 'verruhrt', 'vermischt', 'gequollen',
  'mit', 'zum', 'zur', 'bei', 'auf', 'aus', 'ins', 'im', 'pro', 'je', 'fur', 'uber', 'durch', 'nach', 'als', 'oder', 'bis', 'ohne', 'und',
]);
const NOT_FIRST = new Set(['dissolved', 'melted', 'pressed', 'chilled', 'beaten', 'strained', 'sliced', 'diced', 'peeled', 'soaked', 'bloomed', 'whisked', 'cut', 'split', 'softened', 'hydrated', 'warmed', 'heated', 'topped', 'cooled', 'straight', 'twisted', 'mixed', 'shaken']);
const MAX_NAME = 9;
/** German joining words that end a name only where the name is not known with them. */
const ARTICLES = new Set(['the', 'a', 'an', 'some', 'of', 'your', 'my', 'this', 'der', 'die', 'das', 'den', 'de', 'du', 'des', 'der', 'di', 'del', 'la', 'le', 'les', 'el', 'dem', 'desired']);

/** True where a name may end before i: the end, a mark that parts, a number, or a stop word. */
function boundary(p: Phrase, i: number, end: number): boolean {
  if (i >= end) return true;
  const token = p.t[i];
  if (token === undefined || token.kind === 'number' || token.kind === 'bad') return true;
  if (token.kind === 'mark') return !(p.isHyphen(i) || token.text === '&' || token.text === '/' || token.text === '+');
  return STOPS.has(token.fold) || token.fold === 'and' || token.fold === 'or' || token.fold === 'abv' || token.fold === 'proof' || token.fold === 'x' || isDoneWith(p, i);
}

/** Words that point at something else and name nothing. */
const PRONOUNS = /^(it|them|this|that|these|those|everything|which|you|we|i|is|are|was|be|es|sie|ihn)$/;

/** "sugar saturated with bitters", "mint muddled in syrup": the participle before what it was done with ends the name. */
function isDoneWith(p: Phrase, k: number): boolean {
  const at = /^well$|ly$/.test(p.word(k)) ? k + 1 : k, next = p.word(at + 1);
  if (!/^(with|in|by|mit|into|on|onto|over)$/.test(next)) return false;
  return /ed$/.test(p.word(at)) || verbs.get(p.word(at))?.some((row) => row.form === 'participle') === true;
}

interface Region { readonly end: number }
/** Where the words of a name that is not known end. */
function region(p: Phrase, i: number, end: number): Region {
  let k = i, count = 0;
  while (k < end && count < 14) {
    const token = p.t[k];
    if (token === undefined || token.kind === 'number' || token.kind === 'bad') break;
    if (token.kind === 'mark') {
      if (p.isHyphen(k) || token.text === '&' || token.text === '/' && !token.gap) { k++; continue; }
      if (token.text === '.' && !token.gap && k + 1 < end && isAbbreviation(p, k)) { k++; continue; }
      if (token.text === '’' || token.text === "'" || token.text === '"') { k++; continue; }
      if (token.text === ',' && orFollows(p, k, end)) { k++; continue; }
      break;
    }
    if (k > i && isDoneWith(p, k)) break;
    if (k > i && STOPS.has(token.fold) && !(NOT_FIRST.has(token.fold) && leadsIn(p, i, k)) && !(token.fold === 'oder')) break;
    if (k === i && STOPS.has(token.fold) && !NOT_FIRST.has(token.fold)) break;
    k++;
    count++;
  }
  while (k > i && p.t[k - 1]?.kind === 'mark' && !p.isMark(k - 1, ')')) k--;
  while (k > i + 1 && (p.word(k - 1) === 'and' || p.word(k - 1) === 'or')) k--;
  return { end: k };
}
/** "fresh-pressed", "freshly pressed", "cold pressed": what stands before the participle only says how. */
function leadsIn(p: Phrase, i: number, k: number): boolean {
  for (let j = i; j < k; j++) if (!p.isHyphen(j) && !p.isTreatment(j) && !/^(cold|hand|well|finely|roughly)$|ly$/.test(p.word(j))) return false;
  return true;
}
function isAbbreviation(p: Phrase, point: number): boolean {
  return /^(dr|st|mr|mrs|o|arom|prof|sir|ste|no)$/.test(p.word(point - 1));
}
/** "whiskey, brandy or gin": a comma that parts a list ending in "or". */
function orFollows(p: Phrase, comma: number, end: number): boolean {
  for (let k = comma + 1, seen = 0; k < end && seen < 4; k++) {
    const token = p.t[k];
    if (token === undefined || token.kind === 'number' || (token.kind === 'mark' && token.text !== ',' && !p.isHyphen(k))) return false;
    if (token.fold === 'or' || token.fold === 'oder') return seen > 0 || true;
    if (token.kind === 'word') seen++;
  }
  return false;
}

export interface ThingAt { readonly thing: Thing; readonly end: number; readonly alternatives: readonly Thing[]; readonly first: number; readonly label: string; readonly the: boolean; readonly treated: readonly { readonly from: number; readonly end: number }[] }

/** The longest known larder name from i that ends at a boundary; commas and marks fold away. */
function knownFrom(p: Phrase, i: number, end: number): number {
  const at = i * 1024 + end;
  const before = p.ends.get(at);
  if (before !== undefined) return before;
  const found = findKnown(p, i, end);
  p.ends.set(at, found);
  return found;
}
function findKnown(p: Phrase, i: number, end: number): number {
  const found = longestIn(p, i, end, names('en'));
  // "Methylcellulose zum Aufschlagen": known in English, longer in German
  const more = found > i && p.word(found) !== '' && !isEnglishWord(p.word(found)) && names('de').words.has(p.word(found));
  return !more && (found > i || isEnglishWord(p.word(i))) ? found : Math.max(found, longestIn(p, i, end, names('de')));
}
function longestIn(p: Phrase, i: number, end: number, table: Names): number {
  let key = '', best = -1;
  for (let k = i, seen = 0; k < end && seen < MAX_NAME; k++) {
    const token = p.t[k];
    if (token === undefined || token.kind === 'bad') break;
    if (token.kind === 'mark') {
      if (token.text === '%' || token.text === ':' || token.text === '&') key += token.text;
      else if (token.text !== ',' && token.text !== '.' && !p.isHyphen(k)) break;
      else continue;
    } else { key += token.kind === 'number' ? token.text.replace(/[.,]/g, '') : token.fold; }
    seen++;
    if (!table.beginnings.has(key)) break;
    if (table.has(key) && boundary(p, k + 1, end)) best = k + 1;
  }
  return best;
}

/** Numbers behind a name ("lime acid 6 %", "simple syrup 1:1") are facts of their own. */
function beforeNumber(p: Phrase, i: number, end: number): number {
  for (let k = i + 1; k < end; k++) {
    if (!p.isNumber(k)) continue;
    let to = k;
    while (to > i + 1 && p.t[to - 1]?.kind === 'mark') to--;
    return to;
  }
  return end;
}

/** True where a larder name runs from i to a boundary (used to tell a name from a verb at a line's head). */
export function nameEnd(p: Phrase, i: number, end: number): number { return knownFrom(p, i, end); }

/** The spec's own name from i, whole, followed by a boundary. */
export function ownFrom(p: Phrase, i: number, end: number): { readonly link: Thing['link']; readonly end: number } | undefined {
  const { own, inside } = p.place;
  if (own.empty) return undefined;
  let key = '', best: { link: Thing['link']; end: number } | undefined;
  for (let k = i, seen = 0; k < end && seen < Math.max(own.longest, 1) + 2; k++) {
    const token = p.t[k];
    if (token === undefined) break;
    if (token.kind === 'mark') {
      if (/^[(%)&:/+]$/.test(token.text)) key += fold(token.text);
      else if (token.text !== ',' && token.text !== '.' && !p.isHyphen(k)) break;
      else continue;
    } else { key += token.kind === 'number' ? fold(token.text) : token.fold; }
    seen++;
    const name = own.get(key);
    if (name === undefined || !boundary(p, k + 1, end)) continue;
    if (name.kind === 'prep') { if (name.key !== inside) best = { link: { kind: 'prep', prep: name.key }, end: k + 1 }; }
    else best = { link: { kind: 'shelf', shelf: name.key, larder: name.larder }, end: k + 1 };
  }
  return best;
}

function larderLink(p: Phrase, words: string, whole: string, measured: Measured): Thing['link'] {
  const { system, language } = p.place;
  const found = (whole === words ? undefined : lookupWhole(whole, measured, system, language)) ?? lookup(words, measured, system, language);
  if (found !== undefined) return linkOf(found);
  return { kind: 'unknown', nearest: [] };
}

/** Plain treatments off the front ("fresh", "cold", "large"), unless the whole is a name. */
function strip(p: Phrase, i: number, end: number): { readonly from: number; readonly treated: readonly { from: number; end: number }[] } {
  let k = i;
  const treated: { from: number; end: number }[] = [];
  for (let round = 0; round < 4 && k < end - 1; round++) {
    const found = p.longest(k, end - 1, 3, treatments);
    if (found === undefined || !PLAIN.has(found.value.key) || found.end >= end) break;
    treated.push({ from: k, end: found.end });
    k = found.end;
    if (p.isHyphen(k) || p.isMark(k, ',')) k++;
  }
  return { from: k, treated };
}

/**
 * The thing that begins at i: the spec's own names first, then the longest known name, then words up to a boundary.
 * `also` are the words after which more of the name stands (a percentage, a ratio), tried with it.
 */
export function thingAt(p: Phrase, i: number, end: number, measured: Measured, tail?: number): ThingAt | undefined {
  let k = i, the = false;
  while (k < end && ARTICLES.has(p.word(k)) && k + 1 < end && !isKnownStart(p, k, end)) { if (/^(the|der|die|das|den)$/.test(p.word(k))) the = true; k++; }
  const own = ownFrom(p, k, end);
  if (own !== undefined) {
    const words = p.slice(k, own.end);
    return { thing: { words, span: p.span(k, own.end), link: own.link }, end: own.end, alternatives: [], first: k, label: words.toLowerCase(), the, treated: [] };
  }
  if (the) {
    const last = region(p, k, end).end;
    const parts: string[] = [];
    for (let n = k; n < last; n++) if (p.t[n]?.kind === 'word') parts.push(p.word(n));
    const preps = parts.length === 0 ? [] : p.place.own.endingIn(parts).filter((key) => key !== p.place.inside);
    const only = preps[0];
    if (only !== undefined && preps.length === 1) {
      const words = p.slice(k, last);
      return { thing: { words, span: p.span(k, last), link: { kind: 'prep', prep: only } }, end: last, alternatives: [], first: k, label: words.toLowerCase(), the, treated: [] };
    }
    if (preps.length > 1) p.report('prep-unclear', k, last, { words: p.slice(k, last), preps: preps.join(', ') });
  }
  if (PRONOUNS.test(p.word(k))) return undefined;
  // "Limetten- oder Zitronensaft": the first word is left open
  const filled = p.isMark(k + 1, '-') && p.t[k + 1]?.gap === false && /^(oder|und)$/.test(p.word(k + 2)) ? filledCompound(p.slice(k, k + 1), p.slice(k + 3, k + 4), measured) : undefined;
  if (filled !== undefined) return { thing: { words: filled, span: p.span(k, k + 2), link: larderLink(p, filled, filled, measured) }, end: k + 2, alternatives: [], first: k, label: filled.toLowerCase(), the, treated: [] };
  const known = beforeNumber(p, k, knownFrom(p, k, end));
  const last = Math.max(region(p, k, end).end, known);
  if (last <= k) return undefined;
  const known2 = known > k && known >= last ? known : -1;
  const stripped = known2 > 0 ? { from: k, treated: [] } : strip(p, k, last);
  let from = stripped.from, treated = stripped.treated;
  if (known2 > 0 && p.t[k]?.kind === 'word') {
    // "fresh lime", "boiling water" are names; their treatment still tells the temperature
    const first = p.longest(k, known2 - 1, 3, treatments);
    if (first !== undefined && PLAIN.has(first.value.key)) treated = [{ from: k, end: first.end }];
  }
  if (from >= last) { from = k; treated = []; }
  if (from > k) { const ownLater = ownFrom(p, from, end); if (ownLater !== undefined) { const words = p.slice(from, ownLater.end); return { thing: { words, span: p.span(from, ownLater.end), link: ownLater.link }, end: ownLater.end, alternatives: [], first: from, label: words.toLowerCase(), the, treated }; } }
  const words = p.slice(from, last);
  const label = words.toLowerCase();
  // alternatives: "bourbon or rye", "whiskey, brandy or gin"
  if (known2 < 0) {
    const cuts: number[] = [];
    for (let n = from; n < last; n++) if (/^(or|oder)$/.test(p.word(n)) || (p.isMark(n, ',') && orFollows(p, n, end)) || (p.isMark(n, '/') && p.t[n + 1]?.kind === 'word')) cuts.push(n);
    if (cuts.length > 0) {
      const pieces: [number, number][] = [];
      let start = from;
      for (const cut of [...cuts, last]) { if (cut > start) pieces.push([start, cut]); start = cut + 1; }
      const noun = pieces[pieces.length - 1];
      const things = pieces.map(([a, b], index): Thing => {
        const own2 = ownFrom(p, a, b);
        const text = p.slice(a, b);
        // "lemon or lime juice": the last noun belongs to each
        const wide = noun !== undefined && index < pieces.length - 1 && noun[1] - noun[0] >= 2 ? `${text} ${p.slice(noun[1] - 1, noun[1])}` : text;
        const link = own2?.link ?? (wide !== text && lookupWhole(wide, measured, p.place.system) !== undefined ? larderLink(p, wide, wide, measured) : larderLink(p, text, text, measured));
        return { words: text, span: p.span(a, b), link };
      });
      const head = things[0];
      if (head !== undefined) return { thing: head, end: last, alternatives: things.slice(1), first: from, label, the, treated };
    }
  }
  const whole = tail !== undefined && tail > last ? p.slice(k, tail) : p.slice(k, last);
  return { thing: { words, span: p.span(from, last), link: larderLink(p, words, whole, measured) }, end: last, alternatives: [], first: from, label, the, treated };
}

function isKnownStart(p: Phrase, i: number, end: number): boolean { return knownFrom(p, i, end) > i; }

export const larderId = (thing: Thing): LarderId | null => (thing.link.kind === 'larder' ? thing.link.id : thing.link.kind === 'shelf' ? thing.link.larder : null);
