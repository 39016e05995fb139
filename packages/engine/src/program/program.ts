import type { Input } from './inputs.ts';
import { reachedBy, standing, type Part } from './parts.ts';

/** One number of a reading: what it is, of what, in which unit, by which method. */
export class Probe {
  readonly name: string; readonly of: string; readonly unit: string; readonly method: string; readonly sources: readonly string[];
  /** operations that stood when it was named: it reads what they left, which none after them changes */
  readonly after: number;
  constructor(name: string, of: string, unit: string, method: string, sources: readonly string[], after: number) { this.name = name; this.of = of; this.unit = unit; this.method = method; this.sources = sources; this.after = after; }
}

/** A named number with what computes it; a class and no literal, for which there is a reason (decision 66). */
export class Named {
  readonly probe: Probe;
  readonly op: ProbeOp;
  constructor(probe: Probe, op: ProbeOp) { this.probe = probe; this.op = op; }
}

/** The buffers a run needs; made once, used again. */
export interface Workspace { readonly s: Float64Array; x: Float64Array }

/** Changes the workspace; allocates nothing. */
export type Op = (w: Workspace) => void;
/** Writes `out[i]`, NaN where it cannot be known. */
export type ProbeOp = (w: Workspace, out: Float64Array, i: number) => void;

/** A run at the nominal: the buffer at its end, all probes, and what it was in each part. Not to be written to. */
export interface Usual { readonly s: Float64Array; readonly value: Float64Array; readonly found: readonly Met[] }

/** What a part found where it reads earlier ones, what it left where it adds to them, and what it was in its midst. */
export interface Met {
  readonly reads: Float64Array; readonly left: Float64Array;
  /** by operation from which on it reads an input that an earlier part reads too: its places, then those that it adds to, before that operation */
  readonly midst: ReadonlyMap<number, Float64Array>;
}

/** The numbers that stand at some places. */
function taken(s: Float64Array, places: Int32Array): Float64Array {
  const out = new Float64Array(places.length);
  for (let k = 0; k < places.length; k++) out[k] = s[places[k]!]!;
  return out;
}

/** The operations of a part from which on it reads an input that was named before it began, in their order. */
function readsAgain(p: Part, firstOp: readonly number[]): number[] {
  const all = new Set<number>();
  for (let i = 0; i < firstOp.length; i++) if (p.uses[i]! > p.from && firstOp[i]! < p.from) all.add(p.uses[i]!);
  return [...all].sort((a, b) => a - b);
}

/** Of so many runs each operation is done before the next is: of fewer V8's code for it is fetched more often, of more their numbers no longer lie near. @source none - definition */
export const AT_ONCE = 16;

/** Many runs at once. */
export interface Again {
  /** an entry a run: its inputs, at the nominal until they are written to */
  readonly xs: readonly Float64Array[];
  /** Evaluates the columns at the first `many` of `xs` as `Program.run` does, each into a row of `rows`, side by side, the first from `from` on. */
  readonly run: (many: number, rows: Float64Array, from: number) => void;
}

/** Inputs in, numbers out. Pure in `x`, bit for bit; no text, no allocation. */
export interface Program {
  readonly inputs: readonly Input[];
  readonly probes: readonly Probe[];
  readonly nominal: Float64Array;
  /** by input: the first operation that can depend on it; what stands before it is the same for any value */
  readonly firstOp: Int32Array;
  /** preps in order of making, then those of the drink; probes behind the last part may read anything */
  readonly parts: readonly Part[];
  readonly usual: Usual;
  workspace(): Workspace;
  /**
   * Prepares runs in which `moved` inputs alone may differ from the nominal: parts that these cannot reach are not run again, and what stages alone write down is
   * left out.
   * @param columns probes of no stage
   * @param most how many runs there are at once, `AT_ONCE` where there are many
   */
  again(moved: Int32Array, columns: Int32Array, most: number): Again;
  /** Evaluates the wanted probes at `x` into `out` (one entry a probe). */
  run(x: Float64Array, out: Float64Array, want: Uint8Array, w: Workspace): void;
  /** Carries the workspace through operations `from` up to, not including, `to` (all when absent), with its own `x`. */
  carry(w: Workspace, from: number, to?: number): void;
  /** Carries the first `many` side by side, each from its entry of `from` on. */
  carryAll(sides: readonly { readonly w: Workspace }[], many: number, from: Int32Array, to: number): void;
  /** Evaluates the probes `list` of the first `many`, carried to their ends, each from its entry of `from` on. */
  tellAll(sides: readonly { readonly w: Workspace; readonly out: Float64Array }[], many: number, list: Int32Array, from: Int32Array): void;
}

