import type { Step } from '../document/types.ts';
import { stepSeconds } from '../preps/prep.ts';
import type { Context, PrepBuilt, Put, RemedySeed } from '../program/context.ts';
import type { ProbeOp } from '../program/program.ts';

/** How warm a place usually is, whatever a bench says of its own. °C @source common-practice table data/assumptions.tsv */
export function usualAt(ctx: Context, place: 'room' | 'fridge' | 'freezer'): number { return Number((ctx.tables.under ?? ctx.tables).assumption(`place/${place}`)!.value); }

/** How warm it is where a thing stands in a step: as written, else the usual place of its verb. °C @source common-practice */
export function standsAt(ctx: Context, x: Step): number { return x.temperature?.celsius ?? usualAt(ctx, x.verb === 'freeze' ? 'freezer' : /^(chill|store|thaw)$/.test(x.verb) ? 'fridge' : 'room'); }

/** How long steps last together, in units of so many seconds; undefined where one of them lasts until it is done. `weight`: what an hour of a step counts. */
export function timeOf(ctx: Context, prep: PrepBuilt, steps: readonly Step[], unit: number, weight: (x: Step) => number = () => 1): ProbeOp | undefined {
  const inputs = steps.map((x) => stepSeconds(ctx, x, true, prep.section.method)), weights = steps.map(weight);
  if (inputs.some((i) => i < 0)) return undefined;
  return ({ x }, out, i) => { let sum = 0; for (let k = 0; k < inputs.length; k++) sum += x[inputs[k]!]! * weights[k]!; out[i] = sum / unit; };
}

/** The first time that is written in steps made another; `otherwise` where none is. */
export function lasting(steps: readonly Step[], literal: string, otherwise: RemedySeed['splices']): RemedySeed['splices'] {
  const seconds = steps.find((x) => x.seconds)?.seconds;
  return seconds ? [{ from: seconds.span.from, to: seconds.span.to, literal }] : otherwise;
}

/** g of things together. */
export function gramsOf(puts: readonly Put[], s: Float64Array): number { let g = 0; for (let k = 0; k < puts.length; k++) g += s[puts[k]!.g]!; return g; }
