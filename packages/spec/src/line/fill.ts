import type { Fill, IceWritten, Measure, Thing } from '@washline/engine';
import { approxAt, isCounted, makeAmount, rangeAt, unitAt } from '../phrase/amount.ts';
import { iceAt } from '../phrase/ice.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { thingAt } from '../phrase/thing.ts';
import { treatedOf } from './build.ts';
import { EMPTY, shown, type Label } from './label.ts';
import { readMeasure } from './measure.ts';
import { readTail } from './tail.ts';
import { glasses } from './step.ts';

const FILLS = new Map([['top', 'top'], ['fill', 'fill'], ['lengthen', 'lengthen'], ['crown', 'crown'], ['float', 'float'], ['layer', 'float'], ['sink', 'sink']]);
export const isFill = (verb: string): boolean => FILLS.has(verb);

const SKIPPED = /^(up|off|with|by|the|balance|rest|glass|it|of|a|remaining|tin|shaker|to|drink|remainder|brim|almost|nearly|slowly|gently|gentle|carefully|everything|brim|top|halfway|mit|das|glas|dem|rest|den|drinks?|in|on|some|little|again|then|completely|generously|liberally|each|quickly|over|by)$/;

export interface FillAt { readonly fill: Fill; readonly label: Label }

/** "top with soda", "fill the glass 3/4 full of shaved ice", "float 10 ml rum" from behind the verb. */
export function readFill(p: Phrase, i: number, verb: string, from: number, end: number): FillAt | undefined {
  const name = FILLS.get(verb) ?? 'fill';
  const label = { ...EMPTY, kind: 'fill' as const };
  const full = vesselFull(p, from, end);
  if (full !== undefined) return brim(p, i, name, full, end);
  let k = from;
  if (p.isMark(k, ':') || p.isDash(k)) k++;
  const share = rangeAt(p, k, end);
  const behind = share === undefined ? k : p.isHyphen(share.end) ? share.end + 1 : share.end;
  if (share !== undefined && share.fraction && /^(with|full|of|mit|voll)$/.test(p.word(behind))) {
    let thing = behind;
    while (/^(with|full|of|mit|voll)$/.test(p.word(thing))) thing++;
    const part = brim(p, i, name, { share, thing, glass: k }, end);
    if (part !== undefined) return part;
  }
  // "fill medium bar glass with …": the vessel before "with" or "full"
  let vessel = vesselAt(p, k, end);
  if (vessel !== undefined && p.word(vessel) === 'to') { const top = p.word(vessel + 1) === 'the' ? vessel + 2 : vessel + 1; if (/^(top|brim|rim)$/.test(p.word(top))) vessel = top + 1; }
  if (vessel !== undefined && /^(with|mit)$/.test(p.word(vessel))) k = vessel + 1;
  else while (k < end && SKIPPED.test(p.word(k)) && !startsPortion(p, k) && !(/^an?$/.test(p.word(k)) && /^(slice|splash|dash|sprig|wedge|spoonful|barspoon|layer|pony|jigger)$/.test(p.word(k + 1)) && thingAt(p, p.word(k + 2) === 'of' ? k + 3 : k + 2, end, 'volume') !== undefined)) k++;
  const approx = approxAt(p, k, end);
  const number = rangeAt(p, approx?.end ?? k, end);
  if (number === undefined || number.article === true || unitAt(p, number.end, end) === undefined) {
    const ice = iceAt(p, k, end);
    if (ice !== undefined) return withIce(p, i, name, ice.ice, ice.words, label, end);
  } else {
    const ice = iceAt(p, k, end);
    if (ice !== undefined) return withIce(p, i, name, ice.ice, ice.words, { ...label, low: shown(ice.ice.mass?.low), high: shown(ice.ice.mass?.high), unit: ice.ice.mass?.unit ?? null }, end);
  }
  const read = number !== undefined && (number.digits || number.article !== true || unitAt(p, number.end, end) !== undefined) ? readMeasure(p, k, end) : portionOr(p, k, end);
  const measure = read?.measures[0];
  if (read === undefined || measure === undefined) {
    const what = thingAt(p, k, end, 'volume');
    if (what === undefined) return undefined;
    const tail = readTail(p, what.end, end, what.thing, false, what.first);
    const amount = tail.amount ?? null;
    const { treated, warm } = treatedOf(p, what), temperature = tail.temperature ?? warm;
    const plain: Measure = { kind: 'measure', path: p.path, span: p.span(what.first, end), amount, thing: what.thing, treatments: [...treated, ...tail.treatments.filter((treatment) => treatment.key !== 'time')], optional: tail.optional, ...(temperature !== undefined ? { temperature } : {}), ...(tail.strength !== undefined ? { strength: tail.strength } : {}), ...(tail.ratio !== undefined ? { ratio: tail.ratio } : {}), ...(what.alternatives.length > 0 ? { alternatives: what.alternatives } : {}) };
    return { fill: { kind: 'fill', path: p.path, span: p.span(i, end), verb: name, measure: plain }, label: { ...label, low: shown(amount?.low), high: shown(amount?.high), unit: amount?.unit ?? null, ingredient: what.label, celsius: shown(tail.celsius), strength: shown(tail.strength?.value) } };
  }
  const { low, high, unit, ingredient, strength, celsius } = read.label;
  return { fill: { kind: 'fill', path: p.path, span: p.span(i, end), verb: name, measure }, label: { ...label, low, high, unit, ingredient, strength, celsius } };
}
function portionOr(p: Phrase, k: number, end: number): ReturnType<typeof readMeasure> {
  return /^(all|rest|remaining|remainder|a|an|dash|splash|some)$/.test(p.word(k)) || p.word(k) === 'the' ? readMeasure(p, k, end) : undefined;
}
/** "the rest of the …" is what is meant, not a word to pass over. */
function startsPortion(p: Phrase, k: number): boolean {
  const of = p.word(k) === 'the' ? k + 2 : k + 1;
  if (/^(glass|goblet|tumbler|drink)$/.test(p.word(of + 1) === 'the' ? p.word(of + 2) : p.word(of + 1))) return false;
  return (p.word(k) === 'rest' && p.word(k + 1) === 'of') || (p.word(k) === 'the' && /^(rest|remaining|remainder|balance)$/.test(p.word(k + 1)) && p.word(k + 2) === 'of');
}

