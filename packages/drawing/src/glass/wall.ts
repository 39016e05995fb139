import type { Pad } from '../pen/pad.ts';
import { polygon, type Point, type Step } from '../pen/path.ts';
import type { Scheme } from '../pen/tint.ts';
import { brimHeight, radiusAt, smooth } from './profile.ts';
import { heightY, type Shaped, type Stand } from './stand.ts';

/** The cut wall, base, stem and foot of the serving glass, as one hatched mass with one outline. */
export function drawWall(pad: Pad, glass: Shaped, stand: Stand, scheme: Scheme): void {
  const steps = wallOutline(glass, stand);
  pad.path('fill', steps, { fill: 'wall', hatch: 'glass' });
  pad.path('wall', steps, scheme === 'dark' ? { stroke: 'ink3', width: 0.8 } : {});
}

/** The outline of a glass in section, px: outer side down, foot, up again, rounded lips, inner side. */
export function wallOutline(glass: Shaped, stand: Stand): Step[] {
  const brim = brimHeight(glass.profile);
  const { axis, scale } = stand;
  const inner = smooth(glass.profile, 0, brim).map(([h, r]) => [r * scale, heightY(stand, h)] as const);
  const wall = Math.max(glass.wall_mm * scale, 2.4);
  const outer = outerSide(glass, stand, wall);
  const lip = inner.at(-1) as Point, edge = outer.at(-1) as Point;
  const half = (side: 1 | -1, points: readonly Point[]): Point[] => points.map(([x, y]) => [axis + side * x, y]);
  const up = half(1, outer), down = half(-1, [...outer].reverse());
  const steps: Step[] = polygon(down, false);
  // The foot's corners are cut with a radius, the lips are ground round.
  const corner = glass.stem_mm > 0 ? 1.5 : Math.min(16, glass.base_mm * scale * 0.6);
  const out: Step[] = steps.slice(0, -1);
  const footLeft = down.at(-1) as Point, footRight = up[0] as Point, beforeLeft = down.at(-2) ?? footLeft, afterRight = up[1] ?? footRight;
  out.push(['L', ...towards(footLeft, beforeLeft, corner)], ['Q', footLeft[0], footLeft[1], footLeft[0] + corner, footLeft[1]]);
  out.push(['L', footRight[0] - corner, footRight[1]], ['Q', footRight[0], footRight[1], ...towards(footRight, afterRight, corner)]);
  for (const [x, y] of up.slice(1)) out.push(['L', x, y]);
  const bulge = Math.min(5, wall * 0.42);
  out.push(['Q', axis + (lip[0] + edge[0]) / 2, lip[1] - bulge * 2, axis + lip[0], lip[1]]);
  for (const [x, y] of half(1, [...inner].reverse()).slice(1)) out.push(['L', x, y]);
  for (const [x, y] of half(-1, inner)) out.push(['L', x, y]);
  out.push(['Q', axis - (lip[0] + edge[0]) / 2, lip[1] - bulge * 2, axis - edge[0], edge[1]], ['Z']);
  return out;
}

/** Outer side from the table up to the lip: [distance from the axis, y] in px. */
function outerSide(glass: Shaped, stand: Stand, wall: number): Point[] {
  const brim = brimHeight(glass.profile);
  const { scale, table } = stand;
  const lip: Point = [radiusAt(glass.profile, brim) * scale + wall, heightY(stand, brim)];
  if (glass.stem_mm <= 0) {
    const r0 = radiusAt(glass.profile, 0) * scale;
    const knots = smooth(glass.profile, 0, brim).slice(1, -1).map(([h, r]) => [r * scale + wall, heightY(stand, h)] as Point);
    return [[r0 + wall, table], ...(knots.length === 0 ? [] : [[r0 + wall, heightY(stand, 0)] as Point]), ...knots, lip];
  }
  // Stem: a foot that rises to a slender stem, which opens into the bowl.
  const foot = Math.max(glass.foot_mm * scale, 12), stem = Math.max(3.6 * scale, 4.5);
  const bowl = heightY(stand, 0), under = bowl + glass.base_mm * scale;
  const side: Point[] = [[foot, table], [foot, table - Math.max(1.2 * scale, 2.5)]];
  const rise = Math.min(16, glass.stem_mm * 0.3);
  for (let i = 1; i <= 10; i += 1) { const u = 1 - i / 10; side.push([stem + (foot - stem) * u ** 2.2, table - (1.2 + rise * (i / 10) ** 2.6) * scale]); }
  const flare = Math.min(14, glass.stem_mm * 0.25);
  for (let i = 0; i <= 6; i += 1) { const u = i / 6; side.push([stem + 2.6 * scale * u ** 2.4, under + (flare * (1 - u) + 1.5) * scale]); }
  // The bowl's outer side lies one wall off its inner side, along the normal.
  const bowlSide = smooth(glass.profile, 0, brim);
  for (const [i, [h, r]] of bowlSide.entries()) {
    const before = bowlSide[Math.max(0, i - 1)] as [number, number], after = bowlSide[Math.min(bowlSide.length - 1, i + 1)] as [number, number];
    const dr = after[1] - before[1], dh = after[0] - before[0], d = Math.hypot(dr, dh) || 1;
    const x = r * scale + (dh / d) * wall, y = heightY(stand, h) + (dr / d) * wall;
    if (y < under + 3 * scale && x > stem + 1.5 * scale) side.push([x, y]);
  }
  side.push(lip);
  return side;
}

function towards([x, y]: Point, [tx, ty]: Point, by: number): Point {
  const d = Math.hypot(tx - x, ty - y);
  const k = d === 0 ? 0 : Math.min(1, by / d);
  return [x + (tx - x) * k, y + (ty - y) * k];
}
