import { AT_ONCE, type Met, type Program, type Workspace } from '../program/program.ts';

/** What a part is at the nominal, and where among the places it reads those of each earlier part begin; which of them other parts add to. */
interface Found { readonly met: Met; readonly begins: Int32Array; readonly added: Int32Array;
  /** the part as the nominal leaves it, as it stands before the input that is moved */
  readonly final: Float64Array; readonly before: Float64Array }

/** One of the runs that go side by side: one input moved to one value. */
export interface Side {
  readonly w: Workspace;
  /** one entry a probe: as at the nominal but for those that the move can reach, from `since` on among those of each part (an entry a list of `probes`) */
  readonly out: Float64Array; readonly since: Int32Array;
  /** by part: 1 where it stands as some moved input left it */
  readonly stale: Uint8Array;
  /** what parts add to, before the input that is moved */
  readonly added: Float64Array;
  /** the input, the first operation that can depend on it, and the part that names it */
  input: number; from: number; begins: number;
  /** of the part that is run now: the operation from which on its probes may differ; `NEVER` where it is as at the nominal */
  differs: number;
}
const NEVER = 2 ** 30;

/**
 * Runs a program with one input moved, inputs in their order, and only as far as the move reaches: the part that names the input from the first operation that
 * can read it, and every later part that uses the input or finds another number where it reads an earlier part: that whole, or else from the first operation that
 * can read the input. The rest is as at the nominal, bit for bit. Moves are put one after another, as many as there are sides, and then run side by side.
 */
export class Moves {
  private readonly program: Program;
  /** the nominal, carried once through all operations as inputs come up */
  private readonly before: Workspace;
  private readonly found: readonly Found[];
  private readonly adds: Int32Array;
  /** by part, and last of what is of none: its wanted probes, those first that the fewest operations can move */
  readonly probes: readonly Int32Array[];
  /** for each of them how many operations stood before it */
  private readonly after: readonly Int32Array[];
  private readonly sides: readonly Side[];
  private done = 0;
  private many = 0;
  /** by side: the operation, then the entry of `probes`, from which on it is run */
  private readonly first = new Int32Array(AT_ONCE);

  /** `want`: 1 by probe that is evaluated. */
  constructor(program: Program, want: Uint8Array) {
    const { parts, usual, nominal } = program;
    this.program = program;
    this.before = { s: new Float64Array(usual.s.length), x: nominal };
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
    this.sides = Array.from({ length: AT_ONCE }, () => ({
      w: { s: Float64Array.from(usual.s), x: Float64Array.from(nominal) }, out: Float64Array.from(usual.value), since: new Int32Array(of.length),
      stale: new Uint8Array(parts.length), added: new Float64Array(adds.size), input: 0, from: 0, begins: 0, differs: NEVER,
    }));
  }

  /**
   * Puts a move on the next side.
   * @param i not less than in the call before
   * @returns the side, whose `out` and `since` say after `run` what it did
   */
  put(i: number, value: number): Side {
    const { program: { parts, firstOp, usual }, before } = this, side = this.sides[this.many++]!, { s, x } = side.w;
    side.input = i;
    side.from = firstOp[i]!;
    this.program.carry(before, this.done, side.from);
    this.done = side.from;
    x[i] = value;
    let q = 0;
    for (; q < parts.length && parts[q]!.uses[i]! < 0; q++) if (side.stale[q] === 1) { side.stale[q] = 0; s.set(this.found[q]!.final, parts[q]!.start); }
    side.begins = q;
    for (let p = 0; p <= parts.length; p++) side.since[p] = this.probes[p]!.length;
    if (q < parts.length) s.set(this.found[q]!.before, parts[q]!.start);
    for (let k = 0; k < this.adds.length; k++) { const at = this.adds[k]!, added = before.s[at]!; side.added[k] = added; s[at] = q < parts.length ? added : usual.s[at]!; }
    return side;
  }

