import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { brim, brimHeight, heightOf, heightOfRadius, radiusAt, TASTING_GLASS, volumeBelow, withBrim } from './profile.ts';
import type { Profile } from './profile.ts';

const rocks: Profile = [[0, 36], [88, 40]];
/** Generic shapes composed for the project; brim volumes worked by hand with V = pi h/3 (r0² + r0 r1 + r1²) (common practice, no source). */
const shapes: readonly [string, Profile, number][] = [
  ['cone', [[0, 2], [58, 55]], 190.7], ['saucer', [[0, 6], [6, 24], [16, 37], [30, 43], [46, 44.5]], 201.1],
  ['bell', [[0, 6], [8, 18], [22, 26.5], [45, 30.5], [66, 30]], 145.1], ['rocks', [[0, 31], [75, 36]], 264.9],
  ['double rocks', rocks, 399.6], ['flute', [[0, 4], [15, 14], [50, 22], [110, 24.5], [150, 23]], 213.3], ['mug', [[0, 38], [92, 40]], 439.7],
];

describe('profile', () => {
  it.each(shapes)('%s holds its brim', (_, profile, mL) => { expect(Math.abs(brim(profile) - mL)).toBeLessThan(0.1); });
  it('a cylinder of 10 mm is pi h', () => { expect(volumeBelow([[0, 10], [100, 10]], 50)).toBeCloseTo(Math.PI * 5, 10); });
  it('a full cone is a third of its cylinder', () => { expect(brim([[0, 0], [60, 30]])).toBeCloseTo((Math.PI * 900 * 60) / 3000, 10); });
  it('120 mL stand 28.4 mm high in double rocks', () => { expect(heightOf(rocks, 120)).toBeCloseTo(28.4, 1); });
  it('height undoes volume, below and above the brim', () => {
    fc.assert(fc.property(fc.constantFrom(...shapes), fc.double({ min: 0, max: 1.6, noNaN: true }), ([, profile], share) => {
      const h = share * brimHeight(profile);
      expect(heightOf(profile, volumeBelow(profile, h))).toBeCloseTo(h, 6);
    }), { numRuns: 300 });
  });
  it('stands on the floor at nothing and below', () => {
    expect(heightOf(rocks, 0)).toBe(0); expect(heightOf(rocks, -3)).toBe(0); expect(volumeBelow(rocks, -1)).toBe(0);
  });
  it('goes on as a cylinder above the brim', () => {
    expect(volumeBelow(rocks, 98) - brim(rocks)).toBeCloseTo((Math.PI * 1600 * 10) / 1000, 9);
  });
  it('a step in the radius is no volume', () => { expect(brim([[0, 10], [20, 10], [20, 15], [40, 15]])).toBeCloseTo((Math.PI * (2000 + 4500)) / 1000, 9); });
  it('knows its radius and where it is wide enough', () => {
    expect(radiusAt(rocks, 44)).toBeCloseTo(38, 12);
    expect(heightOfRadius(rocks, 38)).toBeCloseTo(44, 12);
    expect(heightOfRadius(rocks, 20)).toBe(0);
    expect(heightOfRadius(rocks, 60)).toBe(88);
  });
  it('takes a written brim by its radius', () => { expect(brim(withBrim(rocks, 300))).toBeCloseTo(300, 9); expect(brimHeight(withBrim(rocks, 300))).toBe(88); });
  it('the tasting glass holds 215 ± 10 mL (ISO 3591)', () => { expect(Math.abs(brim(TASTING_GLASS) - 215)).toBeLessThan(10); });
  it('no profile holds nothing', () => { expect(brim([])).toBe(0); expect(heightOf([], 10)).toBe(0); expect(withBrim([], 10)).toEqual([]); });
});
