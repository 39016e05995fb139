import type { Amount } from '@washline/engine';
import { approxAt, rangeAt, unitAt } from '../phrase/amount.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { thingAt, type ThingAt } from '../phrase/thing.ts';
import { amountFirst } from './amount-first.ts';
import { build, isPoured, linkWords, relink, type Measured } from './build.ts';
import { fractionList } from './fractions.ts';
import { BETWEEN, factEnd } from './head.ts';
import { isNamed, measuredBy, trailingUnit } from './measured.ts';
import { partOf } from './part-of.ts';
import { germanPortion } from './german.ts';
import { eachFirst, equalParts } from './several.ts';
import { emptyTail, readTail, type Tail } from './tail.ts';

/** A measure whose amount or name stands at i; undefined where none reads so. */
export function readMeasure(p: Phrase, i: number, end: number): Measured | undefined {
  return portion(p, i, end) ?? equalParts(p, i, end) ?? eachFirst(p, i, end) ?? fractionList(p, i, end) ?? partOf(p, i, end, undefined) ?? amountFirst(p, i, end) ?? bareUnit(p, i, end) ?? nameFirst(p, i, end);
}

/** The same, and nothing marked as used or reported where it does not read so; only a missing unit stays said. */
export function tryMeasure(p: Phrase, i: number, end: number): Measured | undefined {
  const used = p.used.slice(), count = p.problems.length;
  const read = readMeasure(p, i, end);
  if (read === undefined) {
    const missing = p.problems.slice(count).find((one) => one.code === 'unit-missing');
    p.used.set(used);
    p.problems.length = count;
    if (missing !== undefined && !p.problems.some((one) => one.code === 'unit-missing')) p.problems.push(missing);
  } else {
    const first = read.measures[0];
    if (first !== undefined && first.thing.words === '' && first.amount === null) { p.used.set(used); p.problems.length = count; return undefined; }
  }
  return read;
}

/** "all of the cloud", "the rest of the syrup", "⅔ of the tea", "half of the syrup". */
function portion(p: Phrase, i: number, end: number): Measured | undefined {
  let k = i, share: 'all' | 'rest' | number | undefined;
  const german = germanPortion(p, i);
  if (german !== undefined) { share = german.share; k = german.end; }
  else if (p.word(k) === 'all' && (p.word(k + 1) === 'of' || p.word(k + 1) === 'the')) { share = 'all'; k += p.word(k + 1) === 'of' ? 2 : 1; }
  else {
    const j = p.word(k) === 'the' ? k + 1 : k;
    if (/^(rest|remainder|remaining|balance)$/.test(p.word(j)) && (p.word(j + 1) === 'of' || p.word(j) === 'remaining')) { share = 'rest'; k = p.word(j + 1) === 'of' ? j + 2 : j + 1; }
    else {
      const number = rangeAt(p, k, end);
      if (number !== undefined && number.fraction && number.low !== null && (p.word(number.end) === 'of' && p.word(number.end + 1) === 'the' || /^(vom|des)$/.test(p.word(number.end)) || p.word(number.end) === 'von' && /^(dem|der)$/.test(p.word(number.end + 1)))) { share = number.low; p.use(k, number.end); k = /^(vom|des)$/.test(p.word(number.end)) ? number.end + 1 : number.end + (p.word(number.end) === 'von' ? 2 : 1); }
    }
  }
  if (share === undefined) return undefined;
  const what = thingAt(p, k, end, 'volume');
  if (what === undefined) return undefined;
  const tail = readTail(p, what.end, end, what.thing, true, k);
  const value = typeof share === 'number' ? share : null;
  return build(p, i, end, { amount: null, unit: value === null ? null : 'part', low: value, high: value }, what, { ...tail }, { portion: share });
}

const NO_MEASURE = new Set(['']);
/** "salt to taste", "sale q.b.": a thing and no amount, wholly. */
export function toTaste(p: Phrase, i: number, end: number): Measured | undefined {
  for (let k = i + 1; k < end; k++) {
    const unit = unitAt(p, k, end, NO_MEASURE);
    if (unit?.form.unit !== 'to-taste' || unit.end < end && !(unit.end === end - 1 && p.t[end - 1]?.kind === 'mark')) continue;
    const what = thingAt(p, i, k, null);
    if (what === undefined || what.end < k) return undefined;
    return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, emptyTail(), {});
  }
  return undefined;
}

