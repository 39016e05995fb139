import type { Box } from '../pen/pad.ts';

/** Boxes that are taken, side by side in one row of numbers: they are asked some ten thousand times for one drawing. */
export class Taken {
  private edges = new Float64Array(4 * 64);
  /** how many there are; less takes the last ones back */
  private count = 0;

  constructor(boxes: readonly Box[]) { this.add(...boxes); }

  get length(): number { return this.count; }
  /** Takes back all but so many. */
  back(to: number): void { this.count = to; }

  add(...boxes: readonly Box[]): void {
    if (4 * (this.count + boxes.length) > this.edges.length) { const more = new Float64Array(8 * (this.count + boxes.length)); more.set(this.edges); this.edges = more; }
    for (const { x, y, width, height } of boxes) {
      const at = 4 * this.count++;
      this.edges[at] = x; this.edges[at + 1] = y; this.edges[at + 2] = x + width; this.edges[at + 3] = y + height;
    }
  }

  /** Does a box come nearer than `gap` px to any? */
  hits({ x, y, width, height }: Box, gap: number): boolean {
    const { edges } = this, left = x - gap, top = y - gap, right = x + width + gap, bottom = y + height + gap;
    for (let at = 0, end = 4 * this.count; at < end; at += 4) if (edges[at]! < right && left < edges[at + 2]! && edges[at + 1]! < bottom && top < edges[at + 3]!) return true;
    return false;
  }
}
