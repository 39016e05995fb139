import type { Amount, Measure, Share, Span, Temperature, Thing, Treatment } from '@washline/engine';
import { approxAt, isCounted, makeAmount, rangeAt, unitAt } from '../phrase/amount.ts';
import { percentAt, ratioAt, temperatureAt, timeAt } from '../phrase/facts.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { larderId, thingAt } from '../phrase/thing.ts';
import { treatmentCelsius, treatments } from '../phrase/treatment.ts';
import { isAlcoholic, isSolid } from '../vocabulary/vocabulary.ts';
import { participleLast } from './german.ts';
import { isNamed, measuredBy } from './measured.ts';

/** What stands behind a measure's name: strength, ratio, temperature, treatments, a second amount … */
export interface Tail {
  strength?: { value: number; span: { from: number; to: number } };
  concentration?: { value: number; span: { from: number; to: number } };
  ratio?: { a: number; b: number; by: 'weight' | 'volume'; byWritten: boolean; span: { from: number; to: number } };
  temperature?: Temperature;
  held?: { seconds: number; celsius: number; span: { from: number; to: number } };
  carrier?: Measure;
  share?: Share;
  twin?: Amount;
  plus: Amount[];
  treatments: Treatment[];
  alternatives: Thing[];
  optional: boolean;
  amount?: Amount;
  /** where its own amount ends, when that stood here */
  amountEnd?: number;
  unitName?: string;
  seconds?: number;
  celsius?: number;
  toTaste: boolean;
  topUp: boolean;
  garnish: boolean;
  each: boolean;
  times?: number;
}
/** From where the first of two places begins to where the last ends: in German the verb stands behind its time. */
const both = (a: Span, b: Span): Span => ({ from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) });
export const emptyTail = (): Tail => ({ plus: [], treatments: [], alternatives: [], optional: false, toTaste: false, topUp: false, garnish: false, each: false });

const SHARE_UNITS = new Set(['share']);
const NO_MEASURE = new Set(['']);
const CARRIED = new Set(['in', 'into', 'with', 'mit', 'en', 'dans']);
/** Per cents of these are by weight, of solids or of fat, never of alcohol. */
export const BY_WEIGHT = /^(fat|cocoa|cacao|solids|solution|saline|acid|salt|syrup|milk|cream|sugar|brix|juice|fett|kakao|sodium|citric|malic|lactic|tartaric|acetic|vinegar|butterfat|butter|yogurt|yoghurt|kefir|buttermilk|chocolate|lösung|losung)$/;

/** True where a word near a per cent says it is by weight. */
function saysWeight(p: Phrase, from: number, end: number, i: number, after: number): boolean {
  if (BY_WEIGHT.test(p.word(after))) return true;
  for (let k = from; k < end; k++) if (BY_WEIGHT.test(p.word(k)) && k < i) return true;
  return false;
}

/**
 * Reads what follows a name up to the clause's end, each fact marking its tokens.
 * `haveAmount` false lets an amount here be the measure's own ("gin 45 ml").
 */
