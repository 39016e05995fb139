import type { Amount } from '@washline/engine';
import { approxAt, isCounted, makeAmount, rangeAt, unitAt, type Approx, type Counted, type NumberAt, type UnitAt } from '../phrase/amount.ts';
import { percentAt, ratioAt, temperatureAt } from '../phrase/facts.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { larderId, nameEnd, ownFrom, thingAt } from '../phrase/thing.ts';
import { isAlcoholic, words } from '../vocabulary/vocabulary.ts';
import { HOLDERS } from './holders.ts';
import type { Tail } from './tail.ts';

const glasses = words('glass');
const MANNERED = new Set(['dash', 'splash', 'pinch', 'drop', 'barspoon', 'tsp', 'tbsp', 'handful', 'squeeze', 'spray', 'shot']);
const about: Approx = { low: 0.9, high: 1.1, key: 'about', end: 0 };
/** Words between a number and its unit or noun that say only size or state ("1 large ice cube", "3 thin slices"). */
export const BETWEEN = new Set(['large', 'small', 'medium', 'big', 'thin', 'thick', 'fresh', 'good', 'generous', 'healthy', 'whole', 'long', 'short', 'wide', 'nice', 'ripe', 'tiny', 'cold', 'level', 'single', 'extra', 'medium-sized', 'grosse', 'grosses', 'grosser', 'kleine', 'kleiner', 'frische', 'frischer', 'dunne', 'dicke']);

export interface Start { readonly number: NumberAt | undefined; readonly factors: Approx | undefined; readonly unit: UnitAt | undefined; readonly unitFrom: number; readonly end: number }

/** Number, approximation and unit at the head, in whichever order they stand. */
export function amountAt(p: Phrase, i: number, end: number): Start | undefined {
  let factors = approxAt(p, i, end);
  let k = factors?.end ?? i;
  const number = rangeAt(p, k, end);
  if (number === undefined) return undefined;
  k = number.end;
  if (p.isMark(k, '×') || (p.word(k) === 'x' && p.t[k]?.kind === 'word')) {
    const after = rangeAt(p, k + 1, end);
    const unit = after === undefined ? undefined : unitAt(p, after.end, end);
    if (after !== undefined && unit !== undefined && unit.form.of !== 'mm' && !HOLDERS.has(unitAt(p, unit.end, end)?.form.unit ?? '') && after.low !== null && after.high !== null && number.low !== null && number.high !== null) {
      const product: NumberAt = { low: number.low * after.low, high: number.high * after.high, end: after.end, digits: true, fraction: false, first: number.first, last: after.last };
      return { number: product, factors, unit, unitFrom: after.end, end: unit.end };
    }
    k++;
  }
  if (p.isHyphen(k)) k++;
  let second = approxAt(p, k, end);
  if (second !== undefined && second.key !== 'about' && second.key !== 'at-least' && second.key !== 'at-most' && !(second.key === 'scant' && p.word(k) === 'light') && (unitAt(p, second.end, end) !== undefined)) { factors = factors === undefined ? second : { ...second, low: second.low * factors.low, high: second.high * factors.high }; k = second.end; }
  else second = undefined;
  let unitFrom = k;
  let unit = unitAt(p, k, end);
  if (unit === undefined) {
    let j = k;
    while (j < end && j < k + 3 && (BETWEEN.has(p.word(j)) || p.isMark(j, ','))) j++;
    if (j > k) { unit = unitAt(p, j, end); unitFrom = j; }
  }
  // "2 hefty dashes of peach bitters": one word of manner before a loose unit and "of"
  if (unit === undefined && p.word(k) !== '' && nameEnd(p, k, end) <= k) {
    const loose = unitAt(p, k + 1, end);
    if (loose !== undefined && MANNERED.has(loose.form.unit) && p.word(loose.end) === 'of') { unit = loose; unitFrom = k + 1; }
  }
  if (unit === undefined) {
    // "1 claret glass of sherry": a glass named by what is drunk from it
    const named = p.longest(k, end, 3, glasses);
    const glass = named === undefined ? undefined : p.word(named.end) === 'glass' ? named.end : named.end > k + 1 && p.word(named.end - 1) === 'glass' ? named.end - 1 : undefined;
    if (glass !== undefined && p.word(glass + 1) === 'of') { unit = unitAt(p, glass, end); unitFrom = glass; }
  }
  if (unit !== undefined && !unitHolds(p, unit, unitFrom, end, number)) unit = undefined;
  // "a dash or two of anisette", "an ounce or so"
  const or = unit !== undefined && p.word(unit.end) === 'or' && number.article === true ? rangeAt(p, unit.end + 1, end) : undefined;
  if (unit !== undefined && or !== undefined && or.low !== null && number.low !== null && or.low > number.low && or.low <= 3) { p.use(or.first, or.end); return { number: { ...number, high: or.high }, factors, unit, unitFrom, end: or.end }; }
  if (unit !== undefined && p.word(unit.end) === 'or' && p.word(unit.end + 1) === 'so') return { number, factors: factors ?? about, unit, unitFrom, end: unit.end + 2 };
  return { number, factors, unit, unitFrom: unit === undefined ? k : unitFrom, end: unit?.end ?? k };
}

