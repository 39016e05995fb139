import type { Point, Step } from '../pen/path.ts';

/** Slopes at points of rising x with which a cubic between two of them never leaves their heights: Fritsch and Carlson, SIAM Journal on Numerical Analysis 17 (1980), 238. */
function slopesOf(points: readonly Point[]): number[] {
  const chord = points.slice(1).map(([x, y], i) => (y - points[i]![1]) / (x - points[i]![0]));
  const slope = points.map((_, i) => {
    const a = chord[i - 1], b = chord[i];
    if (a === undefined || b === undefined) return a ?? b ?? 0;
    return a * b <= 0 ? 0 : (a + b) / 2;
  });
  for (const [i, c] of chord.entries()) {
    const a = slope[i]!, b = slope[i + 1]!, reach = c === 0 ? Infinity : Math.hypot(a / c, b / c);
    if (reach > 3) { slope[i] = c === 0 ? 0 : (a * 3) / reach; slope[i + 1] = c === 0 ? 0 : (b * 3) / reach; }
  }
  return slope;
}

/** A smooth curve through points of rising x that shows no minimum or maximum that was not told; `back`: from the last to the first, as the end of an outline. */
export function evenCurve(points: readonly Point[], back = false): Step[] {
  const slope = slopesOf(points), order = points.map((_, i) => (back ? points.length - 1 - i : i));
  return order.map((i, k): Step => {
    const [x, y] = points[i]!;
    if (k === 0) return [back ? 'L' : 'M', x, y];
    const from = order[k - 1]!, [px, py] = points[from]!, third = (x - px) / 3;
    return ['C', px + third, py + slope[from]! * third, x - third, y - slope[i]! * third, x, y];
  });
}

/** Height of that curve over a place; at its ends where the place lies outside. */
export function evenAt(points: readonly Point[]): (x: number) => number {
  const slope = slopesOf(points);
  return (x) => {
    const k = Math.max(1, points.findIndex(([px]) => px >= x)), [x0, y0] = points[k - 1]!, [x1, y1] = points[k] ?? points[k - 1]!;
    const w = x1 - x0, t = w > 0 ? Math.min(1, Math.max(0, (x - x0) / w)) : 0;
    return y0 * (1 + 2 * t) * (1 - t) ** 2 + y1 * t * t * (3 - 2 * t) + w * (slope[k - 1]! * t * (1 - t) ** 2 + (slope[k] ?? 0) * t * t * (t - 1));
  };
}
