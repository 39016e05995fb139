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
   * Prepares many runs in which `moved` inputs alone may differ from the nominal: parts that these cannot reach are not run again, and what stages alone write
   * down is left out. The answer evaluates the probes `columns` (of no stage) at `x` as `run` does, into `row` side by side from `from` on; the workspace is its
   * own from then on.
   */
  again(moved: Int32Array, columns: Int32Array, w: Workspace): (x: Float64Array, row: Float64Array, from: number) => void;
  /** Evaluates the wanted probes at `x` into `out` (one entry a probe). */
  run(x: Float64Array, out: Float64Array, want: Uint8Array, w: Workspace): void;
  /** Carries the workspace through operations `from` up to, not including, `to` (all when absent), with its own `x`. */
  carry(w: Workspace, from: number, to?: number): void;
  /** Evaluates the probes `list` from its entry `from` on, of a workspace that was carried to its end. */
  tell(w: Workspace, out: Float64Array, list: Int32Array, from: number): void;
}

/** Puts operations and probes together. @source none - definition */
export function program(inputs: readonly Input[], firstOp: readonly number[], length: number, ops: readonly Op[], ofStages: ReadonlySet<number>, probes: readonly Named[], parts: readonly Part[]): Program {
  const nominal = new Float64Array(inputs.length), compute = probes.map((p) => p.op);
  inputs.forEach((input, i) => { nominal[i] = input.value; });
  const carry = (w: Workspace, from: number, to: number = ops.length) => { for (let i = from; i < to; i++) ops[i]!(w); };
  const tell = (w: Workspace, out: Float64Array, list: Int32Array, from: number) => { for (let k = from; k < list.length; k++) { const i = list[k]!; compute[i]!(w, out, i); } };
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
    again(moved, columns, w) {
      const reached = reachedBy(moved, parts, length), some = parts.filter((_, q) => reached[q] === 1);
      const lean = ops.filter((_, i) => !ofStages.has(i) && some.some((p) => i >= p.from && i < p.to)), asked = Array.from(columns, (k) => compute[k]!);
      const stands = standing(parts, found, reached), at = Int32Array.from(stands.keys()), there = Float64Array.from(stands.values());
      w.s.set(first.s);
      return (x, row, from) => {
        for (let q = 0; q < some.length; q++) w.s.fill(0, some[q]!.start, some[q]!.end);
        for (let k = 0; k < at.length; k++) w.s[at[k]!] = there[k]!;
        w.x = x;
        for (let i = 0; i < lean.length; i++) lean[i]!(w);
        for (let c = 0; c < asked.length; c++) asked[c]!(w, row, from + c);
      };
    },
    carry,
    tell,
  };
}