export function readTail(p: Phrase, from: number, end: number, thing: Thing | null, haveAmount: boolean, nameFrom: number): Tail {
  const tail = emptyTail();
  let k = from;
  let treated: { key: string; span: { from: number; to: number }; seconds?: number; celsius?: number } | undefined;
  let joined: 'in' | 'plus' | 'or' | 'to' | 'at' | 'held' | null = null;
  let plus = false;
  const alcoholic = thing === null ? null : larderId(thing);
  let heldFrom = -1;
  const behind = new Map<number, number>();
  const ahead = (at: number): void => {
    const last = participleLast(p, at, end);
    if (last === undefined) return;
    behind.set(last.from, last.end);
    if (last.key === 'held') { joined = 'held'; heldFrom = at; }
    else treated = { key: last.key, span: p.span(last.from, last.end) };
  };
  const flush = (): void => { if (treated !== undefined) tail.treatments.push(treated); treated = undefined; };
  ahead(from);
  while (k < end) {
    const token = p.t[k];
    if (token === undefined) break;
    const past = behind.get(k);
    if (past !== undefined) { if (joined === 'held') { p.use(k, past); joined = null; } k = past; continue; }
    // numbers and signs
    if (token.kind === 'number' || (token.kind === 'mark' && /^[-−–~≈+]$/.test(token.text)) || token.kind === 'word') {
      const around = approxAt(p, k, end);
      const start = around !== undefined ? around.end : k;
      // "salt, a pinch"
      const aside = !haveAmount && tail.amount === undefined && token.kind === 'word' && (p.isMark(k - 1, ',') || p.isMark(k - 1, ':') || p.isDash(k - 1)) && unitAt(p, rangeAt(p, k, end)?.end ?? end, end) !== undefined;
      const heat = temperatureAt(p, k, end, joined === 'at' || p.word(k - 1) === 'at');
      if (heat !== undefined) {
        const span = p.span(k, heat.end), celsius = Math.round(heat.celsius * 1e6) / 1e6;
        tail.celsius ??= celsius;
        if (joined === 'held' && tail.held !== undefined) tail.held = { ...tail.held, celsius, span: both(tail.held.span, span) };
        else if (treated !== undefined && treated.celsius === undefined && (tail.carrier === undefined || treated.span.from > tail.carrier.span.to)) { treated.celsius = celsius; treated.span = both(treated.span, span); tail.temperature = { celsius, span }; }
        else if (tail.carrier !== undefined && tail.carrier.temperature === undefined) tail.carrier = { ...tail.carrier, temperature: { celsius, span }, span: { from: tail.carrier.span.from, to: span.to } };
        else tail.temperature = { celsius, span };
        p.use(k, heat.end); k = heat.end; continue;
      }
      const percent = token.kind === 'number' || p.isNumber(start) ? percentAt(p, start, end) : undefined;
      if (percent !== undefined) {
        const span = p.span(k, percent.end);
        const weight = percent.kind === 'weight' || (percent.kind === 'bare' && alcoholic !== null && !isAlcoholic(alcoholic)) || (percent.kind === 'bare' && saysWeight(p, nameFrom, from, k, percent.end));
        if (percent.kind === 'bare' && /^(of|on|aus|von)$/.test(p.word(percent.end))) tail.share = shareOf(p, percent.value / 100, 'mass', percent.end, end, p.span(k, k + 1));
        else if (weight && !(alcoholic !== null && isAlcoholic(alcoholic) && !BY_WEIGHT.test(p.word(percent.end)))) tail.concentration = { value: percent.value, span };
        else tail.strength = { value: percent.value, span };
        if (percent.value > 100) p.report('share-too-large', k, percent.end, { number: p.slice(k, k + 1) });
        let to = percent.end;
        if (BY_WEIGHT.test(p.word(to))) to++;
        p.use(k, to); k = to; continue;
      }
      const ratio = token.kind === 'number' ? ratioAt(p, k, end) : undefined;
      if (ratio !== undefined && ratio.parts.length === 2) {
        tail.ratio = { a: ratio.parts[0] ?? 1, b: ratio.parts[1] ?? 1, by: ratio.by, byWritten: ratio.byWritten, span: p.span(k, ratio.end) };
        p.use(k, ratio.end); k = ratio.end; continue;
      }
      const time = token.kind === 'number' || (start > k && p.isNumber(start)) || token.kind === 'word' && p.word(k) !== 'a' ? timeAt(p, start, end) : undefined;
      if (time !== undefined) {
        const value = (time.low + time.high) / 2, span = p.span(k, time.end);
        if (time.word === undefined) tail.seconds ??= value;
        if (joined === 'held') tail.held = { seconds: value, celsius: NaN, span: { from: p.span(heldFrom < 0 ? k - 1 : k, k + 1).from, to: span.to } };
        else if (treated !== undefined) { treated.seconds = value; treated.span = both(treated.span, span); }
        else tail.treatments.push({ key: 'time', span, seconds: value });
        p.use(k, time.end); k = time.end; continue;
      }
      if (token.kind === 'number' || (around !== undefined && p.isNumber(around.end)) || (joined !== null && token.kind === 'word') || aside) {
        const number = rangeAt(p, start, end);
        if (isCounted(number) && (number.digits || joined === 'in' || joined === 'plus' || aside)) {
          const share = unitAt(p, number.end, end, SHARE_UNITS);
          if (share !== undefined) {
            readShare(p, tail, share.form.unit, number.low, share.end, end, p.span(number.first, number.last));
            p.use(k, share.end); k = share.end; continue;
          }
          const unit = unitAt(p, number.end, end);
          const unitEnd = unit?.end ?? number.end;
          const of = p.word(unitEnd) === 'of' ? unitEnd + 1 : unitEnd;
          const amount = makeAmount(p, number, unit, number.end, around);
          const perAt = p.word(unitEnd);
          if (unit !== undefined && (perAt === 'per' || perAt === 'pro' || perAt === 'je' || p.isMark(unitEnd, '/'))) {
            const per = perLitre(p, unitEnd + 1, end);
            if (per !== undefined) {
              const grams = unit.form.unit === 'mg' ? number.low / 1000 : number.low;
              tail.share = shareOf(p, per.kind === 'l' ? grams / per.amount : grams / (1000 * per.amount), per.kind === 'l' ? 'g per L' : 'mass', per.end, end, p.span(number.first, number.last));
              p.use(k, per.end); k = per.end; continue;
            }
          }
          if ((joined === 'in') && unit !== undefined) {
            const what = thingAt(p, of, end, measuredBy(unit.form.unit));
            if (what !== undefined) {
              p.use(k, what.end);
              const warm = what.treated.map((part) => treatments.get(foldJoin(p, part.from, part.end))).find((row) => row !== undefined && treatmentCelsius(row) !== undefined);
              tail.carrier = {
                kind: 'measure', path: p.path, span: p.span(k, what.end), amount, thing: what.thing, optional: false,
                treatments: what.treated.map((part) => ({ key: treatments.get(foldJoin(p, part.from, part.end))?.key ?? 'fresh', span: p.span(part.from, part.end) })),
                ...(warm !== undefined ? { temperature: { celsius: treatmentCelsius(warm) ?? 20, word: warm.key, span: p.span(of, what.end) } } : {}),
              };
              k = what.end; joined = null; continue;
            }
          }
          if (joined === 'plus' && unit !== undefined && !isNamed(p, of, end)) { tail.plus.push(amount); p.use(k, unitEnd); k = of; joined = null; continue; }
          if (!haveAmount && tail.amount === undefined && (unit !== undefined || number.digits)) {
            tail.amount = amount;
            tail.amountEnd = of;
            if (unit !== undefined) tail.unitName = unit.form.unit;
            p.use(k, unitEnd); k = unitEnd; continue;
          }
          const inBracket = enclosed(p, k, end);
          const slash = p.isMark(k - 1, '/') || p.isMark(k - 1, '=');
          if (inBracket || slash || around !== undefined) {
            // the same amount twice: "(60 ml)", "(about 1 lemon)"
            const other = unit === undefined ? thingAt(p, number.end, end, 'count') : undefined;
            if (unit === undefined && (other === undefined || other.thing.link.kind === 'unknown')) { k = number.end; continue; }
            if (tail.twin === undefined) tail.twin = unit === undefined ? { ...amount, unit: other === undefined ? null : 'piece' } : amount;
            p.use(k, other?.end ?? unitEnd); k = other?.end ?? unitEnd; continue;
          }
          if (isNamed(p, of, end)) {
            p.report('second-measure', number.first, unitEnd, { number: p.slice(number.first, unitEnd) });
            p.use(k, unitEnd); k = unitEnd; continue;
          }
        }
      }
    }
    if (token.kind === 'mark') {
      if (token.text === '@') joined = 'at';
      else if (token.text === '+') { joined = 'plus'; plus = true; }
      else if (token.text === ',' || token.text === ')' || token.text === ';') { if (token.text === ',') flush(); if (token.text === ',' && joined !== 'held') { joined = null; ahead(k + 1); k++; continue; } if (token.text !== ')' || joined !== 'held') joined = joined === 'held' ? 'held' : null; }
      k++;
      continue;
    }
    if (token.kind !== 'word') { k++; continue; }
    const word = token.fold;
    if (word === 'held' || word === 'kept' || word === 'gehalten') { flush(); joined = 'held'; p.use(k, k + 1); k++; continue; }
    const treatment = p.longest(k, end, 4, treatments);
    if (treatment !== undefined && treatment.value.key !== 'held' && !(treatment.value.key === 'large-t' && !enclosed(p, k, end))) {
      flush();
      treated = { key: treatment.value.key, span: p.span(k, treatment.end) };
      const celsius = treatmentCelsius(treatment.value);
      if (celsius !== undefined && tail.temperature === undefined && p.word(k - 1) !== 'in') tail.temperature = { celsius, word: treatment.value.key, span: p.span(k, treatment.end) };
      k = treatment.end;
      if (p.word(k) === 'and') k++;
      continue;
    }
    if (CARRIED.has(word)) {
      // "in cold water", "in a little hot water", "in a large bar glass": no amount, nothing to carry
      const number = rangeAt(p, approxAt(p, k + 1, end)?.end ?? k + 1, end);
      const what = number === undefined || number.low === null ? thingAt(p, number?.end ?? k + 1, end, 'volume') : undefined;
      if (what !== undefined && treated !== undefined) { k = what.end; continue; }
      joined = 'in';
      k++;
      continue;
    }
    if (word === 'at' || word === 'bei' || word === 'to' && treated !== undefined) { joined = joined === 'held' ? 'held' : 'at'; k++; continue; }
    if (word === 'plus') { joined = 'plus'; plus = true; k++; continue; }
    if (word === 'each' || word === 'je') tail.each = true;
    const loose = unitAt(p, k, end, NO_MEASURE);
    if (loose?.form.unit === 'to-taste') { tail.toTaste = true; k = loose.end; continue; }
    if (word === 'optional' || word === 'optionally') { tail.optional = true; k++; continue; }
    if (word === 'to' && (p.word(k + 1) === 'taste')) { tail.toTaste = true; k += 2; continue; }
    if (word === 'to' && p.word(k + 1) === 'finish' && alcoholic !== null && isSolid(alcoholic)) { tail.garnish = !plus; k += 2; continue; }
    if (word === 'to' && (p.word(k + 1) === 'garnish' || p.word(k + 1) === 'decorate') || word === 'for' && (p.word(k + 1) === 'garnish' || p.word(k + 1) === 'garnishing') || word === 'as' && (p.word(k + 1) === 'garnish' || p.word(k + 2) === 'garnish') || (word === 'zur' || word === 'als') && /^(deko|dekoration|garnitur|garnish)$/.test(p.word(k + 1))) { tail.garnish = !plus; k += 2; continue; }
    if ((word === 'to' || word === 'zum') && /^(top|fill|auffullen|auffuellen)$/.test(p.word(k + 1)) || word === 'auffullen' || word === 'topper') { tail.topUp = true; k += 2; continue; }
    if (word === 'from' && /^(freezer|fridge|refrigerator)$/.test(p.word(k + 1) === 'the' ? p.word(k + 2) : p.word(k + 1))) {
      const cold = (p.word(k + 1) === 'the' ? p.word(k + 2) : p.word(k + 1)) === 'freezer';
      const to = k + (p.word(k + 1) === 'the' ? 3 : 2);
      tail.temperature = { celsius: cold ? -18 : 4, word: cold ? 'frozen' : 'chilled', span: p.span(k, to) };
      k = to; continue;
    }
    if (word === 'aus' && /^(kuhlschrank|kuhlfach|kuhlung)$/.test(p.word(k + 2))) { tail.temperature = { celsius: 4, word: 'chilled', span: p.span(k, k + 3) }; k += 3; continue; }
    if (word === 'aus' && /^(tiefkuhler|gefrierschrank|tiefkuhlfach|tiefkuhlschrank|eisfach)$/.test(p.word(k + 2))) { tail.temperature = { celsius: -18, word: 'frozen', span: p.span(k, k + 3) }; k += 3; continue; }
    if ((word === 'or' || word === 'oder') && (k > from || thing !== null)) {
      const other = thingAt(p, k + 1, end, null);
      if (other !== undefined && other.thing.link.kind !== 'unknown') { tail.alternatives.push(other.thing); k = other.end; continue; }
    }
    if (/^(same|equal|half)$/.test(word)) {
      const equal = equalWeight(p, k, end);
      if (equal !== undefined) { tail.share = equal.share; p.use(k, equal.end); k = equal.end; continue; }
    }
    k++;
  }
  flush();
  if (tail.held !== undefined && !Number.isFinite(tail.held.celsius)) {
    if (tail.temperature !== undefined && tail.temperature.word === undefined) tail.held = { ...tail.held, celsius: tail.temperature.celsius };
    else delete tail.held;
  }
  return tail;
}

