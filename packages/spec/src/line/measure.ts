import type { Amount, Measure, Share, Thing, Treatment } from '@washline/engine';
import { approxAt, makeAmount, rangeAt, unitAt, type Approx, type NumberAt, type UnitAt } from '../phrase/amount.ts';
import { percentAt, ratioAt } from '../phrase/facts.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { larderId, nameEnd, thingAt, type ThingAt } from '../phrase/thing.ts';
import { treatmentCelsius, treatments } from '../phrase/treatment.ts';
import { isAlcoholic, isSolid } from '../vocabulary/vocabulary.ts';
import { EMPTY, shown, type Label } from './label.ts';
import { isNamed, measuredBy, trailingUnit } from './measured.ts';
import { BY_WEIGHT, emptyTail, foldJoin, readTail, shareOf, type Tail } from './tail.ts';

export interface Measured { readonly measures: readonly Measure[]; readonly label: Label; readonly garnish: boolean; readonly topUp: boolean }

/** Words between a number and its unit or noun that say only size or state ("1 large ice cube", "3 thin slices"). */
const BETWEEN = new Set(['large', 'small', 'medium', 'big', 'thin', 'thick', 'fresh', 'good', 'generous', 'healthy', 'whole', 'long', 'short', 'wide', 'nice', 'ripe', 'tiny', 'level', 'single', 'extra', 'medium-sized', 'grosse', 'grosses', 'grosser', 'kleine', 'kleiner', 'frische', 'frischer', 'dunne', 'dicke']);
const PARTS = new Set(['juice', 'zest', 'peel', 'rind', 'skin', 'white', 'whites', 'yolk', 'yolks', 'saft', 'schale', 'abrieb', 'pulp', 'seeds', 'jus', 'jugo', 'zumo', 'zeste', 'eiweiss']);

interface Start { readonly number: NumberAt | undefined; readonly factors: Approx | undefined; readonly unit: UnitAt | undefined; readonly unitFrom: number; readonly end: number }