function withIce(p: Phrase, i: number, verb: string, ice: IceWritten, words: string, label: Label, end: number): FillAt {
  return { fill: { kind: 'fill', path: p.path, span: p.span(i, end), verb, measure: null, ice }, label: { ...label, ingredient: words } };
}

interface Full { readonly share: ReturnType<typeof rangeAt>; readonly thing: number; readonly glass: number }
/** "[large bar glass] 3/4 full [of|with] …" from i. */
export function vesselFull(p: Phrase, i: number, end: number): Full | undefined {
  const glass = vesselAt(p, i, end);
  if (glass === undefined) return undefined;
  let k = p.isMark(glass, ',') ? glass + 1 : glass;
  while (/^(about|nearly|almost|not|quite|half|up|is|to|the|brim|very|fully|completely|just|over|under|zu|fast)$/.test(p.word(k)) && p.word(k) !== 'full' && rangeAt(p, k, end) === undefined) k++;
  const share = rangeAt(p, k, end);
  const after = share === undefined ? k : p.isHyphen(share.end) ? share.end + 1 : share.end;
  if (p.word(after) !== 'full' && p.word(after) !== 'filled' && p.word(after) !== 'voll') {
    if (share === undefined || !share.fraction || !/^(with|of|mit)$/.test(p.word(after))) return undefined;
    return { share, thing: after + 1, glass };
  }
  let thing = after + 1;
  while (/^(of|with|mit|von)$/.test(p.word(thing))) thing++;
  return { share, thing, glass };
}
/** The end of a vessel's name that begins at i, its adjectives with it. */
export function vesselAt(p: Phrase, i: number, end: number): number | undefined {
  for (let k = i; k < Math.min(end, i + 8); k++) {
    const found = p.longest(k, end, 4, glasses);
    if (found !== undefined) {
      let to = found.end;
      if (/^(glass|glasses|glas|mug|cup|tin)$/.test(p.word(to))) to++;
      return to;
    }
    if (/^(glass|glasses|goblet|tumbler|mug|vessel|tin|pitcher|glas|schooner)$/.test(p.word(k))) return k + 1;
    const token = p.t[k];
    if (token === undefined || token.kind === 'bad' || (token.kind === 'mark' && !p.isMark(k, ',') && !p.isHyphen(k) && !p.isMark(k, '-')) || /^(with|full|of|mit)$/.test(p.word(k))) return undefined;
  }
  return undefined;
}

/** The first glass or vessel of a kind that is named from i on. */
export function glassIn(p: Phrase, i: number, end: number): Fill['into'] {
  for (let k = i; k < end; k++) {
    const found = p.longest(k, end, 4, glasses);
    // "1 cup ice", "a cup of ice" are amounts
    if (found !== undefined && !p.isNumber(k - 1) && p.word(found.end) !== 'of' && iceAt(p, found.end, end) === undefined) return { key: found.value.key, span: p.span(k, found.end) };
  }
  return undefined;
}

export function brim(p: Phrase, i: number, verb: string, full: Full, end: number): FillAt | undefined {
  const share = full.share;
  if (share !== undefined) p.use(share.first, share.last);
  for (let k = i; k < full.glass; k++) if (p.isNumber(k)) p.use(k, k + 1);
  const amount = isCounted(share) ? { ...makeAmount(p, share, undefined, 0, undefined), unit: 'glass' } : null;
  const label: Label = { ...EMPTY, kind: 'fill', low: shown(share?.low), high: shown(share?.high), unit: amount === null ? null : 'glass' };
  const ice = iceAt(p, full.thing, end);
  if (ice !== undefined) {
    const written: IceWritten = amount === null ? ice.ice : { ...ice.ice, mass: amount };
    return withIce(p, i, verb, written, ice.words, label, end);
  }
  const what = thingAt(p, full.thing, end, 'volume');
  if (what === undefined) return undefined;
  const tail = readTail(p, what.end, end, what.thing, true, what.first);
  const thing: Thing = what.thing, { treated, warm } = treatedOf(p, what), temperature = tail.temperature ?? warm;
  return { fill: { kind: 'fill', path: p.path, span: p.span(i, end), verb, measure: { kind: 'measure', path: p.path, span: p.span(full.thing, end), amount, thing, treatments: [...treated, ...tail.treatments], optional: false, ...(temperature !== undefined ? { temperature } : {}) } }, label: { ...label, ingredient: what.label } };
}
