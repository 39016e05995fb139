import { steadyLine } from '../frame.ts';
import type { Box } from '../pen/pad.ts';
import { setWords, vesselOf, WORDS_GAP, type Board } from './board.ts';
import { captionOf, type Caption } from './caption.ts';
import type { FlowPrep } from './flow.ts';
import { boxOf, vesselSize, type Vessel } from './vessel.ts';

/** Preps that pour nowhere here stand where there is room: below the line, then in a row at the top. */
export function standRest(board: Board, rest: readonly FlowPrep[]): void {
  const { frame, flow } = board, line = steadyLine(frame);
  for (const prep of rest) {
    const { vessel, mL } = vesselOf(prep);
    const full = board.caption(prep), brief = captionOf(prep, flow, board.poured, true), tries: [number, Caption][] = [];
    for (let c: Caption | undefined = full; c !== undefined; c = c.less) tries.push([board.k, c]);
    const known = new Map<number, Spots>();
    const spotsAt = (k: number): Spots => {
      let spots = known.get(k);
      if (spots === undefined) { spots = new Spots(board, vessel, k, line); known.set(k, spots); }
      return spots;
    };
    // what presses and what stays is worth a smaller vessel
    const done = [...tries.slice(0, 1), ...[0.75, 0.55].flatMap((part) => tries.slice(0, -1).map(([, c]) => [board.k * part, c] as const)), ...tries.slice(1), [board.k * 0.75, brief] as const, [board.k * 0.55, brief] as const].some(([k, said]) => {
      const size = vesselSize(vessel, k), caption: Caption = { ...said, less: undefined };
      return (['under', 'right'] as const).some((where) => {
        const under = where === 'under', spots = spotsAt(k);
        const below = under ? caption.height : Math.max(0, caption.height + 6 - size.height), beside = under ? Math.max(size.width, caption.width) / 2 : size.width / 2 + 14 + caption.width;
        words.width = caption.width; words.height = caption.height;
        for (let i = 0; spots.has(i); i++) {
          const x = spots.at[2 * i]!, y = spots.at[2 * i + 1]!;
          if (!(i < spots.low ? y + below + 10 < frame.height && x < frame.dims - 20 - beside : y < line - below - 30 && x < frame.width - 20 - beside)) continue;
          setWords(words, where, x, y, size);
          if (board.free(words, WORDS_GAP) && board.put(prep, prep.key, vessel, mL, x, y, caption, [where], k) !== null) return true;
        }
        return false;
      });
    });
    if (!done) board.overlaps += 1;
  }
}

/** Words that are tried at a thousand places: one box, so that each is not one more on the heap. */
const words = { x: 0, y: 0, width: 0, height: 0 };

/** Where a vessel itself finds room, below the line and then above it: looked for as far as it is asked for, and kept for the next words beside it. No generator: each place that one gives is two objects, of some ten thousand a drawing. */
class Spots {
  /** axis and shelf of each, one behind the other */
  readonly at: number[] = [];
  /** so many of them are below the line */
  low = 0;
  private readonly board: Board;
  private readonly line: number;
  private readonly own: Box;
  private readonly box: { x: number; y: number; width: number; height: number };
  private readonly from: number;
  private readonly height: number;
  private below = true;
  private x: number;
  private y: number;

  constructor(board: Board, vessel: Vessel, k: number, line: number) {
    const size = vesselSize(vessel, k);
    this.board = board; this.line = line; this.own = boxOf(vessel, 0, 0, k); this.box = { ...this.own };
    this.from = 16 + size.width / 2; this.height = size.height;
    this.x = this.from; this.y = line + 34 + size.height;
  }

  /** Are there more than `i`? */
  has(i: number): boolean {
    while (this.at.length <= 2 * i) if (!this.further()) return false;
    return true;
  }

  /** Looks for one more, along the rows of a grid; false at its end. */
  private further(): boolean {
    const { frame } = this.board, half = this.from - 16;
    for (;;) {
      if (this.below ? !(this.y + 10 < frame.height) : !(this.y < this.line - 30)) {
        if (!this.below) return false;
        this.below = false; this.x = this.from; this.y = 14 + this.height;
        continue;
      }
      if (!(this.x < (this.below ? frame.dims : frame.width) - 20 - half)) { this.x = this.from; this.y += this.below ? 30 : 36; continue; }
      const { x, y } = this;
      this.x += this.below ? 24 : 30;
      this.box.x = x + this.own.x; this.box.y = y + this.own.y;
      if (!this.board.free(this.box)) continue;
      this.at.push(x, y);
      if (this.below) this.low += 1;
      return true;
    }
  }
}
