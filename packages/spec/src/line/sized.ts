import { makeAmount, rangeAt, unitAt, isCounted, type Counted, type NumberAt, type UnitAt } from '../phrase/amount.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { thingAt } from '../phrase/thing.ts';
import { build, type Measured } from './build.ts';
import { HOLDERS } from './holders.ts';
import type { Start } from './head.ts';
import { readTail } from './tail.ts';

/** "400 ml can coconut milk": what is in it, all of it; null where the line reads otherwise, undefined where nothing is known of what is in it. */
function wholeCan(p: Phrase, i: number, end: number, start: Start, number: Counted): Measured | undefined | null {
  const { unit } = start;
  if (unit === undefined || (unit.form.of !== 'ml' && unit.form.of !== 'g') || !/^(can|tin|dose)$/.test(p.word(unit.end)) || /^(\d) (\d{3})$/.test(p.slice(number.first, number.last))) return null;
  const what = thingAt(p, p.word(unit.end + 1) === 'of' ? unit.end + 2 : unit.end + 1, end, 'volume');
  if (what === undefined) return undefined;
  p.use(i, unit.end + 1);
  return build(p, i, end, { amount: makeAmount(p, number, unit, start.unitFrom, start.factors), unit: unit.form.unit, low: number.low, high: number.high }, what, readTail(p, what.end, end, what.thing, true, what.first), {});
}

/** "1 14-oz can coconut milk", "1 (750-ml) bottle rum", "one 750 ml bottle of vodka": so many of a size. */
export function sizedCount(p: Phrase, i: number, end: number, start: Start): Measured | undefined {
  const number = start.number;
  if (!isCounted(number)) return undefined;
  const can = wholeCan(p, i, end, start, number);
  if (can !== null) return can;
  let count: Counted = number, size: NumberAt | undefined, sizeUnit: UnitAt | undefined, unitFrom = number.end, k = number.end, holder: UnitAt | undefined, holderFrom = 0;
  const thousands = /^(\d) (\d{3})$/.exec(p.slice(number.first, number.last));
  if (thousands !== null && start.unit !== undefined) {
    count = { ...number, low: Number(thousands[1]), high: Number(thousands[1]) };
    size = { ...number, low: Number(thousands[2]), high: Number(thousands[2]) };
    sizeUnit = start.unit;
    k = start.unit.end;
  } else if (start.unit !== undefined && HOLDERS.has(start.unit.form.unit) && p.word(start.unit.end) === 'of' && p.isNumber(start.unit.end + 1)) {
    // "2 cans of 400 ml coconut milk"
    holder = start.unit; holderFrom = start.unitFrom;
    size = rangeAt(p, start.unit.end + 1, end);
    unitFrom = size?.end ?? k;
    sizeUnit = unitAt(p, unitFrom, end);
    k = sizeUnit?.end ?? k;
  } else if (start.unit === undefined || p.isNumber(number.end)) {
    if (p.isMark(k, '×') || p.word(k) === 'x') k++;
    const bracket = p.isMark(k, '(');
    if (bracket) k++;
    size = rangeAt(p, k, end);
    if (size === undefined || !size.digits) return undefined;
    unitFrom = p.isHyphen(size.end) ? size.end + 1 : size.end;
    sizeUnit = unitAt(p, unitFrom, end);
    k = sizeUnit?.end ?? k;
    if (bracket) { if (!p.isMark(k, ')')) return undefined; k++; }
  }
  if (!isCounted(size) || sizeUnit === undefined || (sizeUnit.form.of !== 'ml' && sizeUnit.form.of !== 'g')) return undefined;
  if (holder === undefined) { holder = unitAt(p, k, end); holderFrom = k; k = holder?.end ?? k; }
  if (holder === undefined || !HOLDERS.has(holder.form.unit)) return undefined;
  const from = p.word(k) === 'of' ? k + 1 : k;
  const what = thingAt(p, from, end, 'volume');
  if (what === undefined) return undefined;
  p.use(i, k);
  const tail = readTail(p, what.end, end, what.thing, true, what.first);
  const at = p.span(number.first, number.last);
  const digits = thousands === null ? at : { from: at.from, to: at.from + 1 };
  const twinAt = thousands === null ? p.span(size.first, size.last) : { from: at.from + 2, to: at.to };
  tail.twin ??= { ...makeAmount(p, size, sizeUnit, unitFrom, undefined), number: twinAt, each: true };
  return build(p, i, end, { amount: { ...makeAmount(p, count, holder, holderFrom, undefined), number: digits }, unit: holder.form.unit, low: count.low, high: count.high }, what, tail, {});
}
