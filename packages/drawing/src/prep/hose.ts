import type { Frame } from '../frame.ts';
import type { Box } from '../pen/box.ts';
import { outlines } from '../pen/cover.ts';
import type { Point, Step } from '../pen/path.ts';
import { brimHeight } from '../glass/profile.ts';
import type { Vessel } from './vessel.ts';

/** The way of a rubber tube from a nozzle to over the rim: where it ends, its highest point, and the height its end hangs at. */
export interface HoseWay { readonly steps: readonly Step[]; readonly end: number; readonly over: number; readonly tip: number }

export function hoseWay([x, y]: Point, frame: Frame): HoseWay {
  const high = y < frame.brim - 40;
  const end = high ? Math.max(frame.left + 24, x + 17) : Math.min(frame.left + 46, frame.stand.axis - 20), over = high ? y - 8 : frame.brim - 34, tip = high ? Math.min(frame.brim + 4, y + 90) : frame.brim + 13;
  const s = Math.max(20, frame.left - 34 - x);
  const steps: Step[] = high ? [['M', x, y], ['C', x + 9, y - 2, end, over, end, y + 22], ['L', end, tip]] : [['M', x, y], ['C', x + s * 0.75, y + 2, x + s * 0.34, over, x + s * 1.12, over], ['C', end - 6, over, end, over + 14, end, tip]];
  return { steps, end, over, tip };
}

/** Where a siphon on its shelf has its nozzle. */
export function nozzleOf(vessel: Vessel, axis: number, shelf: number, k: number): Point {
  const m = k / 0.84;
  return [axis + 19 * m, shelf - (vessel.base + brimHeight(vessel.profile)) * k - 23.5 * m];
}

/** The room a hose takes, as small boxes along it. */
export function hoseRoom(way: HoseWay, breadth: number, down: number): Box[] {
  const points = [...(outlines(way.steps)[0] ?? []), [way.end, Math.max(way.tip, down)] as Point], half = breadth / 2;
  return points.slice(1).map((b, i) => {
    const a = points[i] ?? b;
    return { x: Math.min(a[0], b[0]) - half, y: Math.min(a[1], b[1]) - half, width: Math.abs(a[0] - b[0]) + breadth, height: Math.abs(a[1] - b[1]) + breadth };
  });
}
