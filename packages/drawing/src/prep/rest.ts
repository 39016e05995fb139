import { captionOf, type Caption } from './caption.ts';
import { vesselOf, type Board } from './board.ts';
import type { FlowPrep } from './flow.ts';
import { boxOf, vesselSize, type Vessel } from './vessel.ts';

/** Preps that pour nowhere here stand where there is room: below the line, then in a row at the top. */
export function standRest(board: Board, rest: readonly FlowPrep[]): void {
  const { frame, flow } = board, line = frame.washline ?? frame.brim + 60;
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
        const below = where === 'under' ? caption.height : Math.max(0, caption.height + 6 - size.height), beside = where === 'under' ? Math.max(size.width, caption.width) / 2 : size.width / 2 + 14 + caption.width;
        return spotsAt(k).some((x, y, low) => (low ? y + below + 10 < frame.height && x < frame.dims - 20 - beside : y < line - below - 30 && x < frame.width - 20 - beside) && board.put(prep, prep.key, vessel, mL, x, y, caption, [where], k) !== null);
      });
    });
    if (!done) board.overlaps += 1;
  }
}

/** Where a vessel itself finds room, below the line and then above it: looked for as far as it is asked for, and kept for the next words beside it. */
class Spots {
  private readonly found: (readonly [x: number, y: number, low: boolean])[] = [];
  private readonly further: Iterator<readonly [number, number, boolean]>;

  constructor(board: Board, vessel: Vessel, k: number, line: number) { this.further = places(board, vessel, k, line); }

  some(fits: (x: number, y: number, low: boolean) => boolean): boolean {
    for (let i = 0; ; i++) {
      if (i === this.found.length) {
        const next = this.further.next();
        if (next.done === true) return false;
        this.found.push(next.value);
      }
      if (fits(...this.found[i]!)) return true;
    }
  }
}

function* places(board: Board, vessel: Vessel, k: number, line: number): Generator<readonly [number, number, boolean]> {
  const { frame } = board, size = vesselSize(vessel, k), half = size.width / 2, own = boxOf(vessel, 0, 0, k);
  const free = (x: number, y: number): boolean => board.free({ x: x + own.x, y: y + own.y, width: own.width, height: own.height });
  for (let y = line + 34 + size.height; y + 10 < frame.height; y += 30) for (let x = 16 + half; x < frame.dims - 20 - half; x += 24) if (free(x, y)) yield [x, y, true];
  for (let y = 14 + size.height; y < line - 30; y += 36) for (let x = 16 + half; x < frame.width - 20 - half; x += 30) if (free(x, y)) yield [x, y, false];
}
