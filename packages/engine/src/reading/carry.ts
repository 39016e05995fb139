import type { Compiled } from '../program/compile.ts';
import type { Program } from '../program/program.ts';
import type { Spreads } from './spread.ts';

/** A compiled spec and the ranges found for it. */
export interface Ranged { readonly compiled: Compiled; readonly spreads: Spreads }

/**
 * Values of a program at its nominal, each with the range that the same figure had in an earlier reading, moved along with it: for the one
 * frame that cannot wait for ranges. What was near its limit stays near, and what was not does not come near, unless its value is
 * beyond: a warning neither comes nor goes before its range is known. `value`: all probes, where they are not those of the program's own nominal. Null where the two do not have the same figures and inputs.
 * @source none - definition
 */
export function carry(program: Program, before: Ranged, value: Float64Array = program.usual.value): Spreads | null {
  const old = before.compiled.program, was = before.spreads, n = program.probes.length;
  if (old.probes.length !== n || old.inputs.length !== program.inputs.length) return null;
  if (!program.probes.every((p, k) => p.name === old.probes[k]!.name && p.of === old.probes[k]!.of)) return null;
  if (!program.inputs.every((input, i) => input.key === old.inputs[i]!.key)) return null;
  const low = new Float64Array(n), high = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const v = value[k]!, known = Number.isFinite(was.value[k]!);
    // a figure that could not be known has left no range; one that no longer can needs none
    if (!known && Number.isFinite(v)) return null;
    low[k] = known ? v + was.low[k]! - was.value[k]! : v;
    high[k] = known ? v + was.high[k]! - was.value[k]! : v;
    if (!(v <= 0) || !program.probes[k]!.name.startsWith('margin:')) continue;
    high[k] = was.high[k]! > 0 ? Math.max(high[k]!, Number.MIN_VALUE) : Math.min(high[k]!, 0);
  }
  return { ...was, value, low, high };
}