/** A unit word that is rather part of the name: "1 cube sugar" is a unit, "2 float glasses", "1 splash" … */
function unitHolds(p: Phrase, unit: UnitAt, at: number, end: number, number: NumberAt): boolean {
  const form = unit.form;
  // the spec's own names win over units
  if (ownFrom(p, at, end) !== undefined) return false;
  if (form.unit === 'top') return false;
  if (p.isMark(unit.end, ':') ) return false;
  if (form.of === 'mm' && form.written === 'in' && !/^(ginger|piece|stick|cinnamon|lemongrass|cucumber)$/.test(p.word(unit.end))) return false;
  if (p.word(at) === 'whole') return false;
  const known = nameEnd(p, at, end);
  // "1 lemon wheel", "4 cloves", "1 leaf gelatine": the longest known name that reaches further than the unit
  if (known > unit.end && form.unit === 'pod' && p.word(unit.end) !== 'of') return false;
  if (known === unit.end && known > at && nothingAfter(p, unit.end, end) && form.of === 'piece') return false;
  if ((form.unit === 'rinse' || form.unit === 'float' || p.word(at) === 'shake' || p.word(at) === 'shakes') && p.word(unit.end) !== 'of' && !number.digits) return p.word(unit.end) === 'of';
  return true;
}

const nothingAfter = (p: Phrase, k: number, end: number): boolean => k >= end || p.t[k]?.kind === 'mark' || /^(in|into|at|for|to|or)$/.test(p.word(k));

/** Facts that stand between amount and name ("1½ oz 110 proof rye", "2 drops 20 % saline", "30 ml 2:1 syrup"). */
export function factBefore(p: Phrase, i: number, end: number): { readonly end: number; readonly strength?: { value: number; span: { from: number; to: number } }; readonly concentration?: { value: number; span: { from: number; to: number } }; readonly ratio?: Tail['ratio']; readonly temperature?: NonNullable<Tail['temperature']> } {
  // "150 ml at 100 °C water": how warm it is, before what it is
  const heat = p.word(i) === 'at' || p.word(i) === 'bei' ? temperatureAt(p, i + 1, end, true) : undefined;
  if (heat !== undefined && heat.end < end && p.word(heat.end) !== '') { p.use(i, heat.end); return { end: heat.end, temperature: { celsius: Math.round(heat.celsius * 1e6) / 1e6, span: p.span(i, heat.end) } }; }
  if (!p.isNumber(i)) return { end: i };
  const percent = percentAt(p, i, end);
  if (percent !== undefined) {
    const span = p.span(i, percent.end);
    p.use(i, percent.end);
    if (percent.kind === 'abv') return { end: percent.end, strength: { value: percent.value, span } };
    const id = peekId(p, percent.end, end);
    if (percent.kind === 'bare' && (id === null || isAlcoholic(id)) && !/saline|acid|milk|cream|cocoa|chocolate|solution|syrup/.test(p.slice(percent.end, end).toLowerCase())) return { end: percent.end, strength: { value: percent.value, span } };
    return { end: percent.end, concentration: { value: percent.value, span } };
  }
  const ratio = ratioAt(p, i, end);
  if (ratio !== undefined && ratio.parts.length === 2) {
    p.use(i, ratio.end);
    return { end: ratio.end, ratio: { a: ratio.parts[0] ?? 1, b: ratio.parts[1] ?? 1, by: ratio.by, byWritten: ratio.byWritten, span: p.span(i, ratio.end) } };
  }
  return { end: i };
}

function peekId(p: Phrase, i: number, end: number): string | null {
  const what = thingAt(p, i, end, 'volume');
  return what === undefined ? null : larderId(what.thing);
}

/** Where the facts that belong to a name end: "simple syrup 1:1", "saline 20 %" are names with their number. */
export function factEnd(p: Phrase, i: number, end: number): number {
  const bracket = p.isMark(i, '(') || p.isMark(i, ',') ? i + 1 : i;
  if (!p.isNumber(bracket)) return i;
  const percent = percentAt(p, bracket, end);
  if (percent !== undefined) return percent.end;
  const ratio = ratioAt(p, bracket, end);
  return ratio === undefined ? i : ratio.end;
}

/** The amount of a number, or of a word for one, in a unit that was settled on. */
export function amountOf(p: Phrase, number: NumberAt, start: Start, unit: string | null): Amount | null {
  const counted = isCounted(number) ? number : few(p, number);
  return counted === undefined ? null : { ...makeAmount(p, counted, start.unit, start.unitFrom, start.factors), unit };
}
/** "a few drops": a range and no number. */
function few(p: Phrase, number: NumberAt): Counted | undefined {
  const word = p.slice(number.first, number.last).toLowerCase();
  if (word.includes('few')) return { ...number, low: 2, high: 5 };
  return word.includes('several') ? { ...number, low: 3, high: 6 } : undefined;
}