/** Number, approximation and unit at the head, in whichever order they stand. */
function amountAt(p: Phrase, i: number, end: number): Start | undefined {
  let factors = approxAt(p, i, end);
  let k = factors?.end ?? i;
  if (factors !== undefined && p.word(k) === 'a' && unitAt(p, k + 1, end) !== undefined) { /* "just under a cup" */ }
  const number = rangeAt(p, k, end);
  if (number === undefined) return undefined;
  k = number.end;
  if (p.isMark(k, '×') || (p.word(k) === 'x' && p.t[k]?.kind === 'word')) {
    const after = rangeAt(p, k + 1, end);
    const unit = after === undefined ? undefined : unitAt(p, after.end, end);
    if (after !== undefined && unit !== undefined && after.low !== null && after.high !== null && number.low !== null && number.high !== null) {
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
  if (unit !== undefined && !unitHolds(p, unit, unitFrom, end, number)) unit = undefined;
  return { number, factors, unit, unitFrom: unit === undefined ? k : unitFrom, end: unit?.end ?? k };
}

/** A unit word that is rather part of the name: "1 cube sugar" is a unit, "2 float glasses", "1 splash" … */
function unitHolds(p: Phrase, unit: UnitAt, at: number, end: number, number: NumberAt): boolean {
  const form = unit.form;
  // the spec's own names win over units
  const own = thingAt(p, at, end, null);
  if (own !== undefined && (own.thing.link.kind === 'prep' || own.thing.link.kind === 'shelf') && own.first === at) return false;
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

interface Head { amount: Amount | null; unit: string | null; low: number | null; high: number | null }

/** Brings name, amount and tail together into measures and their label. */
function build(p: Phrase, i: number, end: number, head: Head, what: ThingAt | undefined, tail: Tail, extra: { share?: Share; portion?: 'all' | 'rest' | number; words?: string; strength?: { value: number; span: { from: number; to: number } } }): Measured {
  const thing: Thing = what?.thing ?? { words: '', span: p.span(i, i), link: { kind: 'unknown', nearest: [] } };
  let amount: Amount | null = head.amount ?? tail.amount ?? null;
  const id = larderId(thing);
  if (amount !== null && amount.unit === 'oz' && id !== null && isSolid(id)) amount = { ...amount, unit: 'oz-weight', systemAssumed: true };
  if (amount !== null) {
    if (tail.twin !== undefined) amount = { ...amount, twin: tail.twin };
    if (tail.plus.length > 0) amount = { ...amount, plus: tail.plus };
  }
  const treated: Treatment[] = [];
  let warm: { celsius: number; word: string; span: { from: number; to: number } } | undefined;
  for (const part of what?.treated ?? []) {
    const row = treatments.get(foldJoin(p, part.from, part.end));
    if (row === undefined) continue;
    const span = p.span(part.from, part.end);
    treated.push({ key: row.key, span });
    const celsius = treatmentCelsius(row);
    if (celsius !== undefined) warm = { celsius, word: row.key, span };
  }
  const strength = tail.strength ?? extra.strength;
  const share = extra.share ?? tail.share;
  const temperature = tail.temperature ?? warm;
  const measure: Measure = {
    kind: 'measure', path: p.path, span: p.span(i, end), amount: tail.toTaste && head.amount === null ? null : amount, thing,
    treatments: [...treated, ...tail.treatments.filter((treatment) => treatment.key !== 'time')], optional: tail.optional,
    ...(share !== undefined ? { share } : {}), ...(extra.portion !== undefined ? { portion: extra.portion } : {}),
    ...(strength !== undefined ? { strength } : {}), ...(tail.concentration !== undefined ? { concentration: tail.concentration } : {}),
    ...(tail.ratio !== undefined ? { ratio: tail.ratio } : {}), ...(temperature !== undefined ? { temperature } : {}),
    ...(tail.held !== undefined ? { held: tail.held } : {}), ...(tail.carrier !== undefined ? { carrier: tail.carrier } : {}),
    ...((what?.alternatives.length ?? 0) + tail.alternatives.length > 0 ? { alternatives: [...(what?.alternatives ?? []), ...tail.alternatives] } : {}),
  };
  const shownUnit = head.unit ?? tail.unitName ?? (tail.amount !== undefined && head.amount === null ? tail.amount.unit ?? 'piece' : null);
  const label: Label = {
    ...EMPTY, kind: 'measure', low: shown(head.low ?? (head.amount === null ? tail.amount?.low : null)), high: shown(head.high ?? (head.amount === null ? tail.amount?.high : null)),
    unit: shownUnit, ingredient: extra.words ?? (what === undefined || what.label === '' ? null : what.label), strength: shown(strength?.value), seconds: null,
    celsius: tail.celsius === undefined ? null : shown(tail.celsius),
  };
  return { measures: [measure], label, garnish: tail.garnish, topUp: tail.topUp };
}

/** Facts that stand between amount and name ("1½ oz 110 proof rye", "2 drops 20 % saline", "30 ml 2:1 syrup"). */
function factBefore(p: Phrase, i: number, end: number): { readonly end: number; readonly strength?: { value: number; span: { from: number; to: number } }; readonly concentration?: { value: number; span: { from: number; to: number } }; readonly ratio?: Tail['ratio'] } {
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
function factEnd(p: Phrase, i: number, end: number): number {
  const bracket = p.isMark(i, '(') || p.isMark(i, ',') ? i + 1 : i;
  if (!p.isNumber(bracket)) return i;
  const percent = percentAt(p, bracket, end);
  if (percent !== undefined) return percent.end;
  const ratio = ratioAt(p, bracket, end);
  return ratio === undefined ? i : ratio.end;
}

/** "juice of half a lime", "Juice 1/2 Lemon", "zest of 2 lemons", "the white of an egg": a count of fruit. `lead` is a number before. */
function partOf(p: Phrase, i: number, end: number, lead: NumberAt | undefined): Measured | undefined {
  let k = i;
  while (/^(the|fresh|freshly|squeezed|strained|der|die|das|den)$/.test(p.word(k))) k++;
  const part = p.word(k);
  if (!PARTS.has(part)) return undefined;
  k++;
  const of = /^(of|von|de|d|einer|eines|vom|aus|from)$/.test(p.word(k));
  if (of && !/^(einer|eines)$/.test(p.word(k))) k++;
  const factors = approxAt(p, k, end);
  if (factors !== undefined && factors.key === 'about') k = factors.end;
  const number = p.word(k) === 'whole' || p.word(k) === 'the' || p.word(k) === 'one' && p.word(k + 1) === 'whole' ? undefined : rangeAt(p, k, end);
  const digits = number !== undefined;
  if (!of && !digits) return undefined;
  let to = number?.end ?? k;
  while (/^(of|whole|the|a|an|large|small|medium|fresh|ripe|halben|ganzen|big|frischen)$/.test(p.word(to))) to++;
  const inner = /^(halben|halbe)$/.test(p.word(to - 1)) ? 0.5 : undefined;
  const fruit = thingAt(p, to, end, 'count');
  if (fruit === undefined) return undefined;
  const chosen = lead ?? number;
  p.use(k, to);
  const single = fruit.label.replace(/ies$/, 'y').replace(/(?<=[^s])s$/, '').replace(/^(limettens?|limetten)$/, 'limette');
  const word = part === 'whites' ? 'white' : part === 'yolks' ? 'yolk' : part;
  const words = word === 'saft' || word === 'schale' || word === 'abrieb' ? `${single}${word === 'saft' ? 'nsaft' : `n${word}`}`.replace(/nn/, 'n') : `${single} ${word}`;
  const composed = thingOf(p, words, i, fruit.end, word);
  const low = chosen?.low ?? (inner ?? 1), high = chosen?.high ?? (inner ?? 1);
  const amount: Amount = chosen === undefined
    ? { low: inner ?? 1, high: inner ?? 1, unit: 'piece', number: p.span(k, Math.max(to, k + 1)) }
    : { ...makeAmount(p, chosen, undefined, 0, undefined), unit: 'piece' };
  const tail = readTail(p, fruit.end, end, composed, true, to);
  const what: ThingAt = { ...fruit, thing: composed, label: words };
  return build(p, i, end, { amount, unit: 'piece', low, high }, what, tail, {});
}
function thingOf(p: Phrase, words: string, i: number, end: number, part: string): Thing {
  const measured = /peel|zest|rind|skin|schale|zeste|abrieb/.test(part) ? 'peel' as const : 'volume' as const;
  const link = linkOf(words, measured, p.place.system);
  return { words, span: p.span(i, end), link };
}
import { lookup } from '../names/lookup.ts';
function linkOf(words: string, measured: 'peel' | 'volume', system: string | null): Thing['link'] {
  const found = lookup(words, measured, system);
  return found === undefined ? { kind: 'unknown', nearest: [] } : { kind: 'larder', id: found.id, assumed: found.assumed, others: found.others };
}

/** A measure whose amount or name stands at i; undefined where none reads so. */
export function readMeasure(p: Phrase, i: number, end: number): Measured | undefined {
  return portion(p, i, end) ?? equalParts(p, i, end) ?? partOf(p, i, end, undefined) ?? amountFirst(p, i, end) ?? bareUnit(p, i, end) ?? nameFirst(p, i, end);
}

/** "all of the cloud", "the rest of the syrup", "⅔ of the tea", "half of the syrup". */
function portion(p: Phrase, i: number, end: number): Measured | undefined {
  let k = i, share: 'all' | 'rest' | number | undefined;
  if (p.word(k) === 'all' && (p.word(k + 1) === 'of' || p.word(k + 1) === 'the')) { share = 'all'; k += p.word(k + 1) === 'of' ? 2 : 1; }
  else {
    const j = p.word(k) === 'the' ? k + 1 : k;
    if (/^(rest|remainder|remaining|balance)$/.test(p.word(j)) && (p.word(j + 1) === 'of' || p.word(j) === 'remaining')) { share = 'rest'; k = p.word(j + 1) === 'of' ? j + 2 : j + 1; }
    else {
      const number = rangeAt(p, k, end);
      if (number !== undefined && number.fraction && number.low !== null && p.word(number.end) === 'of' && p.word(number.end + 1) === 'the') { share = number.low; p.use(k, number.end); k = number.end + 1; }
    }
  }
  if (share === undefined) return undefined;
  if (p.word(k) !== 'the') { /* "all of it" */ }
  const what = withArticle(p, k, end);
  if (what === undefined) return undefined;
  const tail = readTail(p, what.end, end, what.thing, true, k);
  const value = typeof share === 'number' ? share : null;
  return build(p, i, end, { amount: null, unit: value === null ? null : 'part', low: value, high: value }, what, { ...tail }, { portion: share });
}
/** After "the rest of", the last words of one prep are enough, with or without "the". */
function withArticle(p: Phrase, k: number, end: number): ThingAt | undefined {
  return thingAt(p, k, end, 'volume');
}

/** "equal parts gin, red bitter, sweet vermouth", "2 : 1 : ¾ rum, lime, syrup": one measure each. */
function equalParts(p: Phrase, i: number, end: number): Measured | undefined {
  let k = i, parts: readonly number[] = [], numbers: readonly { from: number; to: number }[] = [];
  if (/^(equal)$/.test(p.word(k)) && /^(parts|measures|amounts|quantities)$/.test(p.word(k + 1))) { k += 2; if (p.word(k) === 'of') k++; if (p.isMark(k, ':')) k++; }
  else {
    const ratio = ratioAt(p, i, end);
    if (ratio === undefined || ratio.parts.length < 2 || ratio.end >= end) return undefined;
    if (ratio.parts.length === 2 && !/,| and |\//.test(p.slice(ratio.end, end))) return undefined;
    parts = ratio.parts;
    numbers = parts.map((_, n) => p.span(i + 2 * n, i + 2 * n + 1));
    p.use(i, ratio.end);
    k = ratio.end;
    if (p.word(k) === 'parts' || p.word(k) === 'of') k++;
  }
  const listFrom = k;
  const measures: Measure[] = [];
  while (k < end && measures.length < 12) {
    const what = thingAt(p, k, listEnd(p, k, end), 'volume');
    if (what === undefined) break;
    const n = measures.length;
    const tailEnd = listEnd(p, what.end, end);
    const tail = readTail(p, what.end, tailEnd, what.thing, true, k);
    const value = parts.length > 0 ? parts[n] ?? 1 : 1;
    const amount: Amount = { low: value, high: value, unit: 'part', number: numbers[n] ?? p.span(i, i + 1) };
    const made = build(p, k, tailEnd, { amount, unit: 'part', low: value, high: value }, what, tail, {}).measures[0];
    if (made !== undefined) measures.push(made);
    k = tailEnd;
    while (k < end && (p.isMark(k, ',') || p.isMark(k, '/') || p.isMark(k, '&') || p.isMark(k, '+') || /^(and|und)$/.test(p.word(k)))) k++;
  }
  if (measures.length === 0) return undefined;
  const first = parts[0] ?? 1;
  return { measures, label: { ...EMPTY, kind: 'measure', low: shown(first), high: shown(first), unit: 'part', ingredient: p.slice(listFrom, end).replace(/[.]$/, '').toLowerCase() }, garnish: false, topUp: false };
}
function listEnd(p: Phrase, i: number, end: number): number {
  for (let k = i; k < end; k++) {
    if (p.isMark(k, '(')) { const partner = p.t[k]?.partner ?? -1; if (partner > k) { k = partner; continue; } }
    if (p.isMark(k, ',') || p.isMark(k, '/') || p.isMark(k, '&') || p.isMark(k, '+') || ((p.word(k) === 'and' || p.word(k) === 'und') && nameEnd(p, i, end) <= k)) return k;
  }
  return end;
}

function amountFirst(p: Phrase, i: number, end: number): Measured | undefined {
  // "0.8 % gelatin", "57% rum, 30 ml", "50 g/L citric acid"
  if (p.isNumber(i)) {
    const percent = percentAt(p, i, end);
    if (percent !== undefined) return percentFirst(p, i, end, percent);
    const per = unitAt(p, i + 1, end, new Set(['share']));
    if (per !== undefined) return shareFirst(p, i, end, per);
  }
  const start = amountAt(p, i, end);
  if (start === undefined || start.number === undefined) return undefined;
  const { number } = start;
  const sized = sizedCount(p, i, end, start);
  if (sized !== undefined) return sized;
  if (!number.digits && number.article === true && start.unit === undefined && thingAt(p, start.end, end, 'count') === undefined) return undefined;
  // "1/2 Juice of 1 Lemon", "1 white of an Egg"
  if (start.unit === undefined) {
    const part = partOf(p, start.end, end, number);
    if (part !== undefined) { p.use(i, start.end); return part; }
  }
  p.use(i, start.end);
  let k = start.end, unit = start.unit?.form.unit ?? null;
  const unitWritten = start.unit;
  // "15 ml each lime juice and pineapple syrup"
  let each = false;
  if (/^(each|je)$/.test(p.word(k)) || (p.word(k) === 'of' && p.word(k + 1) === 'each')) { each = true; k += p.word(k) === 'of' ? 2 : 1; if (p.isMark(k, ':')) k++; }
  // bracket right behind the unit: "2 oz (60 ml) gin", "1 (14 oz) can"
  let twin: Amount | undefined, size: Tail | undefined;
  for (let round = 0; round < 2; round++) {
    if (!p.isMark(k, '(') && !p.isMark(k, '/') && !p.isMark(k, '=')) break;
    const close = p.isMark(k, '(') ? p.t[k]?.partner ?? -1 : -1;
    const from = k + 1;
    const around = approxAt(p, from, end);
    const again = rangeAt(p, around?.end ?? from, end);
    const other = again === undefined ? undefined : unitAt(p, again.end, end);
    if (again !== undefined && other !== undefined && (close < 0 || other.end <= close)) {
      twin = makeAmount(p, again, other, again.end, around);
      p.use(k, other.end);
      k = close > 0 ? close + 1 : other.end;
      if (unit === null) { const after = unitAt(p, k, end); if (after !== undefined) { unit = after.form.unit; p.use(k, after.end); k = after.end; } }
    } else break;
  }
  // "1 oz + 1 barspoon lemon", "1 oz plus 1 tsp"
  const plus: Amount[] = [];
  while ((p.isMark(k, '+') || p.word(k) === 'plus' || p.isMark(k, '&') || (p.word(k) === 'and' && unit !== null)) && k + 1 < end) {
    const again = rangeAt(p, k + 1, end);
    const other = again === undefined ? undefined : unitAt(p, again.end, end);
    if (again === undefined || other === undefined) break;
    plus.push(makeAmount(p, again, other, again.end, undefined));
    p.use(k, other.end);
    k = other.end;
  }
  void size;
  if (p.word(k) === 'of' || p.word(k) === 'de' || p.word(k) === 'di' || p.word(k) === 'von') k++;
  else if (p.isMark(k, '-') && !p.isHyphen(k) || p.isMark(k, '–') || p.isMark(k, ':') || p.isMark(k, '.')) k++;
  if (unit !== null && p.isHyphen(k)) k++;
  if (unit !== null && /^(heaping|heaped|level|rounded|large|small|scant)$/.test(p.word(k))) { /* left in the name */ }
  const before = factBefore(p, k, end);
  // names that hold their own number ("2 % milk", "151 rum") go whole
  const held = nameEnd(p, k, end);
  const from = before.end > k && held > before.end ? k : before.end;
  const measured = start.unit?.form.unit === undefined && unit === null ? 'count' as const : measuredBy(unit);
  let what = each ? undefined : thingAt(p, from === k && before.end > k ? before.end : from, end, measured, undefined);
  if (before.end > k && what !== undefined) what = relink(p, what, k, what.end, measured);
  else if (what !== undefined) { const to = factEnd(p, what.end, end); if (to > what.end) what = relink(p, what, what.first, to, measured); }
  if (what === undefined && !each && p.isNumber(k) && held > k) { const words = p.slice(k, held); p.use(k, held); what = { thing: { words, span: p.span(k, held), link: linkWords(p, words, measured) }, end: held, alternatives: [], first: k, label: words.toLowerCase(), the: false, treated: [] }; }
  if (each) return eachOf(p, end, k, start, unit);
  if (what === undefined) {
    // the unit may itself be the thing: "2 lemons" has none; "1 cube", "2 cloves"
    if (unitWritten !== undefined) {
      const self = thingAt(p, start.unitFrom, end, 'count');
      const held = unitWritten.form.written.includes(' ') ? lastOf(p, start.unitFrom, start.end) : undefined;
      if (held !== undefined) {
        const tail = readTail(p, start.end, end, held.thing, true, start.unitFrom);
        const shownAs = unitWritten.form.unit === 'stick-butter' ? 'stick' : unitWritten.form.unit === 'bottle-wine' ? 'bottle' : unitWritten.form.unit === 'espresso-shot' ? 'shot' : unitWritten.form.unit;
        return build(p, i, end, { amount: makeAmount(p, number, unitWritten, start.unitFrom, start.factors), unit: shownAs, low: number.low, high: number.high }, held, tail, {});
      }
      if (self !== undefined && self.thing.link.kind !== 'unknown' && unitWritten.form.of === 'piece') {
        const tail = readTail(p, self.end, end, self.thing, true, start.unitFrom);
        const amount = { ...makeAmount(p, number, undefined, 0, start.factors), unit: 'piece' };
        return build(p, i, end, { amount, unit: 'piece', low: number.low, high: number.high }, self, tail, {});
      }
    }
    return undefined;
  }
  what = unelided(p, what, measured);
  let label = what.label;
  // a unit behind the noun: "lime wedges", "mint leaves", "sugar cubes", "N2O charger"
  const ownThing = what.thing.link.kind === 'prep' || what.thing.link.kind === 'shelf';
  if (unit === null && !ownThing) {
    const words = label.split(/[\s-]+/);
    const last = words[words.length - 1] ?? '';
    const behind = words.length > 1 ? trailingUnit(last.replace(/[^\p{L}]/gu, '')) : undefined;
    if (behind !== undefined && !/ or /.test(label)) {
      unit = behind;
      const rest = label.slice(0, label.length - last.length).replace(/[\s-]+$/, '');
      const bare = rest === '' ? label : rest;
      label = bare;
      const whole = what.thing;
      const words2 = whole.words.slice(0, bare.length);
      const link = whole.link.kind === 'unknown' ? linkWords(p, bare, 'count') : whole.link;
      what = { ...what, label, thing: { words: words2 === '' ? whole.words : words2, span: whole.span, link } };
    } else {
      const german = germanUnit(label);
      if (german !== undefined) { unit = german.unit; label = german.rest; what = { ...what, label }; }
    }
  }
  if (unit === null) {
    const id = larderId(what.thing);
    const fraction = number.fraction && number.low !== null && number.low < 1;
    if (!fraction && number.digits && isPoured(what) && !/\b(?:lemon|lime|orange|grapefruit|zitronen|limetten)[\s-]?(?:juice|saft)$/.test(label)) { p.report('unit-missing', number.first, number.last, { number: p.slice(number.first, number.last), thing: what.thing.words }); return undefined; }
    const pourable = (id !== null && (isAlcoholic(id) || /liqueur|vermouth/.test(id))) || (id === null && /\b(wine|rum|gin|brandy|vermouth|liqueur|whiske?y|bitters?|sherry|port|curac[ao]+|absinthe|cordial|syrup)\b/.test(label));
    const wet = id !== null && !pourable && /juice|syrup|water|cream$|milk/.test(id) && /syrup|water|cream|milk|cordial|grenadine|orgeat/.test(label);
    unit = fraction && (pourable || wet) ? 'part' : number.low === null && !/few|several|ein paar|einige/i.test(p.slice(number.first, number.last)) ? null : 'piece';
    if (fraction && what.thing.link.kind === 'larder' && unit === 'piece' && /\bjuice\b/.test(label)) { /* "1/2 Lemon Juice": fruit is counted */ }
    if (unit === 'part' && what.thing.link.kind === 'larder' && what.thing.link.assumed) what = { ...what, thing: { ...what.thing, link: linkWords(p, what.thing.words, 'volume') } };
  }
  // "1 stick of butter": units that hold their thing
  const tail = readTail(p, what.end, end, what.thing, true, what.first);
  if (before.strength !== undefined) tail.strength ??= before.strength;
  if (before.concentration !== undefined) tail.concentration ??= before.concentration;
  if (before.ratio !== undefined) tail.ratio ??= before.ratio;
  if (twin !== undefined) tail.twin ??= twin;
  tail.plus.unshift(...plus);
  if (unit === 'leaf' && /gelatin/.test(label)) unit = 'sheet';
  const amount: Amount | null = number.low === null ? rangeOfWords(p, number, start, unit) : { ...makeAmount(p, number, unitWritten, start.unitFrom, start.factors), unit };
  return build(p, i, end, { amount, unit, low: number.low, high: number.high }, { ...what, label }, tail, {});
}

/** The thing that a unit's own words hold: "stick of butter", "bottle of wine", "ice cube". */
function lastOf(p: Phrase, from: number, end: number): ThingAt | undefined {
  for (const [k, to] of [[from + 1, end], [from + 2, end], [from, end - 1]] as const) {
    if (k >= to || (p.isMark(k, '-') || p.word(k) === 'of')) continue;
    const what = thingAt(p, k, to, 'volume');
    if (what !== undefined && what.end === to && what.thing.link.kind === 'larder') return what;
  }
  return undefined;
}

const HOLDERS = new Set(['bottle', 'can', 'carton', 'packet', 'bottle-wine', 'bag', 'block']);
/** "1 14-oz can coconut milk", "1 (750-ml) bottle rum", "one 750 ml bottle of vodka": so many of a size. */
function sizedCount(p: Phrase, i: number, end: number, start: Start): Measured | undefined {
  const number = start.number;
  if (number === undefined || number.low === null) return undefined;
  let count = number, size: NumberAt | undefined, sizeUnit: UnitAt | undefined, k = number.end;
  const thousands = /^(\d) (\d{3})$/.exec(p.slice(number.first, number.last));
  if (thousands !== null && start.unit !== undefined) {
    count = { ...number, low: Number(thousands[1]), high: Number(thousands[1]) };
    size = { ...number, low: Number(thousands[2]), high: Number(thousands[2]) };
    sizeUnit = start.unit;
    k = start.unit.end;
  } else if (start.unit === undefined || p.isNumber(number.end)) {
    const bracket = p.isMark(k, '(');
    if (bracket) k++;
    size = rangeAt(p, k, end);
    if (size === undefined || !size.digits) return undefined;
    sizeUnit = unitAt(p, p.isHyphen(size.end) ? size.end + 1 : size.end, end);
    k = sizeUnit?.end ?? k;
    if (bracket) { if (!p.isMark(k, ')')) return undefined; k++; }
  }
  if (size === undefined || sizeUnit === undefined || (sizeUnit.form.of !== 'ml' && sizeUnit.form.of !== 'g')) return undefined;
  const holder = unitAt(p, k, end);
  if (holder === undefined || !HOLDERS.has(holder.form.unit)) return undefined;
  const from = p.word(holder.end) === 'of' ? holder.end + 1 : holder.end;
  const what = thingAt(p, from, end, 'volume');
  if (what === undefined) return undefined;
  p.use(i, holder.end);
  const tail = readTail(p, what.end, end, what.thing, true, what.first);
  const at = p.span(number.first, number.last);
  const digits = thousands === null ? at : { from: at.from, to: at.from + 1 };
  const twinAt = thousands === null ? p.span(size.first, size.last) : { from: at.from + 2, to: at.to };
  tail.twin ??= { ...makeAmount(p, size, sizeUnit, sizeUnit.end - 1, undefined), number: twinAt };
  return build(p, i, end, { amount: { ...makeAmount(p, count, holder, k, undefined), number: digits }, unit: holder.form.unit, low: count.low, high: count.high }, what, tail, {});
}

/** "a few drops": a range and no number. */
function rangeOfWords(p: Phrase, number: NumberAt, start: Start, unit: string | null): Amount | null {
  const word = p.slice(number.first, number.last).toLowerCase();
  const few = /few/.test(word) ? [2, 5] : /several/.test(word) ? [3, 6] : undefined;
  return few === undefined ? null : { ...makeAmount(p, number, start.unit, start.unitFrom, start.factors), low: few[0] ?? 2, high: few[1] ?? 5, unit };
}

/** German compounds hold the unit behind: "Minzblätter", "Limettenspalten". */
function germanUnit(label: string): { readonly unit: string; readonly rest: string } | undefined {
  const match = /^(\p{L}{3,}?)(n|s|en|)(blätter|blätt(?:chen|ern)|blatt|spalten?|scheiben?|zweige?|würfel|zesten?)$/u.exec(label);
  const ending = match?.[3], stem = match?.[1];
  if (ending === undefined || stem === undefined) return undefined;
  const unit = /^bl/.test(ending) ? 'leaf' : /^sp/.test(ending) ? 'wedge' : /^sch/.test(ending) ? 'slice' : /^zw/.test(ending) ? 'sprig' : /^w/.test(ending) ? 'cube' : 'strip';
  for (const rest of [stem, `${stem}e`, `${stem}${match?.[2] ?? ''}`]) if (lookup(rest, 'count') !== undefined) return { unit, rest };
  return undefined;
}

/** "d'absinthe": the article that stands with its noun off. */
function unelided(p: Phrase, what: ThingAt, measured: Parameters<typeof lookup>[1]): ThingAt {
  if (!/^d['’]/i.test(what.label) || what.thing.link.kind !== 'unknown') return what;
  const words = what.thing.words.slice(2);
  return { ...what, label: what.label.slice(2), thing: { words, span: { from: what.thing.span.from + 2, to: what.thing.span.to }, link: linkWords(p, words, measured) } };
}

function linkWords(p: Phrase, words: string, measured: Parameters<typeof lookup>[1]): Thing['link'] {
  const found = lookup(words, measured, p.place.system);
  return found === undefined ? { kind: 'unknown', nearest: [] } : { kind: 'larder', id: found.id, assumed: found.assumed, others: found.others };
}
/** The thing read again with the numbers beside it ("simple syrup 2:1", "20 % saline"), where that is a name. */
function relink(p: Phrase, what: ThingAt, from: number, to: number, measured: Parameters<typeof lookup>[1]): ThingAt {
  if (what.thing.link.kind !== 'larder' && what.thing.link.kind !== 'unknown') return what;
  const whole = p.slice(from, to).replace(/[()]/g, ' ');
  const found = lookup(whole, measured, p.place.system);
  return found === undefined ? what : { ...what, thing: { ...what.thing, link: { kind: 'larder', id: found.id, assumed: found.assumed, others: found.others } } };
}

function percentFirst(p: Phrase, i: number, end: number, percent: { readonly value: number; readonly kind: string; readonly end: number }): Measured | undefined {
  const what0 = thingAt(p, percent.end, end, 'volume');
  if (what0 === undefined) return undefined;
  p.use(i, percent.end);
  const what = relink(p, what0, i, what0.end, 'volume');
  const tail = readTail(p, what.end, end, what.thing, false, what.first);
  const span = p.span(i, percent.end);
  if (percent.kind === 'abv' || tail.amount !== undefined) {
    const weighed = what.label.split(/[\s-]+/).some((word) => BY_WEIGHT.test(word));
    const id = larderId(what.thing);
    if (percent.kind === 'abv' || (id === null && !weighed) || (id !== null && isAlcoholic(id))) return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, { strength: { value: percent.value, span } });
    tail.concentration ??= { value: percent.value, span };
    return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, {});
  }
  if (percent.value > 100) p.report('share-too-large', i, percent.end, { number: p.slice(i, i + 1) });
  const of = tail.share?.of;
  const share: Share = { value: percent.value / 100, basis: 'mass', ...(of !== undefined ? { of } : {}), number: p.span(i, i + 1) };
  let ofThing = of;
  if (ofThing === undefined && /^(of|on|von)$/.test(p.word(what.end))) ofThing = shareOf(p, 0, 'mass', what.end, end, share.number).of;
  return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, { share: ofThing === undefined ? share : { ...share, of: ofThing } });
}

function shareFirst(p: Phrase, i: number, end: number, per: UnitAt): Measured | undefined {
  const what = thingAt(p, per.end, end, 'weight');
  if (what === undefined) return undefined;
  p.use(i, per.end);
  const value = p.t[i]?.value ?? 0, number = p.span(i, i + 1);
  const basis: Share['basis'] = per.form.unit === 'g-per-kg' ? 'mass' : per.form.unit === 'ml-per-l' ? 'volume' : 'g per L';
  const factor = per.form.unit === 'g-per-kg' || per.form.unit === 'ml-per-l' ? 0.001 : per.form.unit === 'g-per-100ml' ? 10 : 1;
  const share = shareOf(p, value * factor, basis, /^(of|on|von|in)$/.test(p.word(what.end)) ? what.end : end, end, number);
  const tail = share.of === undefined ? readTail(p, what.end, end, what.thing, true, what.first) : emptyTail();
  return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, { share });
}

function eachOf(p: Phrase, end: number, from: number, start: Start, unit: string | null): Measured | undefined {
  const measures: Measure[] = [];
  const number = start.number;
  if (number === undefined) return undefined;
  let k = from;
  if (/^(of)$/.test(p.word(k))) k++;
  const listFrom = k;
  while (k < end && measures.length < 12) {
    const last = listEnd(p, k, end);
    const what = thingAt(p, k, last, measuredBy(unit));
    if (what === undefined) break;
    const tail = readTail(p, what.end, last, what.thing, true, k);
    const amount = { ...makeAmount(p, number, start.unit, start.unitFrom, start.factors), unit: unit ?? 'piece' };
    const made = build(p, k, last, { amount, unit, low: number.low, high: number.high }, what, tail, {}).measures[0];
    if (made !== undefined) measures.push(made);
    k = last;
    while (k < end && (p.isMark(k, ',') || p.isMark(k, '&') || p.isMark(k, '+') || p.isMark(k, '/') || /^(and|und)$/.test(p.word(k)))) k++;
  }
  if (measures.length === 0) return undefined;
  return { measures, label: { ...EMPTY, kind: 'measure', low: shown(number.low), high: shown(number.high), unit: unit ?? 'piece', ingredient: p.slice(listFrom, end).replace(/[.]$/, '').toLowerCase() }, garnish: false, topUp: false };
}

/** "dash of orange bitters", "heaped teaspoon of caster sugar": one. */
function bareUnit(p: Phrase, i: number, end: number): Measured | undefined {
  const factors = approxAt(p, i, end);
  const at = factors?.end ?? i;
  const between = BETWEEN.has(p.word(at)) && unitAt(p, at + 1, end) !== undefined ? at + 1 : at;
  const unit = unitAt(p, between, end);
  if (unit === undefined || unit.form.unit === 'top' || unit.form.unit === 'to-taste') return undefined;
  if (unit.form.of === 'g' && !LOOSE.has(unit.form.unit)) return undefined;
  const of = /^(of|de|von)$/.test(p.word(unit.end)) || /^d['’]/.test(p.t[unit.end]?.text ?? '');
  if (!of && !(factors !== undefined) && !LOOSE.has(unit.form.unit)) return undefined;
  if (['ml', 'cl', 'dl', 'l', 'mg', 'g', 'kg', 'oz', 'floz-uk', 'lb'].includes(unit.form.unit)) return undefined;
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
  const to = factEnd(p, what0.end, end);
  let what = to > what0.end ? relink(p, what0, what0.first, to, null) : what0;
  const rest = p.isDash(what.end) || p.isMark(what.end, ':') || p.isMark(what.end, '–') ? what.end + 1 : what.end;
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
    if (link.kind === 'unknown' && !known && p.problems.length > problemsBefore) { /* said already */ }
  }
  return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, {});
}
const number0 = (p: Phrase, amount: Amount): string => p.text.slice(amount.number.from - p.place.base, amount.number.to - p.place.base);

/** What is poured is never counted: "45 gin" lacks its unit. */
function isPoured(what: ThingAt): boolean {
  const id = larderId(what.thing);
  return what.thing.link.kind !== 'unknown' && ((id !== null && isAlcoholic(id)) || /\b(?:juice|syrup|simple|cordial|saft|sirup|water|cream|milk|liqueur)s?$/.test(what.label));
}

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
