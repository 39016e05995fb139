import type { Amount } from '@washline/engine';
import { approxAt, isCounted, makeAmount, rangeAt, unitAt, type NumberAt, type UnitAt } from '../phrase/amount.ts';
import { percentAt } from '../phrase/facts.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { larderId, nameEnd, thingAt, type ThingAt } from '../phrase/thing.ts';
import { compoundUnit } from '../names/compound.ts';
import type { Measured as MeasuredBy } from '../names/lookup.ts';
import { category, isSolid } from '../vocabulary/vocabulary.ts';
import { build, isPoured, linkWords, relink, unelided, type Measured } from './build.ts';
import { amountAt, amountOf, factBefore, factEnd, type Start } from './head.ts';
import { measuredBy, trailingUnit } from './measured.ts';
import { partOf } from './part-of.ts';
import { eachOf } from './several.ts';
import { percentFirst, shareFirst, sharePer } from './share-first.ts';
import { sizedCount } from './sized.ts';
import { readTail } from './tail.ts';

/** Kinds of the larder that are poured: a fraction of one without a unit is a part. */
const POURED = new Set(['juice', 'dairy', 'syrup', 'soft-drink', 'water', 'beer', 'wine', 'fortified', 'spirit', 'liqueur', 'bitters', 'plant-drink', 'plant-cream', 'coffee-tea']);
const SHARE = new Set(['share']);

/** A number at the head: an amount and what it is of, a share, or a count. */
export function amountFirst(p: Phrase, i: number, end: number): Measured | undefined {
  // "0.8 % gelatin", "57% rum, 30 ml", "50 g/L citric acid"
  if (p.isNumber(i)) {
    const percent = percentAt(p, i, end);
    if (percent !== undefined) return percentFirst(p, i, end, percent);
    const per = unitAt(p, i + 1, end, SHARE);
    if (per !== undefined) return shareFirst(p, i, end, per);
  }
  const start = amountAt(p, i, end);
  const number = start?.number;
  if (start === undefined || number === undefined) return undefined;
  const sized = sizedCount(p, i, end, start);
  if (sized !== undefined) return sized;
  if (!number.digits && number.article === true && start.unit === undefined && thingAt(p, start.end, end, 'count') === undefined) return undefined;
  // "1/2 Juice of 1 Lemon", "1 white of an Egg"
  // "a favourite drink at …": talk, no matter
  if (start.unit === undefined && /\b(?:drink|cocktail|recipe|variation|riff|version|classic|favou?rite)s?$/i.test(thingAt(p, start.end, end, 'count')?.label ?? '')) return undefined;
  if (start.unit === undefined) {
    const part = partOf(p, start.end, end, number);
    if (part !== undefined) { p.use(i, start.end); return part; }
  }
  p.use(i, start.end);
  // "15 ml each lime juice and pineapple syrup"
  const each = eachAt(p, start.end);
  if (each > start.end) return eachOf(p, end, each, start, start.unit?.form.unit ?? null);
  const more = moreAmounts(p, start.end, end, start.unit);
  const before = factBefore(p, more.end, end);
  const unit = more.unit?.form.unit ?? null;
  const what = named(p, more.end, before.end, end, unit === null ? 'count' : measuredBy(unit));
  if (what === undefined) return ofItself(p, i, end, number, start);
  const settled = settleUnit(p, number, unit, what);
  if (settled === undefined) return undefined;
  const grams = number.low === null ? undefined : unit === 'g' ? number.low : unit === 'mg' ? number.low / 1000 : unit === 'kg' ? number.low * 1000 : undefined;
  const per = grams === undefined ? undefined : sharePer(p, what.end, end, grams, p.span(number.first, number.last));
  if (per !== undefined) return build(p, i, end, { amount: null, unit: settled.unit, low: number.low, high: number.high }, settled.what, readTail(p, per.end, end, settled.what.thing, true, what.first), { share: per.share });
  const tail = readTail(p, what.end, end, settled.what.thing, true, what.first);
  if (before.strength !== undefined) tail.strength ??= before.strength;
  if (before.concentration !== undefined) tail.concentration ??= before.concentration;
  if (before.ratio !== undefined) tail.ratio ??= before.ratio;
  if (before.temperature !== undefined) { tail.temperature ??= before.temperature; tail.celsius ??= before.temperature.celsius; }
  if (more.twin !== undefined) tail.twin ??= more.twin;
  tail.plus.unshift(...more.plus);
  return build(p, i, end, { amount: amountOf(p, number, start, settled.unit), unit: settled.unit, low: number.low, high: number.high }, settled.what, tail, {});
}

