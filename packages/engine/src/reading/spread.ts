import { pointAt, quantiles, Z95 } from '../numeric/index.ts';
import { drawsOf, evenDeviates, putMaker, wanted, type Draws } from '../program/draws.ts';
import type { Input } from '../program/inputs.ts';
import type { Program, Workspace } from '../program/program.ts';
import { Moves } from './moves.ts';
import type { Spread } from '../provenance/types.ts';
import { EndSums } from './ends.ts';

/** Nominal values and 95 % ranges of every probe, with what each input contributes. */
export interface Spreads {
  readonly value: Float64Array; readonly low: Float64Array; readonly high: Float64Array;
  /** down and up by input and probe: `contribution[input * probes + probe]`, signed differences at the input's 2.5 and 97.5 % points */
  readonly down: Float64Array; readonly up: Float64Array;
  /** sum of `partAt` over all inputs, by probe: shares of variance are the ratios of the two */
  readonly variance: Float64Array;
}

/** Half the difference between an input's two points, squared: `at` is `input * probes + probe`. @source none - definition */
export function partAt({ down, up }: Pick<Spreads, 'down' | 'up'>, at: number): number {
  return partOf(down[at]!, up[at]!);
}
function partOf(down: number, up: number): number { const half = (up - down) / 2; return half * half; }

/** How far an input may lie; as wide as it says itself when none is given. */
export type SpreadOf = (input: Input) => Spread;

/** Numbers that are shown without a range: colours, the words of a sentence, the account of heat. @source none - definition */
export const PLAIN = /^(word:|tint_|turbid$|stands$|takes\/|balance:)/;

/**
 * Ranges of all probes by differences taken at each input's own 2.5 and 97.5 % points, two-sided, each side straight, put together as a sum of independent
 * parts: their mean, variance, third and fourth cumulants give the ends (`EndSums`). With `whole`, figures that bend (both sides of an input move them the same
 * way) are then tried on `DRAWN` keyed draws, and their ends moved by as much as the draws differ from the same draws of the sum.
 * @param spreadOf how far each input may lie; as wide as it says itself when not given
 * @source cornish-fisher-1938 expansion; none - definition
 */
export function spreads(program: Program, w: Workspace, spreadOf: SpreadOf = (input) => input.spread, whole = true): Spreads {
  const n = program.probes.length, inputs = program.inputs.length;
  const ranged = new Uint8Array(n);
  for (let k = 0; k < n; k++) if (!PLAIN.test(program.probes[k]!.name)) ranged[k] = 1;
  const moves = new Moves(program, w), { value } = program.usual, out = new Float64Array(n);
  const down = new Float64Array(inputs * n), up = new Float64Array(inputs * n);
  const variance = new Float64Array(n);
  const moved: number[] = [], huge = inputs > MOST_DRAWN;
  for (let i = 0; i < inputs; i++) {
    const input = program.inputs[i]!;
    const spread = spreadOf(input);
    if (spread.kind === 'exact') continue;
    moved.push(i);
    for (const side of huge ? ABOVE : BOTH) {
      const to = pointAt(spread, input.value, side * Z95);
      if (to === input.value) continue;
      const ranges = moves.to(i, to, out, ranged), keep = side < 0 ? down : up;
      for (let r = 0; r < ranges.length; r += 2) {
        for (let k = ranges[r]!, at = i * n + k; k < ranges[r + 1]!; k++, at++) {
          // where a point makes a figure unknowable it says nothing of how far the figure goes
          if (!ranged[k] || Number.isNaN(out[k]!)) continue;
          keep[at] = out[k]! - value[k]!;
          if (huge) down[at] = value[k]! - out[k]!;
        }
      }
    }
  }
  const low = Float64Array.from(value), high = Float64Array.from(value);
  const bent = new Uint8Array(n), sums = new EndSums(), ends = new Float64Array(2);
  let some = false;
  for (let k = 0; k < n; k++) {
    if (!ranged[k]) continue;
    sums.clear();
    for (const i of moved) {
      const a = down[i * n + k]!, b = up[i * n + k]!;
      if (a === 0 && b === 0) continue;
      sums.add(a, b);
      variance[k]! += partOf(a, b);
    }
    sums.ends(ends);
    low[k] = value[k]! + ends[0]!; high[k] = value[k]! + ends[1]!;
    if (sums.bend > BENT && Number.isFinite(value[k]!) && !program.probes[k]!.of.includes('stage:')) { bent[k] = 1; some = true; }
  }
  if (whole && some && moved.length <= MOST_DRAWN) straighten(program, w, drawsOf(program, spreadOf), { value, low, high, down, up }, bent);
  return { value, low, high, down, up, variance };
}

