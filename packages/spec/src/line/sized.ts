import { makeAmount, rangeAt, unitAt, type NumberAt, type UnitAt } from '../phrase/amount.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { thingAt } from '../phrase/thing.ts';
import { build, type Measured } from './build.ts';
import { HOLDERS } from './holders.ts';
import type { Start } from './head.ts';
import { readTail } from './tail.ts';



/** "1 14-oz can coconut milk", "1 (750-ml) bottle rum", "one 750 ml bottle of vodka": so many of a size. */
export function sizedCount(p: Phrase, i: number, end: number, start: Start): Measured | undefined {
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
    if (p.isMark(k, '×') || p.word(k) === 'x') k++;
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
