import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brimHeight, radiusAt, smooth, volumeBetween } from './profile.ts';

const ROCKS = [[0, 36], [88, 40]] as const, COUPE = [[0, 6], [6, 24], [16, 37], [30, 43], [46, 44.5]] as const;

describe('the profile of a glass', () => {
  it('holds what the frustum formula says', () => {
    // π h / 3 (r₀² + r₀ r₁ + r₁²): 399.6 mL for inner radii 36 and 40 mm over 88 mm.
    expect(volumeBetween(ROCKS, 0, 88)).toBeCloseTo(399.6, 1);
    expect(volumeBetween(COUPE, 0, 46)).toBeCloseTo(201.1, 1);
  });
  it('adds up in parts', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 46, noNaN: true }), (h) => {
      expect(volumeBetween(COUPE, 0, h) + volumeBetween(COUPE, h, 46)).toBeCloseTo(volumeBetween(COUPE, 0, 46), 9);
    }));
  });
  it('passes its knots and bulges nowhere else', () => {
    const curve = smooth(COUPE, 0, 46);
    for (const [h, r] of curve) {
      expect(r).toBeGreaterThanOrEqual(5.999);
      expect(r).toBeLessThanOrEqual(44.5001);
      expect(Math.abs(r - radiusAt(COUPE, h))).toBeLessThan(3);
    }
    for (let i = 1; i < curve.length; i += 1) expect(curve[i]?.[1] ?? 0).toBeGreaterThanOrEqual((curve[i - 1]?.[1] ?? 0) - 1e-9);
    expect(curve[0]).toEqual([0, 6]);
    expect(curve.at(-1)?.[1]).toBeCloseTo(44.5, 9);
  });
  it('goes on as a cylinder over the brim', () => {
    expect(radiusAt(ROCKS, brimHeight(ROCKS) + 10)).toBe(40);
  });
});
