import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { brim, heightOf, volumeBelow } from './profile.ts';
import type { Profile } from './profile.ts';
import { ICE_DENSITY, pieceMass, CUBE } from './pieces.ts';
import { iceClearance, iceThatFits, stand, STANDING, standInto } from './stand.ts';

const rocks: Profile = [[0, 36], [88, 40]];
const cone: Profile = [[0, 2], [58, 55]];
const cube = { kind: 'large cube', count: 1, size_mm: 50 } as const;

describe('a 50 mm cube in double rocks, worked by hand', () => {
  it('149 mL under 57 mL of foam: draught 43.8, level 59.0, foam to 74.1, 68 mL free', () => {
    const s = stand(rocks, { liquid_mL: 149, liquid_density: 1.01, foam_mL: 57, foam_density: 0.263, ice: cube });
    expect(s.liquid_mm).toBeCloseTo(59.0, 1);
    expect(s.liquid_mm - s.iceFrom_mm).toBeCloseTo((50 * (0.9167 - 0.263)) / (1.01 - 0.263), 6);
    expect(s.iceFrom_mm).toBeCloseTo(15.2, 1); expect(s.iceTo_mm).toBeCloseTo(65.2, 1);
    expect(s.washline_mm).toBeCloseTo(74.1, 1);
    expect(Math.abs(s.over_mL + 68)).toBeLessThan(1);
  });
  it('163.4 mL without foam: draught 45.4, level 62.9, the cube stands out', () => {
    const s = stand(rocks, { liquid_mL: 163.4, liquid_density: 1.01, ice: cube });
    expect(s.liquid_mm).toBeCloseTo(62.9, 1);
    expect(s.liquid_mm - s.iceFrom_mm).toBeCloseTo(45.4, 1);
    expect(s.washline_mm).toBe(s.iceTo_mm); expect(s.level_mm).toBe(s.liquid_mm);
  });
  it('42.5 mL of foam over a cube of 79.6 g: lower than at the start', () => {
    const s = stand(rocks, { liquid_mL: 184, liquid_density: 1.005, foam_mL: 42.5, foam_density: 0.263, ice: { ...cube, mass_g: 79.6 } });
    expect(s.level_mm).toBeLessThan(74.1);
  });
});

describe('what floats displaces its own weight', () => {
  const kinds = fc.constantFrom('cubes', 'sphere', 'spear', 'crushed', 'pebble');
  const tub: Profile = [[0, 45], [88, 45]]; // as wide everywhere, so that ice rests on the floor or nowhere
  it('liquid and foam under the ice balance its mass, and the levels close', () => {
    fc.assert(fc.property(kinds, fc.integer({ min: 1, max: 6 }), fc.double({ min: 3, max: 60, noNaN: true }), fc.double({ min: 40, max: 400, noNaN: true }), fc.double({ min: 0.94, max: 1.1, noNaN: true }), fc.double({ min: 0, max: 80, noNaN: true }), (kind, count, mass_g, liquid_mL, liquid_density, foam_mL) => {
      const foam_density = 0.25;
      const s = stand(tub, { liquid_mL, liquid_density, foam_mL, foam_density, ice: { kind, count, mass_g } });
      const ice = (count * mass_g) / ICE_DENSITY;
      const inLiquid = volumeBelow(tub, s.liquid_mm) - liquid_mL;
      const inFoam = foam_mL > 0 ? volumeBelow(tub, s.level_mm) - liquid_mL - foam_mL - inLiquid : 0;
      expect(inLiquid).toBeGreaterThan(-1e-6); expect(inLiquid + inFoam).toBeLessThan(ice + 1e-6);
      const lift = inLiquid * liquid_density + inFoam * foam_density;
      if (s.iceFrom_mm > 0) expect(lift).toBeCloseTo(count * mass_g, 4);
      else expect(lift).toBeLessThan(count * mass_g + 1e-4); // on the floor
      expect(s.washline_mm).toBeGreaterThanOrEqual(Math.max(s.liquid_mm, s.level_mm, s.iceTo_mm));
    }), { numRuns: 500 });
  });
  it('does not jump where the foam just covers the cube', () => {
    let last = 0;
    for (let foam = 0; foam < 60; foam += 0.25) {
      const s = stand(rocks, { liquid_mL: 150, liquid_density: 1.01, foam_mL: foam, foam_density: 0.26, ice: cube });
      if (foam > 0.25) expect(s.level_mm - last).toBeLessThan(0.12);
      if (foam > 0) expect(s.level_mm).toBeGreaterThanOrEqual(last - 1e-9);
      last = s.level_mm;
    }
  });
});

