import type { Amount } from '@washline/engine';
import { mayBeUnit, unitForms, type UnitForm } from '../vocabulary/units.ts';
import { words } from '../vocabulary/vocabulary.ts';
import type { Phrase } from './phrase.ts';

export interface UnitAt { readonly form: UnitForm; readonly end: number; readonly assumed: boolean }

const OTHERS = ['de', 'fr', 'es', 'it', 'pt', 'sv'];
const OF_MATTER = new Set(['ml', 'g', 'piece', 'ratio', 'mm', '']);

/** The unit that begins at i, longest form first. `of` says which sorts are looked for; English first, then the line's other language. */
export function unitAt(p: Phrase, i: number, end: number, sorts: ReadonlySet<string> = OF_MATTER): UnitAt | undefined {
  const token = p.t[i];
  if (token === undefined || i >= end || (token.kind !== 'word' && !/^[%°/"']$/.test(token.text))) return undefined;
  if (token.kind === 'word' && !mayBeUnit(token.fold)) return undefined;
  return p.once(sorts, i, end, () => readUnit(p, i, end, sorts));
}
function readUnit(p: Phrase, i: number, end: number, sorts: ReadonlySet<string>): UnitAt | undefined {
  let key = '', best: UnitAt | undefined;
  for (let k = i, seen = 0; k < end && seen < 6; k++) {
    const token = p.t[k];
    if (token === undefined) break;
    if (token.kind === 'number' && !(seen > 0 && key.endsWith('/') && token.text === '100')) break;
    if (token.kind === 'mark') {
      if (token.text === '.' && !token.gap && seen > 0) { if (best !== undefined && best.end === k && isShort(p, i, k)) best = { ...best, end: k + 1 }; continue; }
      if (p.isHyphen(k) && seen > 0) continue;
      if (!/[%°/"'()²³]/.test(token.text)) break;
    }
    key += token.kind === 'word' ? (token.text === 'T' && seen === 0 ? 'T' : token.fold) : token.text;
    seen++;
    const all = unitForms(key);
    if (all !== undefined) {
      const form = choose(p, k, end, all, sorts);
      if (form !== undefined) best = { form, end: k + 1, assumed: form.mark === 'a' };
    } else if (key === 'T') { key = 't'; }
  }
  return best;
}

/** A point after a short unit belongs to it ("oz.", "tbsp.", "Bsp."), unless the line ends there and the word is whole. */
function isShort(p: Phrase, i: number, point: number): boolean {
  const length = (p.t[point]?.from ?? 0) - (p.t[i]?.from ?? 0);
  return length <= 5;
}

function choose(p: Phrase, at: number, end: number, all: readonly UnitForm[], sorts: ReadonlySet<string>): UnitForm | undefined {
  const fitting = all.filter((form) => sorts.has(form.of));
  if (fitting.length === 0) return undefined;
  const next = p.word(at + 1);
  const romance = at + 1 < end && (next === 'de' || next === 'd' || next === 'di' || /^d[aeiouh]/.test(next) && /['’]/.test(p.t[at + 1]?.text ?? ''));
  const system = p.place.system;
  const pick = (list: readonly UnitForm[]): UnitForm | undefined =>
    (system === null ? undefined : list.find((form) => form.system === system && form.mark !== '')) ?? list.find((form) => form.mark === 'a') ?? list.find((form) => form.mark === '') ?? list[0];
  if (romance) {
    const latin = fitting.filter((form) => form.language !== 'en' && form.language !== 'de' && form.language !== 'sv');
    const pt = latin.find((form) => form.unit === 'dose' && form.language === 'pt');
    if (latin.length > 0 && !fitting.some((form) => form.language === 'en')) return pt ?? pick(latin);
  }
  if (p.place.language === 'de') { const german = fitting.filter((form) => form.language === 'de'); if (german.length > 0) return pick(german); }
  const english = fitting.filter((form) => form.language === 'en');
  if (english.length > 0) return pick(english);
  for (const language of OTHERS) {
    const list = fitting.filter((form) => form.language === language);
    if (list.length > 0) return pick(list);
  }
  return undefined;
}

const approx = words('approx');
const numerals = words('numeral');
const fractions = words('fraction');

export interface Approx { readonly low: number; readonly high: number; readonly key: string; readonly end: number }
/** "about", "scant", "heaped", "~", "at least" … from i; `cup` is left to the unit in "scant cup". */
export function approxAt(p: Phrase, i: number, end: number): Approx | undefined {
  const token = p.t[i];
  if (token === undefined || i >= end) return undefined;
  if (token.kind === 'mark' && (token.text === '~' || token.text === '≈')) return { low: 0.9, high: 1.1, key: 'about', end: i + 1 };
  const found = p.longest(i, end, 4, approx);
  if (found === undefined) return undefined;
  let row = found.value, to = found.end;
  if (row.key === 'scant-cup') { const short = approx.get('scant'); if (short !== undefined && p.word(i) === 'scant') { row = short; to = i + 1; } }
  if (p.isMark(to, '.') && !(p.t[to]?.gap ?? true)) to++;
  return { low: row.low ?? 1, high: row.high ?? 1, key: row.key, end: to };
}

export interface NumberAt { readonly low: number | null; readonly high: number | null; readonly end: number; readonly digits: boolean; readonly fraction: boolean; readonly first: number; readonly last: number; readonly article?: boolean }

/** One number, in digits or words, from i: "1½", "one and a half", "half a", "a dozen", "a few". */
export function numberAt(p: Phrase, i: number, end: number): NumberAt | undefined {
  const token = p.t[i];
  if (token === undefined || i >= end) return undefined;
  if (token.kind === 'number') {
    let value = token.value, to = i + 1, fraction = token.fraction && value < 1;
    // "2 and a half", "2 & 1/2", "1/2 dozen"
    if ((p.word(to) === 'and' || p.isMark(to, '&')) && p.t[to + 1]?.kind === 'number' && p.t[to + 1]?.fraction === true && (p.t[to + 1]?.value ?? 1) < 1) { value += p.t[to + 1]?.value ?? 0; to += 2; }
    else if (p.word(to) === 'and' && p.word(to + 1) === 'a' && p.word(to + 2) === 'half') { value += 0.5; to += 3; }
    if (p.word(to) === 'dozen' || p.word(to) === 'dz' || p.word(to) === 'doz') { value *= 12; to++; fraction = false; if (p.isMark(to, '.') && !(p.t[to]?.gap ?? true)) to++; if (p.word(to) === 'of') to++; }
    return { low: value, high: value, end: to, digits: true, fraction, first: i, last: to };
  }
  if (token.kind !== 'word') return undefined;
  const asFraction = p.longest(i, end, 5, fractions), asNumeral = p.longest(i, end, 5, numerals);
  if (asFraction !== undefined && asFraction.end > (asNumeral?.end ?? 0) && asFraction.value.value !== null && p.word(i) !== 'a' || asFraction !== undefined && asFraction.end - i >= 2 && asFraction.end > (asNumeral?.end ?? 0)) {
    let to = asFraction.end;
    if (asFraction.value.key === 'and-half') return undefined;
    if (p.word(to) === 'a' || p.word(to) === 'an' || p.word(to) === 'of' && p.word(to + 1) === 'a' || p.word(to) === 'of' && p.word(to + 1) === 'an') to += p.word(to) === 'of' ? 2 : 1;
    let value = asFraction.value.value ?? 0;
    if (p.word(to) === 'dozen') { value *= 12; to++; }
    const exact = exactFraction(asFraction.value.key) ?? value;
    return { low: value === asFraction.value.value ? exact : value, high: value === asFraction.value.value ? exact : value, end: to, digits: false, fraction: exact < 1, first: i, last: to };
  }
  if (asNumeral === undefined) return undefined;
  const { value: row, end: to } = asNumeral;
  if (row.key === 'once' || row.key === 'twice' || row.key === 'thrice' || row.key === 'n-times' || row.written === 'the' || row.key === 'both') return undefined;
  if (row.value === null) return { low: null, high: null, end: to, digits: false, fraction: false, first: i, last: to };
  let value = row.value, after = to;
  if (row.value === 1 && /^halbe[nrsm]?$/.test(p.word(after))) return { low: 0.5, high: 0.5, end: after + 1, digits: false, fraction: true, first: i, last: after + 1 };
  if (p.word(after) === 'and' && p.word(after + 1) === 'a' && p.word(after + 2) === 'half') { value += 0.5; after += 3; }
  else if (andFraction(p, after, end) !== undefined) { const more = andFraction(p, after, end); value += more?.value ?? 0; after = more?.end ?? after; }
  else if (row.key !== 'couple' && p.word(after) === 'dozen' && row.value < 12) { value *= 12; after++; }
  const low = row.key === 'couple' && row.low !== null ? row.low : value;
  return { low, high: row.key === 'couple' ? value : value, end: after, digits: false, fraction: false, first: i, last: after, article: /^(a|an|ein.*)$/.test(row.written) };
}
/** "and one-half", "and three quarters" behind a whole number. */
function andFraction(p: Phrase, i: number, end: number): { readonly value: number; readonly end: number } | undefined {
  if (p.word(i) !== 'and') return undefined;
  const found = p.longest(p.word(i + 1) === 'a' ? i + 2 : i + 1, end, 3, fractions);
  const value = found === undefined ? undefined : exactFraction(found.value.key) ?? undefined;
  return found === undefined || value === undefined || value >= 1 ? undefined : { value, end: found.end };
}
function exactFraction(key: string): number | undefined {
  const match = /^(\d)\/(\d)$/.exec(key);
  return match === null ? undefined : Number(match[1]) / Number(match[2]);
}

/** A number or a range of two: "2", "10–15", "2 to 3", "1 1/2 to 2", "2 or 3", "between 15 and 20". */
export function rangeAt(p: Phrase, i: number, end: number): NumberAt | undefined {
  const kind = p.t[i]?.kind;
  if (i >= end || (kind !== 'number' && kind !== 'word')) return undefined;
  return p.once(rangeAt, i, end, () => readRange(p, i, end));
}
function readRange(p: Phrase, i: number, end: number): NumberAt | undefined {
  if (p.word(i) === 'between' || p.word(i) === 'zwischen') {
    const low = numberAt(p, i + 1, end);
    if (low !== undefined && (p.word(low.end) === 'and' || p.word(low.end) === 'und')) {
      const high = numberAt(p, low.end + 1, end);
      if (high !== undefined) return join(low, high, i + 1);
    }
    return undefined;
  }
  const low = numberAt(p, i, end);
  if (low === undefined || low.article === true) return low;
  const k = low.end, token = p.t[k];
  if (token === undefined || k >= end) return low;
  const joins = (token.kind === 'mark' && /^[-–—]$/.test(token.text)) || token.fold === 'to' || token.fold === 'or' || token.fold === 'bis' || token.fold === 'oder';
  if (!joins) return low;
  const high = numberAt(p, k + 1, end);
  if (high === undefined || high.article === true || high.low === null || low.low === null || low.digits !== high.digits) return low;
  if ((token.fold === 'or' || token.fold === 'oder') && !(high.low > low.low && high.low <= 3 * low.low + 1)) return low;
  if (high.low < low.low) return low;
  return join(low, high, i);
}
/** A range from its two ends as written, the lesser first: "between 30 and 20 ml" is from 20 to 30. */
const join = (one: NumberAt, other: NumberAt, first: number): NumberAt => {
  const backwards = one.low !== null && other.high !== null && one.low > other.high, low = backwards ? other : one, high = backwards ? one : other;
  return { low: low.low, high: high.high, end: other.end, digits: low.digits, fraction: low.fraction && high.fraction, first, last: other.end };
};

function isVague(p: Phrase, number: NumberAt): boolean {
  for (let k = number.first; k < number.last; k++) if (p.t[k]?.vague === true) return true;
  return false;
}
/** A number that says how many: "a touch of" is one that does not. */
export type Counted = NumberAt & { readonly low: number; readonly high: number };
export const isCounted = (number: NumberAt | undefined): number is Counted => number !== undefined && number.low !== null && number.high !== null;

/** Makes the amount of a number and a unit already found. */
export function makeAmount(p: Phrase, number: Counted, unit: UnitAt | undefined, unitFrom: number, factors: Approx | undefined): Amount {
  return {
    low: number.low, high: number.high, unit: unit?.form.unit ?? null,
    ...(unit !== undefined && unit.form.mark !== '' ? { system: p.place.system ?? unit.form.system, systemAssumed: p.place.system === null } : {}),
    // a word of another kitchen says which spoon it is
    ...(unit !== undefined && unit.form.mark === '' && unit.form.language !== 'en' && unit.form.of === 'ml' ? { system: unit.form.system } : {}),
    ...(factors !== undefined && (factors.low !== 1 || factors.high !== 1) ? { factorLow: factors.low, factorHigh: factors.high } : {}),
    number: p.span(number.first, number.last),
    ...(isVague(p, number) ? { otherCustom: true } : {}),
    ...(unit !== undefined ? { unitSpan: p.span(unitFrom, unit.end) } : {}),
  };
}
