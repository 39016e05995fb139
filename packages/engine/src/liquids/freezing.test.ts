import { describe, expect, test } from 'vitest';
import { at, BLOCK, CONSTITUENTS } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import { freezingPoint, iceAt, iceShare, waterActivity, waterActivityNorrish } from './index.ts';

function block(grams: Partial<Record<Constituent, number>>): Float64Array {
  const b = new Float64Array(BLOCK);
  for (const [name, g] of Object.entries(grams)) b[at[name as Constituent]] = g;
  return b;
}

describe('freezing point', () => {
  test('never rises when more of anything is dissolved, over the whole range', () => {
    for (const name of CONSTITUENTS) {
      if (name === 'water') continue;
      let before = 0;
      for (let w = 0; w < 1; w += 0.005) {
        const t = freezingPoint(block({ water: 100 * (1 - w), [name]: 100 * w }), 0);
        expect(t).toBeLessThanOrEqual(before + 1e-9);
        before = t;
      }
    }
  });
  // CRC Handbook 102nd ed.: 1.0 mol/kg NaCl 3.37 K; from memory
  test('salt counts as two ions', () => expect(Math.abs(freezingPoint(block({ water: 1000, salt: 58.443 }), 0) + 3.37)).toBeLessThan(0.1));
  test('of a mixture is near the sum of the single depressions', () => {
    const sum = freezingPoint(block({ water: 80, sucrose: 10 }), 0) + freezingPoint(block({ water: 80, ethanol: 10 }), 0);
    expect(Math.abs(freezingPoint(block({ water: 80, sucrose: 10, ethanol: 10 }), 0) - sum)).toBeLessThan(0.25);
  });
  test('is that of no water where there is none', () => {
    expect(freezingPoint(block({ ethanol: 10 }), 0)).toBe(-80);
    expect(freezingPoint(block({}), 0)).toBe(-80);
    expect(freezingPoint(block({ water: 1e-9, ethanol: 100 }), 0)).toBe(-80);
  });
  test('fat, protein and pulp do not move it', () => expect(freezingPoint(block({ water: 80, fat: 10, casein: 4, insolubles: 6 }), 0)).toBeCloseTo(0, 12));
});

describe('ice', () => {
  test('grows as it gets colder, from the freezing point on, and never takes all the water', () => {
    const b = block({ water: 70, ethanol: 12, sucrose: 15, citric: 1 });
    const start = freezingPoint(b, 0);
    let before = 0;
    for (let t = 0; t > -60; t -= 0.25) {
      const share = iceShare(b, 0, t);
      if (t >= start) expect(share).toBe(0);
      else expect(share).toBeGreaterThan(before);
      expect(share).toBeLessThan(1);
      before = share;
    }
  });
  test('of pure water is all or nothing', () => {
    expect(iceAt(block({ water: 50 }), 0, -1)).toBe(50);
    expect(iceAt(block({ water: 50 }), 0, 0)).toBe(0);
  });
});

describe('water activity', () => {
  // Norrish 1966 with K = 6.47, from memory: 0.895 at 60 %
  test('of syrup agrees with Norrish', () => {
    for (const w of [0.2, 0.4, 0.6]) expect(Math.abs(waterActivity(block({ water: 100 * (1 - w), sucrose: 100 * w }), 0) - waterActivityNorrish(w, 342.297, 6.47))).toBeLessThan(0.012);
  });
  test('is 1 for water and 0 without', () => {
    expect(waterActivity(block({ water: 1 }), 0)).toBe(1);
    expect(waterActivity(block({ sucrose: 1 }), 0)).toBe(0);
  });
});
