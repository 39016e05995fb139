import type { Met, Program, Workspace } from '../program/program.ts';

/** What a part is at the nominal, and where among the places it reads those of each earlier part begin; which of them other parts add to. */
interface Found { readonly met: Met; readonly begins: Int32Array; readonly added: Int32Array;
  /** the part as the nominal leaves it, as it stands before the input that is moved */
  readonly final: Float64Array; readonly before: Float64Array }

/**
 * Runs a program with one input moved, inputs in their order, and only as far as the move reaches: the part that names the input from the first operation that
 * can read it, and every later part that uses the input or finds another number where it reads an earlier part: that whole, or else from the first operation that
 * can read the input. The rest is as at the nominal, bit for bit.
 */
export class Moves {
  private readonly program: Program;
  private readonly w: Workspace;
  private readonly x: Float64Array;
  /** the nominal, carried once through all operations as inputs come up */
  private readonly before: Workspace;
  private readonly found: readonly Found[];
  private readonly adds: Int32Array;
  /** by part, and last of what is of none: its wanted probes, those first that the fewest operations can move */
  readonly probes: readonly Int32Array[];
  /** for each of them how many operations stood before it */
  private readonly after: readonly Int32Array[];
  /** by part: 1 where it stands as some moved input left it */
  private readonly stale: Uint8Array;
  private done = 0;

  /** `w` then stands at the end of the nominal. `want`: 1 by probe that is evaluated. */
  constructor(program: Program, w: Workspace, want: Uint8Array) {
    const { parts, usual } = program;
    this.program = program;
    this.w = w;
    this.x = Float64Array.from(program.nominal);
    w.s.set(usual.s);
    w.x = this.x;
    this.before = { s: new Float64Array(w.s.length), x: program.nominal };
    const adds = new Set(parts.flatMap((p) => [...p.adds]));
    this.adds = Int32Array.from(adds);
    this.found = usual.found.map((met, q) => {
      const { start, end, reads } = parts[q]!, begins = new Int32Array(q + 1).fill(reads.length);
      // places stand in the order of parts
      for (let r = 0, k = 0; r < q; r++) { while (k < reads.length && reads[k]! < parts[r]!.start) k++; begins[r] = k; }
      return { met, begins, added: Int32Array.from(this.adds, (at) => reads.indexOf(at)).filter((k) => k >= 0), final: usual.s.subarray(start, end), before: this.before.s.subarray(start, end) };
    });
    const of = [...parts, { first: parts.at(-1)?.last ?? 0, last: program.probes.length }];
    this.probes = of.map(({ first, last }) => {
      const list: number[] = [];
      for (let k = first; k < last; k++) if (want[k] === 1) list.push(k);
      return Int32Array.from(list.sort((a, b) => program.probes[a]!.after - program.probes[b]!.after));
    });
    this.after = this.probes.map((list) => list.map((k) => program.probes[k]!.after));
    this.stale = new Uint8Array(parts.length);
  }

  /**
   * Moves input `i` to `value` and evaluates the wanted probes that this can reach into `out`; all others are as at the nominal, and left as they are.
   * @param i not less than in the call before
   * @param since by entry of `probes`: lowered to where among them the first stands that was evaluated
   */
  to(i: number, value: number, out: Float64Array, since: Int32Array): void {
    const { program: { parts, firstOp, usual }, w, x } = this, from = firstOp[i]!;
    this.program.carry(this.before, this.done, from);
    this.done = from;
    x[i] = value;
    let begun = false;
    for (let q = 0; q < parts.length; q++) {
      const p = parts[q]!;
      const own = p.uses[i]!, other = begun && this.other(q);
      if (own >= 0 || other) {
        const stood = begun && !other ? this.found[q]!.met.midst.get(own) : undefined, changed = stood ? own : from;
        if (stood) this.stand(q, stood); else if (begun) w.s.fill(0, p.start, p.end); else this.rewind(q);
        this.program.carry(w, begun && !stood ? p.from : Math.max(changed, p.from), p.to);
        this.tell(q, changed, out, since);
        this.stale[q] = 1;
        begun = true;
        continue;
      }
      if (this.stale[q] === 1) this.restore(q, begun);
      if (begun) this.leave(q);
    }
    this.tell(parts.length, from, out, since);
    x[i] = this.program.nominal[i]!;
    for (let k = 0; k < this.adds.length; k++) w.s[this.adds[k]!] = usual.s[this.adds[k]!]!;
  }

  /** Evaluates the probes of a part that an operation from `changed` on can move. */
  private tell(q: number, changed: number, out: Float64Array, since: Int32Array): void {
    const after = this.after[q]!;
    let k = after.length;
    while (k > 0 && after[k - 1]! > changed) k--;
    if (k < since[q]!) since[q] = k;
    this.program.tell(this.w, out, this.probes[q]!, k);
  }

  /** Does a part find another number than at the nominal where it reads earlier ones? What cannot be known counts as another; only parts that were run can have left one. */
  private other(q: number): boolean {
    const { s } = this.w, { met: { reads: was }, begins, added } = this.found[q]!, { reads } = this.program.parts[q]!;
    for (let r = 0; r < q; r++) if (this.stale[r] === 1) for (let k = begins[r]!; k < begins[r + 1]!; k++) if (s[reads[k]!] !== was[k]) return true;
    for (let n = 0; n < added.length; n++) if (s[reads[added[n]!]!] !== was[added[n]!]) return true;
    return false;
  }

  /** Puts the part that names the input back to where it stood before it. */
  private rewind(q: number): void {
    const { s } = this.w;
    s.set(this.found[q]!.before, this.program.parts[q]!.start);
    for (let k = 0; k < this.adds.length; k++) s[this.adds[k]!] = this.before.s[this.adds[k]!]!;
  }

  /** Puts a part to where it stood in its midst. */
  private stand(q: number, stood: Float64Array): void {
    const { start, end, adds } = this.program.parts[q]!, { s } = this.w;
    s.set(stood.subarray(0, end - start), start);
    for (let k = 0; k < adds.length; k++) s[adds[k]!] = stood[end - start + k]!;
  }

  /** Puts a part that an earlier input moved back to the nominal; what parts add to it they have not yet added where one before it has `begun`. */
  private restore(q: number, begun: boolean): void {
    const { s } = this.w, { start, end } = this.program.parts[q]!;
    this.stale[q] = 0;
    s.set(this.found[q]!.final, start);
    if (begun) for (let k = 0; k < this.adds.length; k++) { const at = this.adds[k]!; if (at >= start && at < end) s[at] = this.before.s[at]!; }
  }

  /** A part that is as at the nominal leaves what it left there. */
  private leave(q: number): void {
    const { adds } = this.program.parts[q]!, { left } = this.found[q]!.met;
    for (let k = 0; k < adds.length; k++) this.w.s[adds[k]!] = left[k]!;
  }
}