/** Where "each" ends behind an amount; the same place where none stands. */
function eachAt(p: Phrase, k: number): number {
  if (!/^(each|je)$/.test(p.word(k)) && !(p.word(k) === 'of' && p.word(k + 1) === 'each')) return k;
  const to = k + (p.word(k) === 'of' ? 2 : 1);
  return p.isMark(to, ':') ? to + 1 : to;
}

interface More { readonly end: number; readonly unit: UnitAt | undefined; readonly twin?: Amount; readonly plus: readonly Amount[] }
/** The same amount again ("2 oz (60 ml)") and amounts added ("1 oz + 1 barspoon") right behind the first; then "of". */
function moreAmounts(p: Phrase, from: number, end: number, first: UnitAt | undefined): More {
  let k = from, unit = first, twin: Amount | undefined;
  for (let round = 0; round < 2 && (p.isMark(k, '(') || p.isMark(k, '/') || p.isMark(k, '=')); round++) {
    const close = p.isMark(k, '(') ? p.t[k]?.partner ?? -1 : -1;
    const around = approxAt(p, k + 1, end);
    const again = rangeAt(p, around?.end ?? k + 1, end);
    const other = again === undefined ? undefined : unitAt(p, again.end, end);
    if (!isCounted(again) || other === undefined || (close >= 0 && other.end > close)) break;
    twin = makeAmount(p, again, other, again.end, around);
    p.use(k, other.end);
    k = close > 0 ? close + 1 : other.end;
    if (unit === undefined) { unit = unitAt(p, k, end); if (unit !== undefined) { p.use(k, unit.end); k = unit.end; } }
  }
  const plus: Amount[] = [];
  while ((p.isMark(k, '+') || p.word(k) === 'plus' || p.isMark(k, '&') || (p.word(k) === 'and' && unit !== undefined)) && k + 1 < end) {
    const again = rangeAt(p, k + 1, end);
    const other = again === undefined ? undefined : unitAt(p, again.end, end);
    if (!isCounted(again) || other === undefined) break;
    plus.push(makeAmount(p, again, other, again.end, undefined));
    p.use(k, other.end);
    k = other.end;
  }
  if (/^(of|de|di|von)$/.test(p.word(k))) k++;
  else if ((p.isMark(k, '-') && !p.isHyphen(k)) || p.isMark(k, '–') || p.isMark(k, ':') || p.isMark(k, '.')) k++;
  if (unit !== undefined && p.isHyphen(k)) k++;
  return { end: k, unit, plus, ...(twin !== undefined ? { twin } : {}) };
}

/** The thing behind the amount; facts between them (`after`) and behind it may belong to its name ("20 % saline", "simple syrup 2:1"). */
function named(p: Phrase, k: number, after: number, end: number, measured: MeasuredBy): ThingAt | undefined {
  const what = thingAt(p, after, end, measured);
  if (what !== undefined) {
    const to = after > k ? what.end : factEnd(p, what.end, end);
    const linked = after > k ? relink(p, what, k, to, measured) : to > what.end ? relink(p, what, what.first, to, measured) : what;
    return unelided(p, aroundBracket(p, linked, end, measured), measured);
  }
  // names that hold their own number ("2 % milk", "151 rum") go whole
  const held = nameEnd(p, k, end);
  if (!p.isNumber(k) || held <= k) return undefined;
  const words = p.slice(k, held);
  p.use(k, held);
  return { thing: { words, span: p.span(k, held), link: linkWords(p, words, measured) }, end: held, alternatives: [], first: k, label: words.toLowerCase(), the: false, treated: [] };
}

/** "overproof (126 proof) rum": a fact in brackets inside a name. */
function aroundBracket(p: Phrase, what: ThingAt, end: number, measured: MeasuredBy): ThingAt {
  const close = p.isMark(what.end, '(') ? p.t[what.end]?.partner ?? -1 : -1;
  if (what.thing.link.kind !== 'unknown' || close < 0 || close + 1 >= end || p.word(close + 1) === '') return what;
  const rest = thingAt(p, close + 1, end, measured);
  if (rest === undefined || rest.first !== close + 1 || rest.thing.link.kind === 'unknown') return what;
  const words = `${what.thing.words} ${rest.thing.words}`, link = linkWords(p, words, measured);
  return { ...what, label: words.toLowerCase(), thing: { words, span: { from: what.thing.span.from, to: rest.thing.span.to }, link: link.kind === 'unknown' ? rest.thing.link : link } };
}

