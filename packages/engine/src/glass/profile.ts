import table from '../../../../data/physics/glass.json' with { type: 'json' };

/** Inner radius by height, both in mm, from the floor up; the sections between are frusta, above the last the glass goes on as a cylinder. */
export type Profile = readonly (readonly [number, number])[];

/** mm³ in a mL. */
const MM3 = 1000;

/** Volume of a frustum in mm³: radii and height in mm. */
function frustum(r0: number, r1: number, h: number): number {
  return ((Math.PI * h) / 3) * (r0 * r0 + r0 * r1 + r1 * r1);
}

/**
 * What the glass holds below a height, in mL.
 * h: mm above the floor; 0 at and below it; above the brim the last radius goes on. An empty profile holds nothing. Allocates nothing.
 * @source none - geometry of stacked frusta
 */
export function volumeBelow(profile: Profile, h: number): number {
  let sum = 0;
  for (let i = 1; i < profile.length; i++) {
    const h0 = profile[i - 1]![0], r0 = profile[i - 1]![1], h1 = profile[i]![0], r1 = profile[i]![1];
    if (h <= h0) return sum / MM3;
    if (h < h1) return (sum + frustum(r0, r0 + ((r1 - r0) * (h - h0)) / (h1 - h0), h - h0)) / MM3;
    sum += frustum(r0, r1, h1 - h0);
  }
  const last = profile[profile.length - 1];
  if (last && h > last[0]) sum += Math.PI * last[1] * last[1] * (h - last[0]);
  return sum / MM3;
}

/**
 * Height in mm that a volume reaches.
 * mL: 0 and up; 0 and less stand on the floor; more than the brim holds goes on in the cylinder above it. Inverse of `volumeBelow`. Allocates nothing.
 * @source none - geometry of stacked frusta
 */
export function heightOf(profile: Profile, mL: number): number {
  const first = profile[0];
  if (!first) return 0;
  let left = mL * MM3;
  if (!(left > 0)) return first[0];
  for (let i = 1; i < profile.length; i++) {
    const h0 = profile[i - 1]![0], r0 = profile[i - 1]![1], h1 = profile[i]![0], r1 = profile[i]![1];
    const whole = frustum(r0, r1, h1 - h0);
    if (left < whole) {
      const slope = (r1 - r0) / (h1 - h0);
      const r = Math.cbrt(r0 * r0 * r0 + (3 * slope * left) / Math.PI); // radius at the level
      return h0 + (3 * left) / (Math.PI * (r * r + r * r0 + r0 * r0)); // no division by a slope that may be 0
    }
    left -= whole;
  }
  const last = profile[profile.length - 1]!;
  return last[1] > 0 ? last[0] + left / (Math.PI * last[1] * last[1]) : Infinity;
}

/** Inner radius in mm at a height in mm; the ends go on below the floor and above the brim. @source none - geometry */
export function radiusAt(profile: Profile, h: number): number {
  for (let i = 1; i < profile.length; i++) {
    const h0 = profile[i - 1]![0], r0 = profile[i - 1]![1], h1 = profile[i]![0], r1 = profile[i]![1];
    if (h <= h0) return r0;
    if (h < h1) return r0 + ((r1 - r0) * (h - h0)) / (h1 - h0);
  }
  return profile[profile.length - 1]?.[1] ?? 0;
}

/**
 * Lowest height in mm at which the glass is at least so wide: where a piece of that radius comes to lie. The brim's height where it never is.
 * radius: mm. @source none - geometry
 */
export function heightOfRadius(profile: Profile, radius: number): number {
  const first = profile[0];
  if (!first) return 0;
  if (first[1] >= radius) return first[0];
  for (let i = 1; i < profile.length; i++) {
    const h0 = profile[i - 1]![0], r0 = profile[i - 1]![1], h1 = profile[i]![0], r1 = profile[i]![1];
    if (r1 >= radius) return r1 === r0 ? h0 : h0 + ((h1 - h0) * (radius - r0)) / (r1 - r0);
  }
  return profile[profile.length - 1]![0];
}

/** What the glass holds to the brim, in mL. @source none - geometry of stacked frusta */
export function brim(profile: Profile): number {
  return profile.length ? volumeBelow(profile, profile[profile.length - 1]![0]) : 0;
}

/** Height of the brim above the floor, in mm. @source none - definition */
export function brimHeight(profile: Profile): number {
  return profile[profile.length - 1]?.[0] ?? 0;
}

/**
 * A profile of the same heights that holds a written brim volume: every radius by the root of the ratio.
 * mL: above 0; a profile that holds nothing is given back as it is.
 * @source none - geometry
 */
export function withBrim(profile: Profile, mL: number): Profile {
  const held = brim(profile);
  if (!(held > 0) || !(mL > 0)) return profile;
  const factor = Math.sqrt(mL / held);
  return profile.map(([h, r]) => [h, r * factor] as const);
}

/** A generic bowl of the dimensions of the standard tasting glass, 215 ± 10 mL. @source iso-3591 heights and diameters; the curve between composed here */
export const TASTING_GLASS: Profile = table.iso_3591.profile as unknown as Profile;
