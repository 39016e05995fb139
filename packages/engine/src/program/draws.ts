import { drawBy, hashOf, keyOf, normalQuantiles, pointsInto, slopesOf } from '../numeric/index.ts';
import type { Spread } from '../provenance/types.ts';
import { AT_ONCE, type Program } from './program.ts';

/** What is drawn for every maker: which inputs, by which number of their key, and how far a deviate takes each (`slopesOf`, `SLOPES` numbers an input). */
export interface Draws { readonly index: Int32Array; readonly hash: Int32Array; readonly slopes: Float64Array }

/**
 * Prepares the draws of a program's inputs.
 * @param spreadOf how far each input may lie in the kitchen that is drawn; `exact` ones are not drawn
 * @returns one entry an input that is drawn; of two keys of one hash the later takes another, so that their draws are not one
 * @source none - definition
 */
export function drawsOf(program: Program, spreadOf: (input: Program['inputs'][number]) => Spread): Draws {
  const index: number[] = [], hash: number[] = [], slopes: number[] = [];
  const seen = new Set<number>();
  program.inputs.forEach((input, i) => {
    const s = spreadOf(input);
    if (s.kind === 'exact') return;
    let h = hashOf(input.key);
    while (seen.has(h)) h = hashOf(`${input.key} ${h}`);
    seen.add(h);
    index.push(i); hash.push(h | 0); slopes.push(...slopesOf(s, input.value));
  });
  return { index: Int32Array.from(index), hash: Int32Array.from(hash), slopes: Float64Array.from(slopes) };
}

/**
 * Puts one maker's values into `x`: a pure function of seed, key and maker's number, whatever else is drawn.
 * @param x one entry an input, at the nominal where nothing is drawn
 * @param keys as of `keysOf`
 * @param maker a whole number, the low 32 bits count
 * @source none - definition
 */
export function drawMaker(x: Float64Array, program: Program, draws: Draws, keys: Int32Array, maker: number): void {
  if (deviates.length < keys.length) deviates = new Float64Array(keys.length);
  for (let k = 0; k < keys.length; k++) deviates[k] = drawBy(keys[k]!, maker);
  normalQuantiles(deviates, keys.length);
  pointsInto(x, draws.index, draws.slopes, program.nominal, deviates, 0);
}
/** Written before it is read. */
let deviates = new Float64Array(0);

/**
 * Seed and key of every draw put together.
 * @param seed a whole number, the low 32 bits count
 * @source none - definition
 */
export function keysOf({ hash }: Draws, seed: number): Int32Array { return hash.map((h) => keyOf(seed, h)); }

/**
 * Runs makers `from` up to, not including, `to`; figures of stages are not among what can be wanted.
 * @param want one entry a probe; what is not wanted is not written
 * @returns a record of (to - from) rows, a column for every wanted probe in their order
 * @source none - definition
 */
export function runMakers(program: Program, draws: Draws, want: Uint8Array, seed: number, from: number, to: number): Float64Array {
  const columns = wanted(want), record = new Float64Array((to - from) * columns.length), keys = keysOf(draws, seed);
  const { xs, run } = program.again(draws.index, columns, AT_ONCE);
  for (let maker = from, at = 0; maker < to; maker += AT_ONCE) {
    const many = Math.min(AT_ONCE, to - maker);
    for (let m = 0; m < many; m++) drawMaker(xs[m]!, program, draws, keys, maker + m);
    run(many, record, at);
    at += many * columns.length;
  }
  return record;
}

/** Indices of the wanted probes. @source none - definition */
export function wanted(want: Uint8Array): Int32Array {
  const list: number[] = [];
  for (let i = 0; i < want.length; i++) if (want[i]) list.push(i);
  return Int32Array.from(list);
}
