import type { Document, Tables } from '@washline/engine';
import { parse } from '../document/parse.ts';
import { fold } from '../names/fold.ts';
import { isNote, keyOf } from '../sections/heading.ts';
import { givenOf } from '../sections/given.ts';
import { foldUnit, unitForms } from '../vocabulary/units.ts';
import { verbs } from '../vocabulary/vocabulary.ts';
import { formsOf, group, ingredients, keys, sections, steps, units, type Candidate, type CompletionLanguage, type Indexed } from './candidates.ts';

/** One thing to take: in place of the text from `from` of all to its own `to`. */
export interface Completion extends Candidate { readonly to: number; readonly insert: string }
export interface Completions {
  /** where the words begin that are completed, in UTF-16 units of the text */
  readonly from: number;
  readonly list: readonly Completion[];
}
export interface CompletionOptions {
  /** a document of this text or of the one a letter ago: its preps and bottles go first */
  readonly document?: Document;
  readonly tables?: Tables;
  /** at most so many; 8 where nothing is said */
  readonly limit?: number;
  /** true where the list was asked for: then nothing need be typed */
  readonly asked?: boolean;
}

/** What may stand at a place; of a thing, how it is measured there. */
interface Place { readonly kinds: readonly Wanted[]; readonly measured: 'volume' | 'solid' | null }
type Wanted = 'start' | 'unit' | 'thing' | 'method' | 'glass' | 'ice' | 'sieve' | 'step' | 'step-on' | 'system' | 'tongue';
const WORD = /[\p{L}\p{M}\p{N}'’&½⅓⅔¼¾⅛⅜⅝⅞%°]/u;
const NUMBER = /(?:^|[\s(~,])(?:\d+(?:[.,/]\d+)?(?:\s+\d+\/\d+|\s*[½⅓⅔¼¾⅛⅜⅝⅞])?|[½⅓⅔¼¾⅛⅜⅝⅞]|\d+(?:[.,]\d+)?\s*(?:-|–|to|bis)\s*\d+(?:[.,]\d+)?)$/iu;
const INTO = /(?:^|\s)(?:into|in|serve in|in eine?n?|in einem|in die|in den|ins|into an?|into the|in an?|in the)$/i;
const THROUGH = /(?:^|\s)(?:through|through an?|through the|durch|durch eine?n?)$/i;
const OVER = /(?:^|\s)(?:over|with|on|auf|über|mit)$/i;
const PUT = /(?:^|\s)(?:of|of the|all of the|the rest of the|the|with|mit|and|und|von|vom|rest|juice of|saft von|aus|dash of|add|garnish|garnish with|top with|float|in)$/i;
const PUTS = new Set(['add', 'squeeze', 'muddle', 'press', 'pour', 'float', 'layer', 'top', 'lengthen', 'crown', 'sink', 'rinse', 'spray', 'garnish', 'grate', 'twist', 'rim', 'season', 'dilute', 'dissolve', 'disperse', 'fold', 'infuse', 'soak', 'fill']);
const SOLIDS = /^(?:garnish|muddle|grate|twist|rim|garnier)/i, FILLS = /^(?:top|float|fill|lengthen|crown|layer|rinse|auff|dilute)/i;
const SYSTEMS = ['us', 'uk', 'au', 'metric', 'us-1910'], TONGUES = ['English', 'Deutsch'];

/**
 * What may be meant by the words before a caret: preps of the spec first, then bottles of its shelf, then names that begin so, then names with a word that begins so.
 *
 * @param text the spec as it stands
 * @param offset of the caret, in UTF-16 units
 * @param language whose words are offered; the other's where it has none
 * @param options the spec read before, tables for strengths, how many, and whether it was asked for
 * @returns the words' place and the candidates, best first; null where nothing is to be completed: in a name, a note, within a word
 * @source none - definition
 */
export function completions(text: string, offset: number, language: CompletionLanguage, options: CompletionOptions = {}): Completions | null {
  const start = text.lastIndexOf('\n', offset - 1) + 1, stop = text.indexOf('\n', offset), head = text.slice(start, offset), tail = text.slice(offset, stop < 0 ? text.length : stop).replace(/\r$/, '');
  if (head.length > 500 || (tail !== '' && WORD.test(tail.charAt(0))) || isNote(head.trimStart()) || /\s#/.test(head)) return null;
  const first = text.slice(0, start).trim() === '';
  if (first && !/^\s*\d/.test(head)) return null;
  const least = options.asked === true ? 0 : 1;
  for (const at of beginnings(head)) {
    const phrase = head.slice(at);
    if (phrase.length < least) continue;
    const place = placeAt(head, at);
    if (place.kinds.length === 0) continue;
    const list = find(phrase, place, head.slice(0, at).trimEnd(), language, text, text.slice(0, start), options);
    const whole = list.some((one) => isWhole(one, phrase));
    // a unit that stands needs no other, nor does what a blank has ended
    if (whole && (place.kinds[0] === 'unit' || /\s$/.test(phrase))) continue;
    const offered = list.filter((one) => !isWhole(one, phrase)).slice(0, options.limit ?? 8);
    if (offered.length > 0) return { from: start + at, list: offered.map((one) => put(one, offset, tail)) };
  }
  return null;
}

/** Where the words may begin that are being typed: the furthest back first, five words at most and never over a comma, bracket or colon. */
function beginnings(head: string): number[] {
  const out: number[] = [];
  let at = head.length;
  while (at > 0 && out.length < 5) {
    let from = at;
    while (from > 0 && WORD.test(head.charAt(from - 1)) && !(/\d/.test(head.charAt(from - 1)) && from < head.length && /\p{L}/u.test(head.charAt(from)))) from -= 1;
    if (from === at && out.length > 0) break;
    out.unshift(from);
    const before = /[\s-]+$/.exec(head.slice(0, from))?.[0].length ?? 0;
    if (before === 0 || from === 0) break;
    at = from - before;
  }
  return out;
}

/** What may stand at a place of a line, by what stands before it. */
function placeAt(head: string, at: number): Place {
  const is = (...kinds: readonly Wanted[]): Place => ({ kinds, measured: null });
  const before = head.slice(0, at).trimEnd(), key = keyOf(head);
  if (key !== null) return !before.endsWith(':') ? is() : key.key === 'glass' ? is('glass') : key.key === 'measures' ? is('system') : key.key === 'language' ? is('tongue') : is();
  if (before.endsWith('(') && !/^\s*\d/.test(before)) return is('method');
  const bare = before.replace(/^\s*(?:[-–•*]|\d{1,2}[.)])\s/, '').trim();
  if (bare === '') return is('start');
  if (NUMBER.test(bare)) return is('unit');
  const words = bare.split(/\s+/), last = words.at(-1) ?? '', forms = unitForms(foldUnit(last.replace(/^[\d.,½⅓⅔¼¾⅛]+/, '')));
  const counted = forms !== undefined && (/^[\d½⅓⅔¼¾⅛]/.test(last) || NUMBER.test(words.slice(0, -1).join(' ')) || /^(?:an?|eine?)$/i.test(words.at(-2) ?? ''));
  if (counted) {
    const measured = forms.some((one) => one.of === 'ml') ? 'volume' : 'solid', over = OVER.test(words.slice(0, /^[\d½⅓⅔¼¾⅛]/.test(last) ? -1 : -2).join(' '));
    return { kinds: forms.some((one) => one.of === 's') ? ['step', 'thing'] : over ? ['ice', 'thing'] : ['thing'], measured };
  }
  if (THROUGH.test(bare)) return is('sieve');
  if (INTO.test(bare)) return /^\d/.test(words[0] ?? '') ? is('thing', 'glass') : is('glass', 'thing');
  if (OVER.test(bare)) return is('ice', 'thing');
  if (PUT.test(bare) || verbs.get(fold(bare))?.some((row) => PUTS.has(row.verb)) === true) return { kinds: ['thing'], measured: SOLIDS.test(bare) ? 'solid' : FILLS.test(bare) ? 'volume' : null };
  return /[,;.]$/.test(before) ? is('step', 'thing') : is('step-on');
}

function find(phrase: string, { kinds: wanted, measured }: Place, said: string, language: CompletionLanguage, text: string, before: string, options: CompletionOptions): Candidate[] {
  const folded = fold(phrase), other: CompletionLanguage = language === 'en' ? 'de' : 'en';
  const own = wanted.includes('thing') || wanted.includes('start') || wanted.includes('unit') ? ownOf(options.document ?? parse(text), language) : [];
  const out: Candidate[] = [];
  for (const [at, tongue] of [language, other].entries()) {
    const seen = new Set<string>(), took = (list: readonly Candidate[]): void => { for (const one of list) { const key = one.kind === 'step' || one.kind === 'section' || one.kind === 'key' ? one.name : one.name.toLowerCase(); if (!seen.has(key)) { seen.add(key); out.push(one); } } };
    // names of a larder of a thousand begin with any letter: two are wanted, or a list that was asked for has preps alone
    const things = (): readonly Candidate[] => (folded.length < 2 ? [] : best(folded, ingredients(tongue, options.tables), measured));
    if (at === 0) took(best(folded, own));
    for (const kind of wanted) {
      if (kind === 'start') { if (folded.length > 0 || options.asked === true) { took(best(folded, [...(inHead(before) ? keys(tongue) : []), ...steps(tongue), ...sections(tongue)])); took(things()); } }
      else if (kind === 'unit') { took(best(folded, units(tongue))); took(things()); }
      else if (kind === 'thing') took(things());
      else if (kind === 'step-on') { if (folded.length > 1 && (tongue === 'de' || / (?:and|then)$/.test(said))) took(best(folded, steps(tongue).filter((one) => one.forms[0]?.some((form) => form.startsWith(folded)) === true))); }
      else if (kind === 'step') { if (folded.length > 1) took(best(folded, steps(tongue))); }
      else if (kind === 'system' || kind === 'tongue') took(best(folded, (kind === 'system' ? SYSTEMS : TONGUES).map((name) => ({ id: name, candidate: { kind: 'key', name, after: '', of: kind }, forms: formsOf(name), rank: 0 }))));
      else took(best(folded, group(kind, tongue)));
    }
    if (out.length > 0) break;
  }
  return out;
}

/** True where nothing but a name, keys, facts and notes stands before: there keys stand. */
function inHead(before: string): boolean {
  return before.split('\n').map((line) => line.trim()).filter((line) => line !== '').slice(1).every((line) => isNote(line) || keyOf(line) !== null || givenOf(line) !== null);
}

/** Preps and bottles of the spec, as they are written in a line. */
function ownOf(document: Document, language: CompletionLanguage): Indexed[] {
  const out: Indexed[] = [];
  const add = (kind: 'prep' | 'bottle', name: string, of: string, strength?: number): void => {
    const written = language === 'en' && /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
    if (name !== '' && !out.some((one) => one.id === written.toLowerCase())) out.push({ id: written.toLowerCase(), candidate: { kind, name: written, after: '', of, ...(strength === undefined ? {} : { strength }) }, forms: formsOf(written), rank: out.length });
  };
  for (const section of document.sections) if (section.kind === 'prep') add('prep', section.name, section.method);
  for (const section of document.sections) for (const entry of section.shelf ?? []) add('bottle', entry.name, '', entry.strength);
  return out;
}

/** What begins so, then what has a word that begins so; each thing once, by the name that fits best. Names of the larder go by length, all else as its table has it. */
function best(folded: string, list: readonly Indexed[], measured: Place['measured'] = null): Candidate[] {
  const found = new Map<string, { readonly one: Indexed; readonly score: number }>();
  for (const [at, one] of list.entries()) {
    const score = scoreOf(one, folded, at, measured);
    if (score === null) continue;
    const id = `${one.candidate.kind}/${one.id}`, known = found.get(id);
    if (known === undefined || score < known.score) found.set(id, { one, score });
  }
  return [...found.values()].sort((a, b) => a.score - b.score || (a.one.candidate.name < b.one.candidate.name ? -1 : 1)).map(({ one }) => one.candidate);
}
const POURED = new Set(['spirit', 'liqueur', 'fortified', 'wine', 'bitters', 'juice', 'juice-citrus', 'syrup', 'soft-drink', 'water']);
function scoreOf(one: Indexed, folded: string, at: number, measured: Place['measured']): number | null {
  const { forms, candidate } = one;
  for (let word = 0; word < forms.length; word++) for (const form of forms[word] ?? []) {
    if (!form.startsWith(folded)) continue;
    const later = word === 0 ? 0 : 1e6;
    if (candidate.kind !== 'ingredient') return later + (one.rank > 0 && candidate.kind !== 'prep' && candidate.kind !== 'bottle' ? 1e4 : 0) + (candidate.kind === 'unit' && candidate.of !== 'ml' ? 1e3 : 0) + at;
    // old names, slips and names with two meanings stand behind all others
    const odd = one.rank === 5 ? 2e6 : one.rank >= 3 ? 4e5 : 0, unlikely = measured === null || POURED.has(candidate.of) === (measured === 'volume') ? 0 : 1e5, spirit = measured === 'volume' && candidate.of === 'spirit' ? -30 : 0;
    return later + odd + unlikely + spirit + form.length * 4 + Math.min(3, one.rank) * 12;
  }
  return null;
}

const isWhole = (one: Candidate, phrase: string): boolean => { const folded = fold(phrase); return formsOf(one.name)[0]?.includes(folded) === true && (one.after === '' || one.after === ' ' || phrase.endsWith(one.after.trim())); };

/** Words of the candidate that stand behind the caret already are written over, never twice. */
function put(one: Candidate, offset: number, tail: string): Completion {
  let to = offset;
  const words = one.name.split(' ');
  for (let n = 1; n < words.length; n++) {
    const end = ` ${words.slice(n).join(' ')}`;
    if (tail.toLowerCase().startsWith(end.toLowerCase()) && !WORD.test(tail.charAt(end.length))) { to = offset + end.length; break; }
  }
  const rest = tail.slice(to - offset), after = one.after === ' ' && /^\s/.test(rest) ? '' : one.after === '):' && rest.startsWith(')') ? '' : one.after === ': ' && rest.startsWith(':') ? '' : one.after;
  return { ...one, to, insert: one.name + after };
}
