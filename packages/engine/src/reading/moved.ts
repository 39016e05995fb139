import type { Action, Document, Measure } from '../document/types.ts';
import type { Compiled } from '../program/compile.ts';

/** A unit whose number does not go into the run as it is written, times what the unit is: parts that make up one are of a whole drink. */
const OF_A_WHOLE = 'part';

/**
 * Which input is another number now, and which: where a text differs from the one that was compiled in the number of one plain amount and in nothing else, as it
 * does while a digit is typed or an amount is turned. Null where more has changed, or where that amount is not one the program takes.
 * @source none - definition
 */
export function movedTo({ ctx, program }: Pick<Compiled, 'ctx' | 'program'>, document: Document): { readonly input: number; readonly value: number } | null {
  const old = ctx.document, a = old.text, b = document.text;
  if (a === b || document.problems.length !== old.problems.length || document.cut !== old.cut) return null;
  let from = 0, end = 0;
  const least = Math.min(a.length, b.length);
  while (from < least && a.charCodeAt(from) === b.charCodeAt(from)) from++;
  while (end < least - from && a.charCodeAt(a.length - 1 - end) === b.charCodeAt(b.length - 1 - end)) end++;
  const within = ({ number }: NonNullable<Measure['amount']>, text: string): boolean => number.from <= from && text.length - end <= number.to;
  const one = find(ctx.sections, (amount) => within(amount, a)), two = find(document.sections, (amount) => within(amount, b));
  if (!one || !two || one.path.join('/') !== two.path.join('/') || one.thing.words !== two.thing.words || one.thing.link.kind !== two.thing.link.kind) return null;
  const was = one.amount!, is = two.amount!;
  if (was.number.from !== is.number.from || was.unit !== is.unit || !plain(was) || !plain(is)) return null;
  const path = one.path.join('/'), inputs = program.inputs.flatMap((input, i) => (input.key.startsWith('pour/') && input.at?.join('/') === path ? [i] : []));
  if (inputs.length !== 1) return null;
  return { input: inputs[0]!, value: (program.inputs[inputs[0]!]!.value * is.low) / was.low };
}

const plain = ({ low, high, unit, plus, twin, factorLow, factorHigh, otherCustom }: NonNullable<Measure['amount']>): boolean =>
  low === high && low > 0 && unit !== OF_A_WHOLE && (plus?.length ?? 0) === 0 && twin === undefined && factorLow === undefined && factorHigh === undefined && otherCustom !== true;

/** The measure of a line whose amount is meant; of lines that hold one thing alone. */
function find(sections: Document['sections'], meant: (amount: NonNullable<Measure['amount']>) => boolean): Measure | null {
  for (const section of sections) for (const { actions } of section.lines) {
    const [action] = actions as [Action?], measure = actions.length !== 1 ? null : action?.kind === 'measure' ? action : action?.kind === 'fill' ? action.measure : null;
    if (measure != null && measure.amount !== null && meant(measure.amount)) return measure;
  }
  return null;
}