describe('ice that does not float', () => {
  it('a cube in a splash of liquid stands on the floor', () => {
    const s = stand([[0, 40], [90, 40]], { liquid_mL: 40, liquid_density: 1, ice: cube });
    expect(s.iceFrom_mm).toBe(0); expect(s.iceTo_mm).toBeCloseTo(50, 6);
    expect(s.liquid_mm).toBeCloseTo(40000 / (Math.PI * 1600 - 2500), 6);
  });
  it('a sphere in a cone hangs where the wall is as wide', () => {
    const s = stand(cone, { liquid_mL: 10, liquid_density: 1, ice: { kind: 'sphere', count: 1, size_mm: 40 } });
    expect(s.iceFrom_mm).toBeCloseTo(((20 - 2) / 53) * 58, 6);
  });
  it('ice sinks in strong spirit', () => {
    expect(stand(rocks, { liquid_mL: 200, liquid_density: 0.89, ice: { kind: 'cubes', count: 1, size_mm: 30 } }).iceFrom_mm).toBe(0);
  });
  it('stands on what is firm below', () => {
    const s = stand(rocks, { base_mL: 20, liquid_mL: 30, liquid_density: 1, ice: cube });
    expect(s.iceFrom_mm).toBeCloseTo(heightOf(rocks, 20), 9);
  });
  it('cubes that cannot lie side by side are a heap', () => {
    const s = stand(rocks, { liquid_mL: 60, liquid_density: 1, ice: { kind: 'cubes', count: 7, size_mm: 32 } });
    expect(s.iceTo_mm - s.iceFrom_mm).toBeGreaterThan(64);
    expect(volumeBelow(rocks, s.liquid_mm)).toBeCloseTo(60 / (1 - 0.585), 6);
  });
});

describe('limits', () => {
  it('liquid alone', () => {
    expect(stand(rocks, { liquid_mL: 120, liquid_density: 1 })).toMatchObject({ iceFrom_mm: 0, iceTo_mm: 0 });
    expect(stand(rocks, { liquid_mL: 420, liquid_density: 1 }).over_mL).toBeCloseTo(420 - brim(rocks), 9);
  });
  it('a 50 mm cube needs 70.7 mm of rim, a sphere its diameter', () => {
    expect(iceClearance(rocks, 'large cube', 50)).toBeCloseTo(2 * 36 - 50 * Math.SQRT2, 6);
    expect(iceClearance([[0, 27.5], [125, 30.5]], 'large cube', 50)).toBeLessThan(0);
    expect(iceClearance(rocks, 'crushed', 5)).toBe(Infinity);
    const tulip: Profile = [[0, 8], [12, 28], [35, 37], [60, 34], [85, 25]];
    expect(iceClearance(tulip, 'sphere', 55)).toBeCloseTo(-5, 6);
  });
  it('a glass of cubes is about half its volume in grams', () => { expect(iceThatFits(rocks, 'cubes')).toBeCloseTo(399.6 * 0.585 * 0.9167, 0); });
  it('writes the same numbers into an array', () => {
    const out = new Float64Array(STANDING + 2);
    standInto(out, 2, rocks, 0, 149, 1.01, 57, 0.263, CUBE, 1, pieceMass(CUBE, 50), 0, 0.6);
    const s = stand(rocks, { liquid_mL: 149, liquid_density: 1.01, foam_mL: 57, foam_density: 0.263, ice: cube });
    expect([...out.subarray(2)]).toEqual([s.liquid_mm, s.washline_mm, s.iceFrom_mm, s.iceTo_mm, s.over_mL, s.level_mm]);
  });
});
