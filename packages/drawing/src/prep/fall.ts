import type { Pad } from '../pen/pad.ts';
import { polygon, type Point, type Step } from '../pen/path.ts';
import type { Fill } from '../shapes.ts';

/** A stream: it leaves the lip level and falls as a parabola to where it lands, px. */
export interface Fall {
  /** outer edge of the lip it leaves */
  readonly lip: Point;
  /** breadth of the donor's wall */
  readonly wall: number;
  /** 1 to the right, -1 to the left */
  readonly side: 1 | -1;
  readonly land: Point;
  readonly width: number;
}

/** Breadth at the lip by what is poured: as the root of its volume. */
export function streamWidth(mL: number | null, intoGlass: boolean): number {
  return Math.max(4, 0.9 * Math.sqrt(mL ?? 30) * (intoGlass ? 1.15 : 0.8));
}

/** Height of the stream's middle over a place, px; null outside of its way. */
export function heightAt(fall: Fall, x: number): number | null {
  const u = ((x - fall.lip[0]) * fall.side) / Math.max(1, (fall.land[0] - fall.lip[0]) * fall.side);
  return u < 0 || u > 1 ? null : start(fall)[1] + (fall.land[1] - start(fall)[1]) * u * u;
}

/** Does it pass a point (the near lip of its receiver) with room to spare on the upper side? */
export function clears(fall: Fall, [x, y]: Point, by = 8): boolean {
  const at = heightAt(fall, x);
  return at !== null && at + breadth(fall, at) / 2 + by <= y;
}

function start(fall: Fall): Point { return [fall.lip[0], fall.lip[1] - fall.width / 2]; }
function breadth(fall: Fall, y: number): number { return fall.width * (1 + Math.max(0, y - fall.lip[1]) / 46) ** -0.25; }

export function fallOutline(fall: Fall): Step[] {
  const [x0, y0] = start(fall), dx = fall.land[0] - x0, dy = fall.land[1] - y0;
  const under: Point[] = [], over: Point[] = [];
  const n = 28;
  for (let i = 0; i <= n; i += 1) {
    const u = i / n, x = x0 + dx * u, y = y0 + dy * u * u;
    const tx = dx, ty = 2 * dy * u, t = Math.hypot(tx, ty), w = breadth(fall, y) / 2;
    const nx = (-ty / t) * fall.side, ny = (tx / t) * fall.side;
    under.push([x + nx * w, y + ny * w]);
    over.push([x - nx * w, y - ny * w]);
  }
  // A tongue hugs the inner side of the donor's wall.
  const inner = fall.lip[0] - fall.side * fall.wall, tip: Point = [inner - fall.side * 0.8, fall.lip[1] + fall.width * 0.85];
  const back = over.reverse(), last = back.at(-1) as Point;
  const steps: Step[] = [...polygon([tip, [inner, fall.lip[1]], ...under.slice(1), ...back], false)];
  steps.push(['C', last[0] - fall.side * fall.width * 0.55, last[1] - 0.4, inner - fall.side * fall.width * 0.62, fall.lip[1] - fall.width * 0.05, tip[0], tip[1]], ['Z']);
  return steps;
}

export function drawFall(pad: Pad, fall: Fall, fill: Fill, strong: boolean): void {
  pad.path('fall', fallOutline(fall), { fill, stroke: strong ? 'ink' : 'ink2' });
  const [x, y] = fall.land, u = 0.94;
  const x0 = fall.lip[0], y0 = start(fall)[1];
  const tx = x - x0, ty = 2 * (y - y0) * u, t = Math.hypot(tx, ty), w = breadth(fall, y);
  const long = Math.max(7, w * 0.8), half = Math.max(1.4, w * 0.22);
  const ex = x - (tx / t) * 1.5, ey = y - (ty / t) * 1.5, bx = ex - (tx / t) * long, by = ey - (ty / t) * long;
  pad.path('arrowhead', polygon([[ex, ey], [bx - (ty / t) * half, by + (tx / t) * half], [bx + (ty / t) * half, by - (tx / t) * half]]), strong ? {} : { fill: 'ink2' });
}
