import type { Program, Workspace } from '../program/program.ts';

/** What a part finds of earlier ones at its nominal, one earlier part (-1 for what other parts add to, wherever it stands) after the other, and what it leaves of what it adds to. */
interface Found { readonly reads: readonly { readonly part: number; readonly places: readonly number[]; readonly was: readonly number[] }[]; readonly left: Float64Array;
  /** the part as the nominal leaves it, as it stands before the input that is moved */
  readonly final: Float64Array; readonly before: Float64Array }

/**
 * Runs a program with one input moved, inputs in their order, and only as far as the move reaches: the part that names the input from the first operation that
 * can read it, and every later part that uses the input or finds another number where it reads an earlier part. The rest is as at the nominal, bit for bit.
 */
export class Moves {
  private readonly program: Program;
  private readonly w: Workspace;
  private readonly x: Float64Array;
  /** the nominal, carried once through all operations as inputs come up */
  private readonly before: Workspace;
  private readonly found: readonly Found[];
  private readonly adds: Int32Array;
  /** first of the probes that are of no part */
  readonly tail: number;
  /** by part: 1 where it stands as some moved input left it */
  private readonly stale: Uint8Array;
  private done = 0;

  /** `w` then stands at the end of the nominal. */
  constructor(program: Program, w: Workspace) {
    const { parts, usual } = program;
    this.program = program;
    this.w = w;
    this.x = Float64Array.from(program.nominal);
    w.s.set(usual.s);
    w.x = this.x;
    this.before = { s: new Float64Array(w.s.length), x: program.nominal };
    const adds = new Set(parts.flatMap((p) => [...p.adds]));
    this.adds = Int32Array.from(adds);
    this.found = usual.found.map((f, q) => {
      const { start, end, reads } = parts[q]!, by: { part: number; places: number[]; was: number[] }[] = [];
      for (let k = 0, r = -1; k < reads.length; k++) {
        const at = reads[k]!;
        // places stand in the order of parts
        while (r + 1 < q && at >= parts[r + 1]!.start) r++;
        const part = adds.has(at) ? -1 : r;
        let list = by.find((one) => one.part === part);
        if (!list) { list = { part, places: [], was: [] }; by.push(list); }
        list.places.push(at); list.was.push(f.reads[k]!);
      }
      return { reads: by, left: f.left, final: usual.s.subarray(start, end), before: this.before.s.subarray(start, end) };
    });
    this.tail = parts.at(-1)?.last ?? 0;
    this.stale = new Uint8Array(parts.length);
  }

  /**
   * Moves input `i` to `value` and evaluates the wanted probes that this can reach into `out`; all others are as at the nominal, and left as they are.
   * @param i not less than in the call before
   * @param reached by part, and of what is of none: set to 1 where probes were evaluated
   */
  to(i: number, value: number, out: Float64Array, want: Uint8Array, reached: Uint8Array): void {
    const { program: { parts, firstOp, usual }, w, x } = this, from = firstOp[i]!;
    this.program.carry(this.before, this.done, from);
    this.done = from;
    x[i] = value;
    let begun = false;
    for (let q = 0; q < parts.length; q++) {
      const p = parts[q]!;
      if (p.uses[i] === 1 || (begun && this.other(q))) {
        if (begun) w.s.fill(0, p.start, p.end); else this.rewind(q);
        this.program.carry(w, begun ? p.from : Math.max(from, p.from), p.to);
        this.program.probe(w, out, want, from, p.first, p.last);
        reached[q] = 1;
        this.stale[q] = 1;
        begun = true;
        continue;
      }
      if (this.stale[q] === 1) this.restore(q, begun);
      if (begun) this.leave(q);
    }
    this.program.probe(w, out, want, from, this.tail);
    reached[parts.length] = 1;
    x[i] = this.program.nominal[i]!;
    for (let k = 0; k < this.adds.length; k++) w.s[this.adds[k]!] = usual.s[this.adds[k]!]!;
  }

  /** Does a part find another number than at the nominal where it reads earlier ones? What cannot be known counts as another; only parts that were run can have left one. */
  private other(q: number): boolean {
    const { s } = this.w, { reads } = this.found[q]!;
    for (let n = 0; n < reads.length; n++) {
      const { part, places, was } = reads[n]!;
      if (part >= 0 && this.stale[part] === 0) continue;
      for (let k = 0; k < places.length; k++) if (s[places[k]!] !== was[k]) return true;
    }
    return false;
  }

  /** Puts the part that names the input back to where it stood before it. */
  private rewind(q: number): void {
    const { s } = this.w;
    s.set(this.found[q]!.before, this.program.parts[q]!.start);
    for (let k = 0; k < this.adds.length; k++) s[this.adds[k]!] = this.before.s[this.adds[k]!]!;
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
    const { adds } = this.program.parts[q]!, { left } = this.found[q]!;
    for (let k = 0; k < adds.length; k++) this.w.s[adds[k]!] = left[k]!;
  }
}