/** A folded join of the words from i to end. */
export function foldJoin(p: Phrase, i: number, end: number): string {
  let out = '';
  for (let k = i; k < end; k++) if (p.t[k]?.kind === 'word') out += p.word(k);
  return out;
}

/** Inside round brackets. */
export function enclosed(p: Phrase, i: number, end: number): boolean {
  for (let k = i - 1, depth = 0; k >= 0; k--) {
    const token = p.t[k];
    if (token?.kind !== 'mark') continue;
    if (token.text === ')' || token.text === ']') depth++;
    else if (token.text === '(' || token.text === '[') { if (depth === 0) return token.partner < 0 || token.partner >= i || token.partner >= end; depth--; }
  }
  return false;
}

export function perLitre(p: Phrase, i: number, end: number): { readonly kind: 'l' | 'kg'; readonly amount: number; readonly end: number } | undefined {
  const number = p.isNumber(i) ? p.t[i]?.value ?? 1 : 1;
  const k = p.isNumber(i) ? i + 1 : i;
  const unit = unitAt(p, k, end);
  if (!(number > 0)) return undefined;                                     // "per 0 ml" says nothing
  switch (unit?.form.unit) {
    case 'l': return { kind: 'l', amount: number, end: unit.end };
    case 'ml': return { kind: 'l', amount: number / 1000, end: unit.end };
    case 'dl': return { kind: 'l', amount: number / 10, end: unit.end };
    case 'kg': return { kind: 'kg', amount: number, end: unit.end };
    case 'g': return { kind: 'kg', amount: number / 1000, end: unit.end };
    default: return undefined;
  }
}

