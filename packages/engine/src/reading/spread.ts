import { pointAt, Z95 } from '../numeric/index.ts';
import { wanted } from '../program/draws.ts';
import type { Input } from '../program/inputs.ts';
import type { Program } from '../program/program.ts';
import { BENT, straighten } from './bent.ts';
import { Moves, type Side } from './moves.ts';
import type { Spread } from '../provenance/types.ts';
import { EndSums } from './ends.ts';

/** Nominal values and 95 % ranges of every probe, with what each input contributes. */
export interface Spreads {
  readonly value: Float64Array; readonly low: Float64Array; readonly high: Float64Array;
  /** down and up by probe and input, a row of inputs a probe: `down[probe * inputs + input]`, signed differences at the input's 2.5 and 97.5 % points */
  readonly down: Float64Array; readonly up: Float64Array;
  /** sum of `partAt` over all inputs, by probe: shares of variance are the ratios of the two */
  readonly variance: Float64Array;
}

/** Half the difference between an input's two points, squared: `at` is `probe * inputs + input`. @source none - definition */
export function partAt({ down, up }: Pick<Spreads, 'down' | 'up'>, at: number): number {
  return partOf(down[at]!, up[at]!);
}
function partOf(down: number, up: number): number { const half = (up - down) / 2; return half * half; }

/** An input moved to both its points; null where one is the nominal. */
interface Put { readonly input: number; readonly below: Side | null; readonly above: Side | null }

/** How far an input may lie; as wide as it says itself when none is given. */
export type SpreadOf = (input: Input) => Spread;

/** Numbers that are shown without a range: colours, the words of a sentence, the account of heat. @source none - definition */
export const PLAIN = /^(word:|tint_|turbid$|stands$|takes\/|balance:)/;

/**
 * Ranges of all probes by differences taken at each input's own 2.5 and 97.5 % points, two-sided, each side straight, put together as a sum of independent
 * parts: their mean, variance, third and fourth cumulants give the ends (`EndSums`). With `whole`, figures that bend (both sides of an input move them the same
 * way) are then tried on draws, and where these are not what the sum makes of them its ends are moved by as much as the two differ.
 * @param spreadOf how far each input may lie; as wide as it says itself when not given
 * @source cornish-fisher-1938 expansion; none - definition
 */
export function spreads(program: Program, spreadOf: SpreadOf = (input) => input.spread, whole = true): Spreads {
  const n = program.probes.length, inputs = program.inputs.length;
  const ranged = new Uint8Array(n);
  for (let k = 0; k < n; k++) if (!PLAIN.test(program.probes[k]!.name)) ranged[k] = 1;
  const moves = new Moves(program, ranged), { usual: { value } } = program;
  const down = new Float64Array(inputs * n), up = new Float64Array(inputs * n);
  const variance = new Float64Array(n), sums = new EndSums(n);
  const moved: number[] = [], huge = inputs > MOST_DRAWN, put: Put[] = [];
  const tell = ({ input, below, above }: Put, list: Int32Array, from: number) => {
    for (let j = from; j < list.length; j++) {
      const k = list[j]!, v = value[k]!, low = below ? below.out[k]! : v, high = above ? above.out[k]! : v;
      if (low === v && high === v) continue;
      if (below) below.out[k] = v;                                       // for the next move on that side
      if (above) above.out[k] = v;
      // where a point makes a figure unknowable it says nothing of how far the figure goes
      const b = Number.isNaN(high) ? 0 : high - v, a = huge ? -b : Number.isNaN(low) ? 0 : low - v;
      if (a === 0 && b === 0) continue;
      const at = k * inputs + input;
      down[at] = a; up[at] = b;
      variance[k]! += partOf(a, b);
      sums.addAt(down, up, at, k);
    }
  };
  const run = () => {
    moves.run();
    for (const both of put) for (let q = 0; q < moves.probes.length; q++) tell(both, moves.probes[q]!, Math.min(both.below?.since[q] ?? n, both.above?.since[q] ?? n));
    put.length = 0;
  };
  for (let i = 0; i < inputs; i++) {
    const input = program.inputs[i]!;
    const spread = spreadOf(input);
    if (spread.kind === 'exact') continue;
    moved.push(i);
    const low = huge ? input.value : pointAt(spread, input.value, -Z95), high = pointAt(spread, input.value, Z95);
    put.push({ input: i, below: low === input.value ? null : moves.put(i, low), above: high === input.value ? null : moves.put(i, high) });
    if (moves.room < 2) run();
  }
  run();
  const low = Float64Array.from(value), high = Float64Array.from(value);
  const bent = new Uint8Array(n), distance = new Float64Array(2);
  let some = false;
  for (let k = 0; k < n; k++) {
    if (!ranged[k]) continue;
    sums.ends(distance, k);
    low[k] = value[k]! + distance[0]!; high[k] = value[k]! + distance[1]!;
    if (sums.bend(k) > BENT && Number.isFinite(value[k]!) && !program.probes[k]!.of.includes('stage:')) { bent[k] = 1; some = true; }
  }
  if (whole && some && moved.length <= MOST_DRAWN) straighten(program, spreadOf, moved, { value, low, high, down, up }, wanted(bent));
  return { value, low, high, down, up, variance };
}

/** A spec with more inputs than this is taken for even on both sides and not tried on draws: what is not a drink must not take seconds. @source none - definition */
const MOST_DRAWN = 400;
