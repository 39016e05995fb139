import type { Shape } from '../shapes.ts';
import type { Box } from './box.ts';
import type { Point, Step } from './path.ts';

/** What lies under words hides them or is hidden: everything filled, and the broad strokes of a hose; lines, dots and marks do not. */
export function hides(shape: Shape): boolean {
  if (shape.kind === 'circle') return shape.pen !== 'letter' && shape.pen !== 'dot' && (shape.fill !== undefined || shape.hatch !== undefined);
  if (shape.kind !== 'path') return false;
  if (shape.pen === 'hose') return true;
  return ['fall', 'fill', 'wall', 'garnish', 'ice', 'stop'].includes(shape.pen) && (shape.fill !== undefined || shape.hatch !== undefined);
}

/** The outlines of a path, its curves as short straight pieces. */
export function outlines(steps: readonly Step[]): Point[][] {
  const out: Point[][] = [];
  let at: Point = [0, 0], now: Point[] = [];
  const bow = (n: number, place: (u: number) => Point): void => { for (let i = 1; i <= n; i += 1) now.push(place(i / n)); at = now.at(-1) ?? at; };
  for (const s of steps) {
    if (s[0] === 'M') { now = [[s[1], s[2]]]; out.push(now); at = [s[1], s[2]]; }
    else if (s[0] === 'L') { at = [s[1], s[2]]; now.push(at); }
    else if (s[0] === 'Q') { const [x, y] = at; bow(8, (u) => [(1 - u) ** 2 * x + 2 * u * (1 - u) * s[1] + u * u * s[3], (1 - u) ** 2 * y + 2 * u * (1 - u) * s[2] + u * u * s[4]]); }
    else if (s[0] === 'C') { const [x, y] = at; bow(14, (u) => [(1 - u) ** 3 * x + 3 * u * (1 - u) ** 2 * s[1] + 3 * u * u * (1 - u) * s[3] + u ** 3 * s[5], (1 - u) ** 3 * y + 3 * u * (1 - u) ** 2 * s[2] + 3 * u * u * (1 - u) * s[4] + u ** 3 * s[6]]); }
  }
  return out;
}

/** Does an area, given by its outlines, touch a box? */
export function touches(lines: readonly (readonly Point[])[], box: Box): boolean {
  const x1 = box.x + box.width, y1 = box.y + box.height;
  let inside = false;
  for (const line of lines) for (const [i, a] of line.entries()) {
    const b = line[(i + 1) % line.length] ?? a;
    if (crosses(a, b, box.x, box.y, x1, y1)) return true;
    const my = (box.y + y1) / 2, mx = (box.x + x1) / 2;
    if ((a[1] > my) !== (b[1] > my) && mx < a[0] + ((my - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
  }
  return inside;
}

/** Does a line of some breadth touch a box? */
export function strokes(lines: readonly (readonly Point[])[], breadth: number, box: Box): boolean {
  const h = breadth / 2;
  return lines.some((line) => line.some((a, i) => i > 0 && crosses(line[i - 1] ?? a, a, box.x - h, box.y - h, box.x + box.width + h, box.y + box.height + h)));
}

/** A straight piece and a rectangle, by cutting the piece to it. */
function crosses(a: Point, b: Point, x0: number, y0: number, x1: number, y1: number): boolean {
  const dx = b[0] - a[0], dy = b[1] - a[1];
  let from = 0, to = 1;
  for (const [p, q] of [[-dx, a[0] - x0], [dx, x1 - a[0]], [-dy, a[1] - y0], [dy, y1 - a[1]]] as const) {
    if (p === 0) { if (q < 0) return false; continue; }
    const r = q / p;
    if (p < 0) from = Math.max(from, r); else to = Math.min(to, r);
    if (from > to) return false;
  }
  return true;
}
