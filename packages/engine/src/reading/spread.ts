import { pointAt, Z95 } from '../numeric/index.ts';
import type { Program, Workspace } from '../program/program.ts';

/** Nominal values and 95 % ranges of every probe, with what each input contributes. */
export interface Spreads {
  readonly value: Float64Array; readonly low: Float64Array; readonly high: Float64Array;
  /** down and up by input and probe: `contribution[input * probes + probe]`, signed differences at the input's 2.5 and 97.5 % points */
  readonly down: Float64Array; readonly up: Float64Array;
  /** half the difference between the two points squared, by input and probe, and their sum by probe: shares of variance are their ratios */
  readonly part: Float64Array; readonly variance: Float64Array;
}

/** Numbers that are shown without a range: colours, the words of a sentence, the account of heat. */
const PLAIN = /^(word:|tint_|turbid$|stands$|takes\/|balance:)/;

/**
 * Ranges of all probes by differences taken at each input's own 2.5 and 97.5 % points, two-sided, added as squares.
 * An input that moves a probe the same way from both sides widens that side alone.
 * @source none - definition
 */
export function spreads(program: Program, w: Workspace): Spreads {
  const n = program.probes.length, inputs = program.inputs.length;
  const all = new Uint8Array(n).fill(1);
  const ranged = Uint8Array.from(program.probes, (p) => (PLAIN.test(p.name) ? 0 : 1));
  const value = new Float64Array(n), out = new Float64Array(n);
  const down = new Float64Array(inputs * n), up = new Float64Array(inputs * n);
  const part = new Float64Array(inputs * n), variance = new Float64Array(n);
  const low2 = new Float64Array(n), high2 = new Float64Array(n);
  const x = Float64Array.from(program.nominal);
  program.run(x, value, all, w);
  // inputs stand in the order in which operations first name them: what comes before is carried once, at the nominal
  const before: Workspace = { s: new Float64Array(w.s.length), x: program.nominal };
  let done = 0;
  w.x = x;
  for (let i = 0; i < inputs; i++) {
    const input = program.inputs[i]!;
    if (input.spread.kind === 'exact') continue;
    const from = program.firstOp[i]!;
    program.carry(before, done, from);
    done = from;
    for (const side of [-1, 1]) {
      x[i] = pointAt(input.spread, input.value, side * Z95);
      if (x[i] === input.value) continue;
      w.s.set(before.s);
      program.carry(w, from);
      out.set(value);                                                      // what the input cannot reach stays
      program.probe(w, out, ranged, from);
      const keep = side < 0 ? down : up;
      for (let k = 0; k < n; k++) {
        // where a point makes a figure unknowable it says nothing of how far the figure goes
        if (ranged[k] && !Number.isNaN(out[k]!)) keep[i * n + k] = out[k]! - value[k]!;
      }
    }
    x[i] = input.value;
    for (let k = 0; k < n; k++) {
      const a = down[i * n + k]!, b = up[i * n + k]!;
      const lower = Math.min(a, b, 0), upper = Math.max(a, b, 0);
      low2[k]! += lower * lower; high2[k]! += upper * upper;
      const half = (b - a) / 2;
      part[i * n + k] = half * half; variance[k]! += half * half;
    }
  }
  const low = Float64Array.from(value, (v, k) => v - Math.sqrt(low2[k]!)), high = Float64Array.from(value, (v, k) => v + Math.sqrt(high2[k]!));
  return { value, low, high, down, up, part, variance };
}
