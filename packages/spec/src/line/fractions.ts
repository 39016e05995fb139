import type { Amount, Measure } from '@washline/engine';
import type { Phrase } from '../phrase/phrase.ts';
import { thingAt } from '../phrase/thing.ts';
import { unitAt } from '../phrase/amount.ts';
import { build, type Measured } from './build.ts';
import { EMPTY, shown } from './label.ts';
import { readTail } from './tail.ts';

/** "⅔ dry gin, ⅓ French vermouth": fractions of one drink, each before its thing. */
export function fractionList(p: Phrase, i: number, end: number): Measured | undefined {
  const starts: number[] = [];
  for (let k = i; k < end; k++) {
    const fresh = k === i || p.isMark(k - 1, ',') || p.isMark(k - 1, ';') || p.isMark(k - 1, '+') || p.isMark(k - 1, '&') || p.word(k - 1) === 'and' || p.word(k - 1) === 'und';
    if (fresh && p.isNumber(k) && isFraction(p, k) && unitAt(p, k + 1, end) === undefined) starts.push(k);
  }
  if (starts.length < 2 || starts[0] !== i) return undefined;
  const used = p.used.slice(), measures: Measure[] = [];
  for (const [n, at] of starts.entries()) {
    let last = n + 1 < starts.length ? starts[n + 1]! : end;
    while (last > at + 1 && (p.t[last - 1]?.kind === 'mark' || p.word(last - 1) === 'and' || p.word(last - 1) === 'und')) last--;
    const what = thingAt(p, at + 1, last, 'volume');
    if (what === undefined || what.thing.link.kind === 'unknown') { p.used.set(used); return undefined; }
    p.use(at, at + 1);
    const value = p.t[at]?.value ?? 1;
    const amount: Amount = { low: value, high: value, unit: 'part', number: p.span(at, at + 1) };
    const made = build(p, at, last, { amount, unit: 'part', low: value, high: value }, what, readTail(p, what.end, last, what.thing, true, at + 1), {}).measures[0];
    if (made !== undefined) measures.push(made);
  }
  const first = p.t[i]?.value ?? 1;
  return { measures, label: { ...EMPTY, kind: 'measure', low: shown(first), high: shown(first), unit: 'part', ingredient: p.slice(i + 1, end).replace(/[.]$/, '').toLowerCase() }, garnish: false, topUp: false };
}
const isFraction = (p: Phrase, k: number): boolean => p.t[k]?.fraction === true && (p.t[k]?.value ?? 1) < 1;
