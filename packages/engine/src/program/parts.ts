/**
 * A part of a program that can be run by itself: one prep; of the drink what is measured, what comes on top later, what is mixed apart, the glass, or all in one. Its operations, its places in the buffer and the probes that tell of it each stand
 * in one row; what they read of earlier parts is named, so that a part is run again only where that has changed.
 */
export interface Part {
  /** operations `from` up to, not including, `to` */
  readonly from: number; readonly to: number;
  /** places `start` up to, not including, `end`, of which only this part's operations write */
  readonly start: number; readonly end: number;
  /** probes `first` up to, not including, `last` */
  readonly first: number; readonly last: number;
  /** places of earlier parts that it reads, each once */
  readonly reads: Int32Array;
  /** places of earlier parts that it adds to: how much was taken of a prep; they are among `reads` */
  readonly adds: Int32Array;
  /** by input: the first of its operations that may read it, `to` where its probes alone may; -1 for none */
  readonly uses: Int32Array;
}

/** Where a part begins; of earlier places 1 where it reads, and how many. */
interface Begun { readonly from: number; readonly start: number; readonly first: number; readonly reads: Uint8Array; many: number; readonly adds: Set<number>; readonly uses: Map<number, number> }

/** Keeps account of the parts while a recipe is compiled. */
export class Parts {
  private readonly done: (Begun & { readonly to: number; readonly end: number; readonly last: number })[] = [];
  private open: Begun | null = null;

  /** Ends the part that is open, if any, and begins the next; the numbers are of operations, places and probes so far. */
  begin(operation: number, place: number, probe: number): void {
    this.end(operation, place, probe);
    this.open = { from: operation, start: place, first: probe, reads: new Uint8Array(place), many: 0, adds: new Set(), uses: new Map() };
  }

  /** Ends the part that is open, if any: what is named from here on is of no part and may read anything. */
  end(operation: number, place: number, probe: number): void {
    if (this.open) this.done.push({ ...this.open, to: operation, end: place, last: probe });
    this.open = null;
  }

  /** The open part uses an input, from this operation on. */
  uses(input: number, operation: number): void { if (this.open && !this.open.uses.has(input)) this.open.uses.set(input, operation); }

  /** The open part reads `length` places from `at` on, of an earlier part. */
  reads(at: number, length = 1): void {
    const { open } = this;
    if (!open) return;
    for (let i = at, end = Math.min(at + length, open.start); i < end; i++) if (open.reads[i] === 0) { open.reads[i] = 1; open.many++; }
  }

  /** The open part adds to a place of an earlier part. */
  adds(at: number): void {
    this.reads(at);
    if (this.open && at < this.open.start) this.open.adds.add(at);
  }

  /** All parts, in order. */
  all(inputs: number): Part[] {
    return this.done.map((p) => {
      const uses = new Int32Array(inputs).fill(-1);
      for (const [i, operation] of p.uses) uses[i] = operation;
      return { from: p.from, to: p.to, start: p.start, end: p.end, first: p.first, last: p.last, reads: marked(p.reads, p.many), adds: Int32Array.from(p.adds), uses };
    });
  }
}

function marked(places: Uint8Array, many: number): Int32Array {
  const out = new Int32Array(many);
  for (let at = 0, n = 0; n < many; at++) if (places[at] === 1) out[n++] = at;
  return out;
}

/**
 * Which parts inputs can reach: those that use one of them, and those that read what such a part leaves or adds to.
 * @param length places of the buffer
 * @returns 1 by part where it can be another than at the nominal
 * @source none - definition
 */
export function reachedBy(moved: Int32Array, parts: readonly Part[], length: number): Uint8Array {
  const touched = new Uint8Array(length);
  return Uint8Array.from(parts, (p) => {
    if (!moved.some((i) => p.uses[i]! >= 0) && !p.reads.some((at) => touched[at] === 1)) return 0;
    touched.fill(1, p.start, p.end);
    for (const at of p.adds) touched[at] = 1;
    return 1;
  });
}

/** Places of parts that are not run again to which reached ones add, and what stands there before the first of them. @source none - definition */
export function standing(parts: readonly Part[], found: readonly { readonly reads: Float64Array }[], reached: Uint8Array): Map<number, number> {
  const out = new Map<number, number>();
  parts.forEach((p, q) => {
    if (reached[q] !== 1) return;
    for (const at of p.adds) if (!out.has(at) && !parts.some((o, r) => reached[r] === 1 && at >= o.start && at < o.end)) out.set(at, found[q]!.reads[p.reads.indexOf(at)]!);
  });
  return out;
}