/** A figure this bent is tried on draws. @source none - definition */
export const BENT = 0.22;
/** How many draws a bent figure is tried on. @source none - definition */
const DRAWN = 400;
const SEED = 0x77617368;
const BOTH = [-1, 1] as const, ABOVE = [1] as const;
/** A spec with more inputs than this is taken for even on both sides and not tried on draws: what is not a drink must not take seconds. @source none - definition */
const MOST_DRAWN = 400;

/** Moves the ends of bent figures by as much as draws of the program differ from the same draws of the sum of its differences. */
function straighten(program: Program, w: Workspace, draws: Draws, s: Pick<Spreads, 'value' | 'low' | 'high' | 'down' | 'up'>, bent: Uint8Array): void {
  const n = program.probes.length, columns = wanted(bent), width = columns.length, { index } = draws;
  const x = Float64Array.from(program.nominal), out = new Float64Array(n), z = evenDeviates(draws, SEED, DRAWN);
  const drawn = new Float64Array(DRAWN * width), known = new Int32Array(width);
  for (let maker = 0, at = 0; maker < DRAWN; maker++) {
    putMaker(x, program, draws, z, maker);
    program.runLean(x, out, bent, w);
    for (let c = 0; c < width; c++, at++) {
      drawn[at] = out[columns[c]!]!;
      if (!Number.isNaN(drawn[at]!)) known[c]!++;
    }
  }
  const summed = sumsOf(columns, index, z, s, n);
  for (let c = 0; c < width; c++) {
    if (known[c]! < DRAWN / 2) continue;
    const k = columns[c]!, from = quantiles(summed, width, c, SHARES), to = quantiles(drawn, width, c, SHARES);
    let low = 0, high = 0;
    for (let i = 0; i < TAIL.length; i++) {
      const j = SHARES.length - 1 - i, weight = TAIL[i]![1];
      low += weight * (to[i]! - from[i]!); high += weight * (to[j]! - from[j]!);
    }
    s.low[k] = Math.min(s.value[k]!, s.low[k]! + low);
    s.high[k] = Math.max(s.value[k]!, s.high[k]! + high);
  }
}
/** What the sum of differences makes of the same draws: rows of `DRAWN`, a column for each of `columns`. */
function sumsOf(columns: Int32Array, index: Int32Array, z: Float64Array, { value, down, up }: Pick<Spreads, 'value' | 'down' | 'up'>, n: number): Float64Array {
  const width = columns.length, inputs = index.length, sums = new Float64Array(DRAWN * width);
  const which = new Int32Array(inputs), below = new Float64Array(inputs), above = new Float64Array(inputs);
  for (let c = 0; c < width; c++) {
    const k = columns[c]!;
    // most inputs do nothing to a figure
    let some = 0;
    for (let m = 0; m < inputs; m++) {
      const i = index[m]! * n + k;
      if (down[i] === 0 && up[i] === 0) continue;
      which[some] = m; below[some] = -down[i]! / Z95; above[some++] = up[i]! / Z95;
    }
    for (let maker = 0, row = 0, at = c; maker < DRAWN; maker++, row += inputs, at += width) {
      let sum = value[k]!;
      for (let j = 0; j < some; j++) { const d = z[row + which[j]!]!; sum += (d < 0 ? below[j]! : above[j]!) * d; }
      sums[at] = sum;
    }
  }
  return sums;
}

/** Where the two are compared, and with which weight: about the 2.5 % point, since one rank of four hundred draws says little. @source none - definition */
const TAIL = [[0.0075, 1 / 7.5], [0.0125, 1.5 / 7.5], [0.025, 2 / 7.5], [0.0375, 1.5 / 7.5], [0.05, 1 / 7.5], [0.0625, 0.5 / 7.5]] as const;
const SHARES = [...TAIL.map(([share]) => share), ...TAIL.map(([share]) => 1 - share).reverse()];
