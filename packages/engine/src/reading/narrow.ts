import type { Compiled } from '../program/compile.ts';
import { EndSums } from './ends.ts';
import { BENT } from './bent.ts';
import { partAt, spreads, type Spreads } from './spread.ts';
import type { Narrow } from './types.ts';

/** A range is not narrowed by less than this share. */
const LEAST = 0.005;

/**
 * Which input, if it were known exactly, would leave the narrowest 95 % range: tried one by one, not read off the shares.
 * @param k place of the probe in the program
 * @param whole as the spreads were made: figures that bend tried on draws
 * @returns the best first; the best of all, and where that is a number of a model, the best one that somebody can measure or write
 * @source none - definition
 */
export function narrowOf(c: Compiled, s: Spreads, k: number, whole = true): Narrow[] {
  const { inputs } = c.program, n = inputs.length;
  const wide = s.high[k]! - s.low[k]!;
  if (!(wide > 0)) return [];
  const sums = new EndSums(), ends = new Float64Array(2);
  const without = (i: number): { low: number; high: number } => {
    sums.without(i, s, n, k, ends);
    return { low: s.value[k]! + ends[0]!, high: s.value[k]! + ends[1]! };
  };
  const all = without(-1), bent = whole && sums.bend() > BENT;
  const tried: { i: number; low: number; high: number }[] = [];
  for (let i = 0; i < inputs.length; i++) if (partAt(s, k * n + i) > 0) tried.push({ i, ...without(i) });
  tried.sort((a, b) => a.high - a.low - (b.high - b.low) || a.i - b.i);
  const best = tried[0];
  if (!best) return [];
  const mine = inputs[best.i]!.role === 'model' ? tried.find((t) => inputs[t.i]!.role !== 'model') : undefined;
  return [best, ...(mine ? [mine] : [])].flatMap((t) => {
    // a figure that bends is judged by draws: so is what is left of its range
    const left = bent ? again(c, t.i, k) : t;
    const by = 1 - (left.high - left.low) / (bent ? wide : all.high - all.low);
    return by < LEAST ? [] : [{ key: inputs[t.i]!.key, low: left.low, high: left.high, by, role: inputs[t.i]!.role, say: inputs[t.i]!.role === 'model' ? '' : inputs[t.i]!.assumed?.say ?? '' }];
  });
}

function again(c: Compiled, i: number, k: number): { readonly low: number; readonly high: number } {
  const known = c.program.inputs[i]!;
  const s = spreads(c.program, (input) => (input === known ? { kind: 'exact' } : input.spread));
  return { low: s.low[k]!, high: s.high[k]! };
}
