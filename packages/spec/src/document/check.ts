import type { Action, Amount, Measure, Problem, Section } from '@washline/engine';
import { problem, type ProblemCode } from '../problems/codes.ts';
import type { Row } from '../text/rows.ts';
import { unitRow } from '../vocabulary/units.ts';
import { LIMITS } from './limits.ts';

/** Amounts that cannot be meant: beyond 1000 L (or kg), above 100 %, below absolute zero. */
export function checkAmounts(sections: readonly Section[], problems: Problem[], all: readonly Row[]): void {
  for (const section of sections) {
    for (const line of section.lines) {
      for (const action of line.actions) {
        const report = (code: ProblemCode, span: { from: number; to: number }, words: Record<string, string | number>): void => { problems.push(problem(code, action.path, line.line, span.from - (all[line.line - 1]?.from ?? 0) + 1, span, words)); };
        for (const measure of measuresOf(action)) {
          for (const amount of amountsOf(measure.amount)) if (tooLarge(amount)) report('amount-too-large', amount.number, { number: amount.high, limit: LIMITS.litres });
          if (measure.amount !== null && measure.share !== undefined) report('number-unused', measure.share.number, { number: all[line.line - 1] === undefined ? '' : line.text.slice(measure.share.number.from - line.span.from, measure.share.number.to - line.span.from) });
          const percent = measure.strength ?? measure.concentration;
          if (percent !== undefined && percent.value > 100 && !problems.some((one) => one.code === 'share-too-large' && one.span.from === percent.span.from)) report('share-too-large', percent.span, { number: percent.value });
        }
        for (const heat of temperaturesOf(action)) if (heat.celsius < -273.15) report('temperature-too-low', heat.span, { number: heat.celsius });
      }
    }
  }
}
function tooLarge(amount: Amount): boolean {
  if (amount.unit === null) return false;
  const row = unitRow(amount.unit, null);
  return row !== undefined && (row.of === 'ml' || row.of === 'g') && amount.high * row.factor > LIMITS.litres * 1000 || amount.high > 1e6;
}
export function measuresOf(action: Action): Measure[] {
  const first = action.kind === 'measure' ? action : action.kind === 'fill' || action.kind === 'step' ? action.measure ?? null : null;
  return first === null ? [] : first.carrier === undefined ? [first] : [first, first.carrier];
}
const amountsOf = (amount: Amount | null): Amount[] => (amount === null ? [] : [amount, ...(amount.twin === undefined ? [] : [amount.twin]), ...(amount.plus ?? [])]);
function temperaturesOf(action: Action): { celsius: number; span: { from: number; to: number } }[] {
  const out: { celsius: number; span: { from: number; to: number } }[] = [];
  for (const measure of measuresOf(action)) { if (measure.temperature !== undefined) out.push(measure.temperature); if (measure.held !== undefined) out.push(measure.held); }
  if (action.kind === 'step') { if (action.temperature !== undefined) out.push(action.temperature); if (action.ice?.temperature !== undefined) out.push(action.ice.temperature); }
  return out;
}
