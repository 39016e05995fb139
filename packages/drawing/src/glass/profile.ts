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
  const knots = slice(profile, from, to);
  let sum = 0;
  for (let i = 1; i < knots.length; i += 1) {
    const [h0, r0] = knots[i - 1] as [number, number], [h1, r1] = knots[i] as [number, number];
    sum += (Math.PI * (h1 - h0) * (r0 * r0 + r0 * r1 + r1 * r1)) / 3;
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