  /** How many more can be put before they must be run. */
  get room(): number { return AT_ONCE - this.many; }

  /** Runs all moves that were put and clears them. */
  run(): void {
    const { program, many, sides, first } = this, { parts, usual, nominal } = program;
    for (let q = 0; q < parts.length; q++) {
      for (let m = 0; m < many; m++) first[m] = this.begin(sides[m]!, q);
      program.carryAll(sides, many, first, parts[q]!.to);
      this.tell(q);
    }
    for (let m = 0; m < many; m++) sides[m]!.differs = sides[m]!.from;
    this.tell(parts.length);
    for (let m = 0; m < many; m++) {
      const { w: { s, x }, input } = sides[m]!;
      x[input] = nominal[input]!;
      for (let k = 0; k < this.adds.length; k++) s[this.adds[k]!] = usual.s[this.adds[k]!]!;
    }
    this.many = 0;
  }

  /** Makes a part of a side stand as it is before the first operation that is to be run; which that is, `NEVER` where it is as at the nominal. */
  private begin(side: Side, q: number): number {
    const p = this.program.parts[q]!, { from, begins, w: { s } } = side;
    side.differs = NEVER;
    if (q < begins) return NEVER;
    if (q === begins) { side.stale[q] = 1; side.differs = from; return from; }
    const own = p.uses[side.input]!, other = this.other(side, q);
    if (own < 0 && !other) {
      if (side.stale[q] === 1) this.restore(side, q);
      this.leave(s, q);
      return NEVER;
    }
    const stood = other ? undefined : this.found[q]!.met.midst.get(own);
    if (stood) this.stand(s, q, stood); else s.fill(0, p.start, p.end);
    side.stale[q] = 1; side.differs = stood ? own : from;
    return stood ? own : p.from;
  }

  /** Evaluates of each side the probes of a part that may differ. */
  private tell(q: number): void {
    const after = this.after[q]!, { many, sides, first } = this;
    for (let m = 0; m < many; m++) {
      const { differs, since } = sides[m]!;
      let k = after.length;
      while (k > 0 && after[k - 1]! > differs) k--;
      since[q] = k; first[m] = k;
    }
    this.program.tellAll(sides, many, this.probes[q]!, first);
  }

  /** Does a part find another number than at the nominal where it reads earlier ones? What cannot be known counts as another; only parts that were run can have left one. */
  private other({ w: { s }, stale }: Side, q: number): boolean {
    const { met: { reads: was }, begins, added } = this.found[q]!, { reads } = this.program.parts[q]!;
    for (let r = 0; r < q; r++) if (stale[r] === 1) for (let k = begins[r]!; k < begins[r + 1]!; k++) if (s[reads[k]!] !== was[k]) return true;
    for (let n = 0; n < added.length; n++) if (s[reads[added[n]!]!] !== was[added[n]!]) return true;
    return false;
  }

  /** Puts a part to where it stood in its midst. */
  private stand(s: Float64Array, q: number, stood: Float64Array): void {
    const { start, end, adds } = this.program.parts[q]!;
    s.set(stood.subarray(0, end - start), start);
    for (let k = 0; k < adds.length; k++) s[adds[k]!] = stood[end - start + k]!;
  }

  /** Puts a part behind the one that names the input, moved by an earlier input, back to the nominal; what parts add to it they have not yet added. */
  private restore({ w: { s }, stale, added }: Side, q: number): void {
    const { start, end } = this.program.parts[q]!;
    stale[q] = 0;
    s.set(this.found[q]!.final, start);
    for (let k = 0; k < this.adds.length; k++) { const at = this.adds[k]!; if (at >= start && at < end) s[at] = added[k]!; }
  }

  /** A part that is as at the nominal leaves what it left there. */
  private leave(s: Float64Array, q: number): void {
    const { adds } = this.program.parts[q]!, { left } = this.found[q]!.met;
    for (let k = 0; k < adds.length; k++) s[adds[k]!] = left[k]!;
  }
}