/** "dash of orange bitters", "heaped teaspoon of caster sugar": one. */
function bareUnit(p: Phrase, i: number, end: number): Measured | undefined {
  const factors = approxAt(p, i, end);
  const at = factors?.end ?? i;
  const between = BETWEEN.has(p.word(at)) && unitAt(p, at + 1, end) !== undefined ? at + 1 : at;
  const unit = unitAt(p, between, end);
  if (unit === undefined || unit.form.unit === 'top' || unit.form.unit === 'to-taste') return undefined;
  if (unit.form.of === 'g' && !LOOSE.has(unit.form.unit)) return undefined;
  // "ounce and a half of bourbon"
  const more = p.word(unit.end) !== 'and' ? undefined : /^(half|quarter)$/.test(p.word(unit.end + 2)) && p.word(unit.end + 1) === 'a' ? { value: p.word(unit.end + 2) === 'half' ? 1.5 : 1.25, end: unit.end + 3 } : undefined;
  if (more !== undefined) {
    const from = p.word(more.end) === 'of' ? more.end + 1 : more.end;
    const what = thingAt(p, from, end, measuredBy(unit.form.unit));
    if (what === undefined) return undefined;
    const tail = readTail(p, what.end, end, what.thing, true, what.first), number = { from: p.span(unit.end, unit.end + 1).from, to: p.span(more.end - 1, more.end).to };
    return build(p, i, end, { amount: { low: more.value, high: more.value, unit: unit.form.unit, ...(factors !== undefined ? { factorLow: factors.low, factorHigh: factors.high } : {}), number, unitSpan: p.span(between, unit.end) }, unit: unit.form.unit, low: more.value, high: more.value }, what, tail, {});
  }
  const of = /^(of|de|von)$/.test(p.word(unit.end)) || /^d['’]/.test(p.t[unit.end]?.text ?? '');
  if (!of && !(factors !== undefined) && !LOOSE.has(unit.form.unit)) return undefined;
  if (['ml', 'cl', 'dl', 'l', 'mg', 'g', 'kg', 'oz', 'floz-uk', 'lb'].includes(unit.form.unit) && !(of && factors !== undefined && factors.key !== 'about')) return undefined;
  const from = /^(of|de|von)$/.test(p.word(unit.end)) ? unit.end + 1 : unit.end;
  const what = thingAt(p, from, end, measuredBy(unit.form.unit));
  if (what === undefined) return undefined;
  const tail = readTail(p, what.end, end, what.thing, true, what.first);
  const amount: Amount = { low: 1, high: 1, unit: unit.form.unit, ...(factors !== undefined ? { factorLow: factors.low, factorHigh: factors.high } : {}), number: { from: p.span(between, between + 1).from, to: p.span(between, between + 1).from }, unitSpan: p.span(between, unit.end) };
  return build(p, i, end, { amount, unit: unit.form.unit, low: 1, high: 1 }, what, tail, {});
}

const LOOSE = new Set(['dash', 'splash', 'pinch', 'handful', 'drop', 'spray', 'barspoon', 'squeeze', 'sprig', 'slice', 'wedge', 'cup', 'tsp', 'tbsp', 'shot', 'bunch', 'knob', 'messerspitze']);

/** "gin 45 ml", "Rum – 50 ml", "agar, 2 g per kg of juice", "Salt": the name first, or alone. */
function nameFirst(p: Phrase, i: number, end: number): Measured | undefined {
  const what0 = thingAt(p, i, end, null);
  if (what0 === undefined) return undefined;
  // "scant ¾ oz": a word for how full, and nothing that it is of
  if (what0.thing.link.kind === 'unknown' && approxAt(p, i, end)?.end === what0.end && p.isNumber(what0.end)) return undefined;
  const to = factEnd(p, what0.end, end);
  let what = to > what0.end ? relink(p, what0, what0.first, to, null) : what0;
  let rest = p.isDash(what.end) || p.isMark(what.end, ':') || p.isMark(what.end, '–') ? what.end + 1 : what.end;
  while (p.isMark(rest, '.') || p.isMark(rest, '…')) rest++;
  const before = p.used.slice();
  const problemsBefore = p.problems.length;
  const tail = readTail(p, rest, end, what.thing, false, what.first);
  const known = what.thing.link.kind !== 'unknown';
  if (tail.amount === undefined && tail.share === undefined && !tail.toTaste && !tail.topUp && !tail.garnish && !(known && onlyName(p, what, rest, end, tail))) { p.used.set(before); p.problems.length = problemsBefore; return undefined; }
  // "followed by 30 ml pineapple juice": the thing is the known one behind the amount
  if (!known && tail.amountEnd !== undefined && isNamed(p, tail.amountEnd, end)) { p.used.set(before); p.problems.length = problemsBefore; return undefined; }
  if (tail.amount !== undefined && tail.amount.unit === null && isPoured(what)) { p.used.set(before); p.problems.length = problemsBefore; p.report('unit-missing', tail.amountEnd === undefined ? what.first : tail.amountEnd - 1, tail.amountEnd ?? end, { number: number0(p, tail.amount), thing: what.thing.words }); return undefined; }
  if (tail.amount !== undefined) {
    const measured = measuredBy(tail.amount.unit);
    const link = what.thing.link;
    if (link.kind === 'larder' && link.assumed) what = { ...what, thing: { ...what.thing, link: linkWords(p, p.slice(what.first, Math.max(to, what.end)).replace(/[()]/g, ' '), measured) } };
    if (tail.amount.unit === null) {
      const words = what.label.split(/[\s-]+/), last = words[words.length - 1] ?? '';
      const behind = words.length > 1 && what.thing.link.kind !== 'prep' && what.thing.link.kind !== 'shelf' ? trailingUnit(last.replace(/[^\p{L}]/gu, '')) : undefined;
      tail.amount = { ...tail.amount, unit: behind ?? 'piece' };
      if (behind !== undefined) what = { ...what, label: words.slice(0, -1).join(' ') };
    }
  }
  return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, {});
}

const number0 = (p: Phrase, amount: Amount): string => p.text.slice(amount.number.from - p.place.base, amount.number.to - p.place.base);

/** Nothing but the name and facts about it stands in the line. */
function onlyName(p: Phrase, what: ThingAt, from: number, end: number, tail: Tail): boolean {
  for (let k = from; k < end; k++) {
    const token = p.t[k];
    if (token === undefined || token.kind === 'mark' || p.used[k] === 1) continue;
    if (token.kind === 'word' && (p.isTreatment(k) || what.the || tail.treatments.length > 0 || tail.optional || tail.alternatives.length > 0)) continue;
    return false;
  }
  return true;
}