function readShare(p: Phrase, tail: Tail, unit: string, value: number, at: number, end: number, number: { from: number; to: number }): void {
  if (unit === 'g-per-l') tail.share = shareOf(p, value, 'g per L', at, end, number);
  else if (unit === 'g-per-100ml') tail.share = shareOf(p, value * 10, 'g per L', at, end, number);
  else if (unit === 'g-per-kg') tail.share = shareOf(p, value / 1000, 'mass', at, end, number);
  else if (unit === 'ml-per-l') tail.share = shareOf(p, value / 1000, 'volume', at, end, number);
  else if (unit === 'brix') tail.concentration = { value, span: number };
}

/** A share, with what `of` names. */
export function shareOf(p: Phrase, value: number, basis: Share['basis'], at: number, end: number, number: { from: number; to: number }): Share {
  if (/^(of|on|von|the)$/.test(p.word(at))) {
    const of = thingAt(p, at + 1, end, null);
    if (of !== undefined && of.thing.words !== '' && !/^(everything|whole|total|all|batch|mix)$/i.test(of.thing.words)) return { value, basis, of: [of.thing], number };
    if (of !== undefined && basis === 'mass') return { value, basis: 'mass of whole', number };
  }
  return { value, basis, number };
}

/** "same weight as the juice", "equal weight to juice", "half the weight of the juice". */
function equalWeight(p: Phrase, i: number, end: number): { readonly share: Share; readonly end: number } | undefined {
  let k = i, value = 1, basis: 'mass' | 'volume' = 'mass';
  if (p.word(k) === 'half') value = 0.5;
  let seen = false;
  for (; k < end && k < i + 5; k++) {
    if (/^(weight|mass)$/.test(p.word(k))) { seen = true; k++; break; }
    if (/^(volume|amount)$/.test(p.word(k))) { seen = true; basis = 'volume'; k++; break; }
  }
  if (!seen) return undefined;
  while (/^(as|to|of|with)$/.test(p.word(k))) k++;
  const of = k < end ? thingAt(p, k, end, null) : undefined;
  return { share: { value, basis, ...(of !== undefined ? { of: [of.thing] } : {}), number: p.span(i, i + 1) }, end: of?.end ?? k };
}
