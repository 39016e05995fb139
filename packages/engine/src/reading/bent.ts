import { evenDeviates, pointsInto, quantiles, SLOPES, slopesOf, Z95 } from '../numeric/index.ts';
import { AT_ONCE, type Program } from '../program/program.ts';
import type { Spreads, SpreadOf } from './spread.ts';

/** A figure is tried on draws where it bends more than this. @source none - definition */
export const BENT = 0.22;
/** So many draws tell whether a bent figure is anything but the sum of what its inputs do. @source none - definition */
const FIRST = 32;
/** Where the draws are off that sum by less than this share of its deviation, its ends are right within a tenth of the width. @source none - definition */
const ASTRAY = 0.2;
/** On how many draws the others are tried. @source none - definition */
const DRAWN = 256;
/** An input that brings a figure less than this share of what all bring it stays where it is. @source none - definition */
const LEAST = 0.02;

type Sums = Pick<Spreads, 'value' | 'low' | 'high' | 'down' | 'up'>;

/** Figures as the program draws them, and what the sum of differences makes of the same draws: rows of makers, a column a figure; both NaN where it cannot be known. */
interface Trial { readonly drawn: Float64Array; readonly summed: Float64Array; readonly known: Int32Array }

/**
 * Moves the ends of bent figures by as much as draws of the program differ from the same draws of the sum of its differences.
 * @param columns the probes that bend
 * @param moved inputs that are not exact
 * @source none - definition
 */
export function straighten(program: Program, spreadOf: SpreadOf, moved: readonly number[], s: Sums, columns: Int32Array): void {
  const first = trial(program, spreadOf, moved, s, columns, FIRST);
  const rest = columns.filter((_, c) => first.known[c]! >= FIRST / 2 && astray(first, columns.length, c) > ASTRAY), width = rest.length;
  if (width === 0) return;
  const { drawn, summed, known } = trial(program, spreadOf, moved, s, rest, DRAWN);
  for (let c = 0; c < width; c++) {
    if (known[c]! < DRAWN / 2) continue;
    const k = rest[c]!, from = quantiles(summed, width, c, SHARES), to = quantiles(drawn, width, c, SHARES);
    let low = 0, high = 0;
    for (let i = 0; i < TAIL.length; i++) {
      const j = SHARES.length - 1 - i, weight = TAIL[i]![1];
      low += weight * (to[i]! - from[i]!); high += weight * (to[j]! - from[j]!);
    }
    s.low[k] = Math.min(s.value[k]!, s.low[k]! + low);
    s.high[k] = Math.max(s.value[k]!, s.high[k]! + high);
  }
}

/** Runs the program on draws of the inputs that matter to these figures. */
function trial(program: Program, spreadOf: SpreadOf, moved: readonly number[], s: Sums, columns: Int32Array, makers: number): Trial {
  const index = mattering(moved, s, columns), inputs = index.length, width = columns.length;
  const slopes = new Float64Array(SLOPES * inputs), { nominal } = program;
  for (let j = 0; j < inputs; j++) slopes.set(slopesOf(spreadOf(program.inputs[index[j]!]!), nominal[index[j]!]!), SLOPES * j);
  const z = evenDeviates(inputs, makers), { xs, run } = program.again(index, columns, Math.min(AT_ONCE, makers));
  const drawn = new Float64Array(makers * width), known = new Int32Array(width), summed = sumsOf(columns, index, z, s, makers);
  for (let maker = 0; maker < makers; maker += xs.length) {
    const many = Math.min(xs.length, makers - maker);
    for (let m = 0; m < many; m++) pointsInto(xs[m]!, index, slopes, nominal, z, (maker + m) * inputs);
    run(many, drawn, maker * width);
  }
  for (let at = 0; at < drawn.length; at++) if (Number.isNaN(drawn[at]!)) summed[at] = NaN; else known[at % width]!++;
  return { drawn, summed, known };
}

/** Inputs that bring any of the figures more than a fiftieth of what all bring it, in their order. */
function mattering(moved: readonly number[], { value, down, up }: Sums, columns: Int32Array): Int32Array {
  const n = down.length / value.length, counts = new Uint8Array(moved.length), bring = new Float64Array(moved.length);
  for (let c = 0; c < columns.length; c++) {
    const row = columns[c]! * n;
    let all = 0;
    for (let m = 0; m < moved.length; m++) { const at = row + moved[m]!, a = down[at]!, b = up[at]!; bring[m] = a * a + b * b; all += bring[m]!; }
    for (let m = 0; m < moved.length; m++) if (bring[m]! > LEAST * all) counts[m] = 1;
  }
  return Int32Array.from(moved.filter((_, m) => counts[m] === 1));
}

/** What the sum of differences makes of draws: rows of `makers`, a column for each of `columns`. */
function sumsOf(columns: Int32Array, index: Int32Array, z: Float64Array, { value, down, up }: Sums, makers: number): Float64Array {
  const n = down.length / value.length, width = columns.length, inputs = index.length, sums = new Float64Array(makers * width);
  const which = new Int32Array(inputs), below = new Float64Array(inputs), above = new Float64Array(inputs);
  for (let c = 0; c < width; c++) {
    const k = columns[c]!;
    // most inputs do nothing to a figure
    let some = 0;
    for (let m = 0; m < inputs; m++) {
      const i = k * n + index[m]!;
      if (down[i] === 0 && up[i] === 0) continue;
      which[some] = m; below[some] = -down[i]! / Z95; above[some++] = up[i]! / Z95;
    }
    for (let maker = 0, row = 0, at = c; maker < makers; maker++, row += inputs, at += width) {
      let sum = value[k]!;
      for (let j = 0; j < some; j++) { const d = z[row + which[j]!]!; sum += (d < 0 ? below[j]! : above[j]!) * d; }
      sums[at] = sum;
    }
  }
  return sums;
}

/** How far the draws of a figure are off their sums, as a root mean square over the sums' standard deviation. */
function astray({ drawn, summed, known }: Trial, width: number, c: number): number {
  let mean = 0, square = 0, off = 0;
  for (let at = c; at < drawn.length; at += width) if (!Number.isNaN(summed[at]!)) mean += summed[at]! / known[c]!;
  for (let at = c; at < drawn.length; at += width) {
    if (Number.isNaN(summed[at]!)) continue;
    square += (summed[at]! - mean) ** 2; off += (drawn[at]! - summed[at]!) ** 2;
  }
  return Math.sqrt(off / square);
}

/** Where the two are compared, and with which weight: about the 2.5 % point, since one rank of few draws says little. @source none - definition */
const TAIL = [[0.0075, 1 / 7.5], [0.0125, 1.5 / 7.5], [0.025, 2 / 7.5], [0.0375, 1.5 / 7.5], [0.05, 1 / 7.5], [0.0625, 0.5 / 7.5]] as const;
const SHARES = [...TAIL.map(([share]) => share), ...TAIL.map(([share]) => 1 - share).reverse()];
