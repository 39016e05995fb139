import type { Amount, Garnish, Thing } from '@washline/engine';
import { isCounted, makeAmount, numberAt, rangeAt, unitAt } from '../phrase/amount.ts';
import { compoundUnit } from '../names/compound.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { nameEnd, thingAt } from '../phrase/thing.ts';
import { words } from '../vocabulary/vocabulary.ts';
import { linkWords } from './build.ts';
import { EMPTY, shown, type Label } from './label.ts';

const garnishes = words('garnish');
const LED = /^(with|by|in|of|over|using|mit|and|some|a bit|the|the drink|drink|glass|each|it|fresh|freshly|a little|little|lightly|adding|on|top|generously)$/;

export interface GarnishAt { readonly garnish: Garnish; readonly label: Label }

/** What a garnish names, from behind its verb, its preposition or its colon. */
export function readGarnish(p: Phrase, i: number, from: number, end: number): GarnishAt | undefined {
  let k = from;
  if (p.isMark(k, ':') || p.isDash(k)) k++;
  while (k < end && (LED.test(p.word(k)) || (p.word(k) === 'drink' && p.word(k + 1) === 'with'))) k++;
  let unit: string | null = null, amount: Amount | null = null, low: number | null = null, high: number | null = null;
  const number = /^(a)$/.test(p.word(k)) && /^(bit|little|dusting|grating|light)$/.test(p.word(k + 1)) ? undefined : rangeAt(p, k, end);
  if (number !== undefined) {
    let at = number.end;
    while (/^(large|long|thin|small|nice|fresh|big|wide|whole|good|generous|single|piece|pieces)$/.test(p.word(at)) && !(p.word(at) === 'piece' || p.word(at) === 'pieces')) at++;
    const found = unitAt(p, at, end);
    const of = found !== undefined && (p.word(found.end) === 'of' || found.form.unit === 'piece' || p.word(found.end) === 'von');
    if (found !== undefined && found.form.of !== 'mm' && (of || /^(ml|g|sprig|leaf|dash|drop|pinch|slice|wedge|spray|cube|strip|cl|oz|barspoon)$/.test(found.form.unit) && thingAt(p, found.end, end, 'count') !== undefined && found.form.unit !== 'strip')) {
      unit = found.form.unit === 'strip' || found.form.unit === 'pod' || found.form.unit === 'stick' ? 'piece' : found.form.unit;
      amount = isCounted(number) ? { ...makeAmount(p, number, found, at, undefined), unit } : null;
      k = p.word(found.end) === 'of' || p.word(found.end) === 'von' ? found.end + 1 : found.end;
    } else { unit = 'piece'; amount = isCounted(number) ? { ...makeAmount(p, number, undefined, 0, undefined), unit } : null; k = number.end; }
    low = number.low;
    high = number.high;
    p.use(number.first, k);
  } else if (/^(piece|sprig|slice|wedge|twist|wheel|leaf|strip|swath|pinch|dash|zweig|scheibe)$/.test(p.word(k)) && /^(of|von)$/.test(p.word(k + 1))) {
    const found = unitAt(p, k, end);
    unit = found === undefined || found.form.unit === 'strip' || p.word(k) === 'wheel' ? 'piece' : found.form.unit;
    amount = { low: 1, high: 1, unit, number: { from: p.span(k, k + 1).from, to: p.span(k, k + 1).from }, unitSpan: p.span(k, k + 1) };
    low = high = 1;
    k += 2;
  }
  const what = thingAt(p, k, firstEnd(p, k, end), 'count');
  if (what === undefined) {
    if (number === undefined) return undefined;
    const self = thingAt(p, number.end, end, 'count');
    if (self === undefined) return undefined;
    return made(p, i, end, self.thing, self.label, amount, 'piece', low, high);
  }
  let label = what.label, shownUnit = unit, thing = what.thing;
  const compound = thing.link.kind === 'unknown' ? compoundUnit(what.thing.words) : undefined;
  if (compound !== undefined) thing = { ...thing, link: linkWords(p, compound.rest, 'count') };
  if (shownUnit === 'piece' && number !== undefined) {
    const behind = /^(.*\S)[\s-]+(leaf|leaves|sprigs?|slices?|wedges?|cubes?)$/.exec(label);
    if (behind !== null) { shownUnit = /^lea/.test(behind[2] ?? '') ? 'leaf' : (behind[2] ?? '').replace(/s$/, ''); label = behind[1] ?? label; }
  }
  for (let n = what.end; n < end; n++) {
    const more = p.isNumber(n) ? numberAt(p, n, end) : undefined;
    if (more !== undefined && amount !== null && unitAt(p, more.end, end)?.form.of === 'mm') p.use(n, more.end + 1);
  }
  return made(p, i, end, thing, label, amount === null ? null : { ...amount, unit: shownUnit }, shownUnit, low, high);
}
/** The first thing of several: up to "and", unless a known name goes on. */
function firstEnd(p: Phrase, i: number, end: number): number {
  for (let k = i + 1; k < end; k++) if (/^(and|und|or|plus)$/.test(p.word(k)) && nameEnd(p, i, end) <= k) return k;
  return end;
}
function made(p: Phrase, i: number, end: number, thing: Thing, label: string, amount: Amount | null, unit: string | null, low: number | null, high: number | null): GarnishAt {
  return { garnish: { kind: 'garnish', path: p.path, span: p.span(i, end), thing, amount }, label: { ...EMPTY, kind: 'garnish', low: shown(low), high: shown(high), unit: low === null && unit === 'piece' ? null : unit, ingredient: label } };
}

const FINISH = /^(?:.*(?:twist|wheel|rim|sprig|wedge|zest|swath|coin|curl|crown|frond|umbrella|straw|skewer|cherry|olive|onion|expressed peel)s?)$/;
/** True for words that name a finish on a drink ("salt rim", "lemon twist"). */
export function isFinish(label: string): boolean { return FINISH.test(label) || garnishes.has(label.replace(/[^a-z]/g, '')); }
/** What is put in singly on top counts as garnish behind "add" or "drop" ("add a pickled onion"). */
export const isDropped = (label: string): boolean => /(onion|olive|cherry|cherries|olives|onions|twist|wheel|straw|umbrella|sprig|wedge)$/.test(label);
