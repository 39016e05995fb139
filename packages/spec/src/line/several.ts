import type { Amount, Measure } from '@washline/engine';
import { ratioAt } from '../phrase/facts.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { nameEnd, thingAt } from '../phrase/thing.ts';
import { build, type Measured } from './build.ts';
import { equalPartsEnd } from './german.ts';
import { amountAt, amountOf, type Start } from './head.ts';
import { EMPTY, shown } from './label.ts';
import { measuredBy } from './measured.ts';
import { readTail } from './tail.ts';

/** "equal parts gin, red bitter, sweet vermouth", "2 : 1 : ¾ rum, lime, syrup": one measure each. */
export function equalParts(p: Phrase, i: number, end: number): Measured | undefined {
  let k = i, parts: readonly number[] = [], numbers: readonly { from: number; to: number }[] = [];
  if (/^(equal)$/.test(p.word(k)) && /^(parts|measures|amounts|quantities)$/.test(p.word(k + 1))) { k += 2; if (p.word(k) === 'of') k++; if (p.isMark(k, ':')) k++; }
  else if (equalPartsEnd(p, i) > i) { k = equalPartsEnd(p, i); if (p.isMark(k, ':')) k++; }
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

/** "je 2 cl Limettensaft und Ananassirup": the word for each stands before the amount. */
export function eachFirst(p: Phrase, i: number, end: number): Measured | undefined {
  if (!/^(je|jeweils)$/.test(p.word(i))) return undefined;
  const start = amountAt(p, i + 1, end);
  if (start?.number === undefined || start.unit === undefined) return undefined;
  p.use(i, start.end);
  return eachOf(p, end, start.end, start, start.unit.form.unit);
}

export function eachOf(p: Phrase, end: number, from: number, start: Start, unit: string | null): Measured | undefined {
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
    const amount = amountOf(p, number, start, unit ?? 'piece');
    const made = build(p, k, last, { amount, unit, low: number.low, high: number.high }, what, tail, {}).measures[0];
    if (made !== undefined) measures.push(made);
    k = last;
    while (k < end && (p.isMark(k, ',') || p.isMark(k, '&') || p.isMark(k, '+') || p.isMark(k, '/') || /^(and|und)$/.test(p.word(k)))) k++;
  }
  if (measures.length === 0) return undefined;
  return { measures, label: { ...EMPTY, kind: 'measure', low: shown(number.low), high: shown(number.high), unit: unit ?? 'piece', ingredient: p.slice(listFrom, end).replace(/[.]$/, '').toLowerCase() }, garnish: false, topUp: false };
}

function listEnd(p: Phrase, i: number, end: number): number {
  for (let k = i; k < end; k++) {
    if (p.isMark(k, '(')) { const partner = p.t[k]?.partner ?? -1; if (partner > k) { k = partner; continue; } }
    if (p.isMark(k, ',') || p.isMark(k, '/') || p.isMark(k, '&') || p.isMark(k, '+') || ((p.word(k) === 'and' || p.word(k) === 'und') && nameEnd(p, i, end) <= k)) return k;
  }
  return end;
}
