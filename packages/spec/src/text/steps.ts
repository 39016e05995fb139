import type { Amount, Document, Path, Splice } from '@washline/engine';
import { actionAt, amountOf, measureOf, setAmount } from './set-amount.ts';

/** Steps a hand measures by, by unit: from an amount on, the step and the fine step. The largest amount that is reached counts. @source common-practice */
const STEPS: Readonly<Record<string, readonly (readonly [from: number, step: number, fine: number])[]>> = {
  ml: [[0, 0.5, 0.1], [5, 2.5, 0.5], [100, 10, 2.5], [1000, 50, 10]],
  cl: [[0, 0.05, 0.01], [0.5, 0.25, 0.05], [10, 1, 0.25]],
  l: [[0, 0.01, 0.0025], [0.1, 0.05, 0.01]],
  oz: [[0, 0.25, 0.125], [8, 1, 0.25]],
  g: [[0, 0.05, 0.01], [1, 0.1, 0.05], [10, 1, 0.1], [100, 5, 1], [1000, 50, 5]],
  kg: [[0, 0.01, 0.001], [0.1, 0.05, 0.005]],
  dash: [[0, 1, 1]], drop: [[0, 1, 1]],
  piece: [[0, 0.5, 0.25], [4, 1, 0.5]], sheet: [[0, 0.5, 0.25]],
};
/** What is counted or spooned in another unit. @source common-practice */
const OTHERS = [[0, 0.5, 0.25], [8, 1, 0.5]] as const;

/**
 * How far one step goes from an amount: of a jigger, a jug, a scale, a count.
 * @param unit as it is written; null for a count
 * @param value in that unit
 * @returns in that unit, above 0
 * @source common-practice
 */
export function stepOf(unit: string | null, value: number, fine: boolean): number {
  let found = 0.5;
  for (const [from, step, small] of STEPS[unit ?? 'piece'] ?? OTHERS) if (value >= from - 1e-9) found = fine ? small : step;
  return found;
}

/**
 * The amount so many steps away. The first lands on the step's own marks: 22 ml goes up to 22.5, down to 20.
 * @param unit,value as in `stepOf`
 * @param steps whole, negative downwards
 * @returns in the unit; never below one step, so that no line loses its amount
 * @source none - definition
 */
export function stepped(unit: string | null, value: number, steps: number, fine: boolean): number {
  let now = value;
  for (let left = Math.abs(steps); left > 0; left--) {
    // downwards the step is that of the amount below: 100 ml goes down to 97.5
    const step = stepOf(unit, steps > 0 ? now : now - 1e-6, fine), marks = now / step;
    const next = (steps > 0 ? Math.floor(marks + 1e-6) + 1 : Math.ceil(marks - 1e-6) - 1) * step;
    if (next <= 1e-9) return now;
    now = Number(next.toPrecision(10));
  }
  return now;
}

/** What can be turned at a path: the amount as it is written, the middle of a range; null where there is none. */
export function turnable(document: Document, path: Path, variant: string | null = null): { readonly amount: Amount; readonly value: number } | null {
  const action = actionAt(document, path, variant), amount = action === undefined ? null : amountOf(action);
  return amount === null || (amount.plus?.length ?? 0) > 0 ? null : { amount, value: (amount.low + amount.high) / 2 };
}

/**
 * The splices that turn a line's amount by so many steps of its jigger, jug or scale.
 * @param steps whole, negative downwards
 * @returns empty where the line has no amount, or stands at its last step
 * @source none - definition
 */
export function turn(document: Document, path: Path, steps: number, fine: boolean, variant: string | null = null): Splice[] {
  const at = turnable(document, path, variant);
  if (at === null || steps === 0) return [];
  const value = stepped(at.amount.unit, at.value, steps, fine);
  return value === at.value ? [] : setAmount(document, path, value, variant, true);
}

/**
 * The splices that make more or less of a whole build: every amount times `factor`, each to its own fine step, shares kept as near as those allow.
 * Ice, counts of what garnishes and preps' own lines stay as they are.
 * @param factor above 0
 * @source none - definition
 */
export function scaled(document: Document, factor: number, variant: string | null = null): Splice[] {
  const build = document.sections.find((s) => s.kind === 'build' && s.variant === variant) ?? document.sections.find((s) => s.kind === 'build');
  if (build === undefined || !(factor > 0)) return [];
  const out: Splice[] = [];
  for (const line of build.lines) for (const action of line.actions) {
    if (measureOf(action) === null) continue;
    const at = turnable(document, action.path, variant);
    if (at === null) continue;
    const { unit } = at.amount, wanted = at.value * factor, fine = stepOf(unit, wanted, true);
    const value = Math.max(fine, Number((Math.round(wanted / fine) * fine).toPrecision(10)));
    if (Math.abs(value - at.value) > 1e-9) out.push(...setAmount(document, action.path, value, variant, true));
  }
  return out;
}
