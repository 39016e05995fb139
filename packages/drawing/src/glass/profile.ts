import type { GlassReading } from '@washline/engine';

/** Inner radius by height, [height, radius] in mm, from the floor up. */
export type Profile = readonly (readonly [number, number])[];

/** Inner radius at a height above the floor, mm; under the floor that of the floor, above the brim that of the brim. */
export function radiusAt(profile: Profile, height: number): number {
  let below = profile[0];
  if (below === undefined) return 0;
  for (const knot of profile) {
    if (knot[0] >= height) {
      const span = knot[0] - below[0];
      return span > 0 && height > below[0] ? below[1] + ((knot[1] - below[1]) * (height - below[0])) / span : knot[1];
    }
    below = knot;
  }
  return below[1];
}

export function brimHeight(profile: Profile): number { return profile.at(-1)?.[0] ?? 0; }

/** The knots of a profile between two heights, both ends included, bottom to top. */
export function slice(profile: Profile, from: number, to: number): [number, number][] {
  const inside = profile.filter(([h]) => h > from && h < to).map(([h, r]) => [h, r] as [number, number]);
  return [[from, radiusAt(profile, from)], ...inside, [to, radiusAt(profile, to)]];
}

/** Volume between two heights in mL: the sum of the frusta. */
export function volumeBetween(profile: Profile, from: number, to: number): number {
  if (to <= from) return 0;
  let sum = 0, h0 = from, r0 = radiusAt(profile, from);
  for (let i = 0; i <= profile.length; i += 1) {
    const knot = profile[i], h1 = knot === undefined ? to : knot[0];
    if (h1 <= from || (knot !== undefined && h1 >= to)) continue;
    const r1 = knot === undefined ? radiusAt(profile, to) : knot[1];
    sum += (Math.PI * (h1 - h0) * (r0 * r0 + r0 * r1 + r1 * r1)) / 3;
    h0 = h1; r0 = r1;
  }
  return sum / 1000;
}

/** Outer measures of a glass as it is drawn, mm: height over all, greatest radius, and how deep its floor lies over the table. */
export function outerSize(glass: Pick<GlassReading, 'profile' | 'base_mm' | 'wall_mm' | 'stem_mm' | 'foot_mm'>): { readonly height: number; readonly radius: number; readonly floor: number } {
  const widest = Math.max(0, ...glass.profile.map(([, r]) => r)) + glass.wall_mm;
  const stemmed = glass.stem_mm > 0;
  const floor = glass.base_mm + (stemmed ? glass.stem_mm : 0);
  return { height: brimHeight(glass.profile) + floor, radius: Math.max(widest, stemmed ? glass.foot_mm : 0), floor };
}

/**
 * The same side as a smooth curve through its knots, for drawing: monotone cubic between them (F. N. Fritsch, R. E. Carlson, 1980), so that
 * no bowl bulges where its table does not. Two knots stay a straight side. Levels are heights and do not move.
 */
export function smooth(profile: Profile, from: number, to: number, every = 1.5): [number, number][] {
  if (profile.length < 3) return slice(profile, from, to);
  const knots = profile, n = knots.length;
  const d: number[] = [], m: number[] = [];
  for (let i = 0; i + 1 < n; i += 1) { const a = knots[i] as readonly [number, number], b = knots[i + 1] as readonly [number, number]; d.push((b[1] - a[1]) / Math.max(1e-6, b[0] - a[0])); }
  for (let i = 0; i < n; i += 1) {
    const before = d[i - 1], after = d[i];
    m.push(before === undefined ? after ?? 0 : after === undefined ? before : before * after <= 0 ? 0 : (2 * before * after) / (before + after));
  }
  const at = (h: number): number => {
    if (h <= (knots[0]?.[0] ?? 0)) return knots[0]?.[1] ?? 0;
    if (h >= brimHeight(profile)) return knots[n - 1]?.[1] ?? 0;
    let i = 0;
    while ((knots[i + 1]?.[0] ?? Infinity) < h) i += 1;
    const a = knots[i] as readonly [number, number], b = knots[i + 1] as readonly [number, number], w = b[0] - a[0], t = (h - a[0]) / w;
    return a[1] * (1 + 2 * t) * (1 - t) ** 2 + (m[i] ?? 0) * w * t * (1 - t) ** 2 + b[1] * t * t * (3 - 2 * t) - (m[i + 1] ?? 0) * w * t * t * (1 - t);
  };
  // Over the brim the side is straight: one step is enough.
  const brim = brimHeight(profile), end = Math.min(to, Math.max(from, brim));
  const count = Math.max(1, Math.min(400, Math.ceil((end - from) / every)));
  const side =  Array.from({ length: count + 1 }, (_, i) => { const h = from + ((end - from) * i) / count; return [h, at(h)] as [number, number]; });
  return to > end ? [...side, [to, at(to)]] : side;
}