const SHOWN_AS: Readonly<Record<string, string>> = { 'stick-butter': 'stick', 'bottle-wine': 'bottle', 'espresso-shot': 'shot' };
/** No thing behind the unit: the unit's own words hold it ("1 stick of butter", "2 cloves"). */
function ofItself(p: Phrase, i: number, end: number, number: NumberAt, start: Start): Measured | undefined {
  if (start.unit === undefined) return undefined;
  const { form } = start.unit;
  const held = form.written.includes(' ') ? lastOf(p, start.unitFrom, start.end) : undefined;
  if (held !== undefined) {
    const tail = readTail(p, start.end, end, held.thing, true, start.unitFrom);
    return build(p, i, end, { amount: amountOf(p, number, start, form.unit), unit: SHOWN_AS[form.unit] ?? form.unit, low: number.low, high: number.high }, held, tail, {});
  }
  const self = form.of === 'piece' ? thingAt(p, start.unitFrom, end, 'count') : undefined;
  if (self === undefined || self.thing.link.kind === 'unknown') return undefined;
  const tail = readTail(p, self.end, end, self.thing, true, start.unitFrom);
  return build(p, i, end, { amount: amountOf(p, number, { ...start, unit: undefined, unitFrom: 0 }, 'piece'), unit: 'piece', low: number.low, high: number.high }, self, tail, {});
}

interface Settled { readonly unit: string | null; readonly what: ThingAt }
/** The unit where none stood before the noun: behind it ("lime wedges"), a part ("2/3 rye whiskey"), else a piece; undefined where what is poured has none. */
function settleUnit(p: Phrase, number: NumberAt, unit: string | null, what: ThingAt): Settled | undefined {
  if (unit !== null) return { unit: unit === 'leaf' && /gelatin/.test(what.label) ? 'sheet' : unit, what };
  const behind = what.thing.link.kind === 'prep' || what.thing.link.kind === 'shelf' ? undefined : unitBehind(p, what);
  if (behind !== undefined) return { unit: behind.unit === 'leaf' && /gelatin/.test(behind.what.label) ? 'sheet' : behind.unit, what: behind.what };
  const id = larderId(what.thing), { label } = what;
  const fraction = number.fraction && number.low !== null && number.low < 1;
  if (!fraction && number.digits && isPoured(what) && !/\b(?:lemon|lime|orange|grapefruit|zitronen|limetten)[\s-]?(?:juice|saft)$/.test(label)) {
    p.report('unit-missing', number.first, number.last, { number: p.slice(number.first, number.last), thing: what.thing.words });
    return undefined;
  }
  const pourable = id === null ? /\b(wine|rum|gin|brandy|vermouth|liqueur|whiske?y|bitters?|sherry|port|curac[ao]+|absinthe|cordial|syrup|chartreuse|b[eé]n[eé]dictine|k[uü]mmel|anisette|maraschino|punch|water|cream|cr[eèê]me de)\b/.test(label) : POURED.has(category(id) ?? '') && !isSolid(id);
  if (fraction && pourable) {
    const link = what.thing.link;
    return { unit: 'part', what: link.kind === 'larder' && link.assumed ? { ...what, thing: { ...what.thing, link: linkWords(p, what.thing.words, 'volume') } } : what };
  }
  return { unit: number.low === null && !/few|several|ein paar|einige/i.test(p.slice(number.first, number.last)) ? null : 'piece', what };
}

/** "lime wedges", "mint leaves", "sugar cubes", "N2O charger"; in German one word: "Minzblätter". */
function unitBehind(p: Phrase, what: ThingAt): { readonly unit: string; readonly what: ThingAt } | undefined {
  const { label, thing } = what;
  const parts = label.split(/[\s-]+/), last = parts[parts.length - 1] ?? '';
  const unit = parts.length > 1 && !/ or /.test(label) ? trailingUnit(last.replace(/[^\p{L}]/gu, '')) : undefined;
  if (unit === undefined) {
    const german = compoundUnit(label);
    return german === undefined || german.unit === 'wheel' ? undefined : { unit: german.unit, what: { ...what, label: german.rest, thing: thing.link.kind === 'unknown' ? { ...thing, link: linkWords(p, german.rest, 'count') } : thing } };
  }
  const rest = label.slice(0, label.length - last.length).replace(/[\s-]+$/, '');
  const bare = rest === '' ? label : rest, words = thing.words.slice(0, bare.length);
  const link = thing.link.kind === 'unknown' ? linkWords(p, bare, 'count') : thing.link;
  return { unit, what: { ...what, label: bare, thing: { words: words === '' ? thing.words : words, span: thing.span, link } } };
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
