import { combOf, quantile, sorted, type CombRow, type Tide } from './comb.ts';

/** A piece of wall drawn out: which heights, mm, how large, and the rows of its marks, one a hand. */
export interface Piece {
  readonly from: number; readonly to: number;
  /** px per mm */
  readonly scale: number;
  /** height of a row, mm */
  readonly step: number;
  readonly rows: readonly CombRow[];
  /** hands whose level lies beyond the piece */
  readonly beyond: number;
}

/** Heights of a row that can be chosen, mm: the least that is still seen. */
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5];
/** A row is at least so high, px. */
const SEEN = 2;
/** So much of the wall is drawn over and under the line in any case: the line's number stands there, px. */
const ROOM = { over: 96, under: 72 };
/** A share of the hands that may lie beyond the piece at either end, so that a few do not make all others small. */
const FAR = 0.002;

/** The piece of wall around a line, with `over` px above the line and `under` px below it; null where no level is known. */
export function pieceOf(tide: Tide, line: number, over: number, under: number): Piece | null {
  const levels = sorted(tide);
  if (levels.length === 0) return null;
  const low = Math.min(quantile(levels, FAR), line), high = Math.max(quantile(levels, 1 - FAR), line), edge = Math.max(1, (high - low) * 0.02);
  const scale = Math.min(over / (high + edge - line), under / (line - low + edge)), from = line - Math.min(under / scale, Math.max(line - low + edge, ROOM.under / scale)), to = line + Math.min(over / scale, Math.max(high - line + edge, ROOM.over / scale));
  const step = STEPS.find((s) => s * scale >= SEEN) ?? STEPS.at(-1)!;
  const all = combOf(tide, line, step, 1), rows = all.filter(({ row }) => line + row * step >= from - 1e-9 && line + (row + 1) * step <= to + 1e-9);
  const count = (list: readonly CombRow[]): number => list.reduce((sum, r) => sum + r.holds + r.fails, 0);
  return { from, to, scale, step, rows, beyond: count(all) - count(rows) };
}