/** Puts operations and probes together. @source none - definition */
export function program(inputs: readonly Input[], firstOp: readonly number[], length: number, ops: readonly Op[], ofStages: ReadonlySet<number>, probes: readonly Named[], parts: readonly Part[]): Program {
  const nominal = new Float64Array(inputs.length), compute = probes.map((p) => p.op);
  inputs.forEach((input, i) => { nominal[i] = input.value; });
  const carry = (w: Workspace, from: number, to: number = ops.length) => { for (let i = from; i < to; i++) ops[i]!(w); };
  const first: Workspace = { s: new Float64Array(length), x: nominal }, value = new Float64Array(compute.length);
  let done = 0;
  const found = parts.map((p) => {
    carry(first, done, p.from);
    const reads = taken(first.s, p.reads), midst = new Map<number, Float64Array>();
    done = p.from;
    for (const operation of readsAgain(p, firstOp)) {
      carry(first, done, operation);
      done = operation;
      const stood = new Float64Array(p.end - p.start + p.adds.length);
      stood.set(first.s.subarray(p.start, p.end));
      stood.set(taken(first.s, p.adds), p.end - p.start);
      midst.set(operation, stood);
    }
    carry(first, done, p.to);
    done = p.to;
    return { reads, left: taken(first.s, p.adds), midst };
  });
  carry(first, done);
  for (let i = 0; i < compute.length; i++) compute[i]!(first, value, i);
  return {
    inputs,
    probes: probes.map((p) => p.probe),
    nominal,
    firstOp: Int32Array.from(firstOp),
    parts,
    usual: { s: first.s, value, found },
    workspace: () => ({ s: new Float64Array(length), x: nominal }),
    run(x, out, want, w) {
      w.s.fill(0);
      w.x = x;
      carry(w, 0);
      for (let i = 0; i < compute.length; i++) if (want[i] === 1) compute[i]!(w, out, i);
    },
    again(moved, columns, most) {
      const reached = reachedBy(moved, parts, length), some = parts.filter((_, q) => reached[q] === 1);
      const lean = ops.filter((_, i) => !ofStages.has(i) && some.some((p) => i >= p.from && i < p.to)), asked = Array.from(columns, (k) => compute[k]!);
      const stands = standing(parts, found, reached), at = Int32Array.from(stands.keys()), there = Float64Array.from(stands.values());
      const all = Array.from({ length: most }, (): Workspace => ({ s: Float64Array.from(first.s), x: Float64Array.from(nominal) }));
      return {
        xs: all.map((w) => w.x),
        run(many, rows, from) {
          for (let m = 0; m < many; m++) {
            const { s } = all[m]!;
            for (let q = 0; q < some.length; q++) s.fill(0, some[q]!.start, some[q]!.end);
            for (let k = 0; k < at.length; k++) s[at[k]!] = there[k]!;
          }
          for (let i = 0; i < lean.length; i++) { const op = lean[i]!; for (let m = 0; m < many; m++) op(all[m]!); }
          for (let c = 0; c < asked.length; c++) { const op = asked[c]!; for (let m = 0, k = from + c; m < many; m++, k += asked.length) op(all[m]!, rows, k); }
        },
      };
    },
    carry,
    carryAll(sides, many, from, to) {
      let i = to;
      for (let m = 0; m < many; m++) i = Math.min(i, from[m]!);
      for (; i < to; i++) { const op = ops[i]!; for (let m = 0; m < many; m++) if (from[m]! <= i) op(sides[m]!.w); }
    },
    tellAll(sides, many, list, from) {
      let k = list.length;
      for (let m = 0; m < many; m++) k = Math.min(k, from[m]!);
      for (; k < list.length; k++) { const i = list[k]!, op = compute[i]!; for (let m = 0; m < many; m++) if (from[m]! <= k) op(sides[m]!.w, sides[m]!.out, i); }
    },
  };
}
