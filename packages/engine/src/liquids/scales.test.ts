import { describe, expect, test } from 'vitest';
import { at, BLOCK } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import {
  apparentBrix, apparentStrength, brixFromDensity, brixFromGravity, brixFromIndex, brixFromIndexPolynomial, brixToAddForAcid, densityByTabarie, densityOf, densityOfSucroseSolution,
  densityOfWater, gravityFromBrix, indexOfSucrose, obscuration, platoByRule, platoFromGravity, refractiveIndex, refractometerBrix, refractometerCorrection, relativeSweetness, rivalDensity,
  strengthFromDensityAndSolutes, strengthOf, sucroseSaturation, supersaturated, volume,
} from './index.ts';

function block(grams: Partial<Record<Constituent, number>>): Float64Array {
  const b = new Float64Array(BLOCK);
  for (const [name, g] of Object.entries(grams)) b[at[name as Constituent]] = g;
  return b;
}

describe('sucrose scales', () => {
  test('Brix and density, there and back from 0 to 85 at 0 to 80 C, rising', () => {
    for (let t = 0; t <= 80; t += 20) {
      let before = 0;
      for (let b = 0; b <= 85; b += 0.5) {
        const density = densityOfSucroseSolution(b / 100, t);
        expect(brixFromDensity(density, t)).toBeCloseTo(b, 7);
        expect(density).toBeGreaterThan(before);
        before = density;
      }
    }
  });
  test('lighter than water reads below 0 without a step', () => {
    expect(brixFromDensity(densityOfWater(20), 20)).toBeCloseTo(0, 9);
    expect(brixFromDensity(densityOfWater(20) - 1, 20)).toBeCloseTo(-0.259, 2);
  });
  // ASBC and NBS fits: apparent 1.04003 is 10.000 Brix; the two scales agree below 30
  test('gravity, Brix and Plato agree with each other', () => {
    for (let b = 1; b <= 30; b++) {
      expect(Math.abs(brixFromGravity(gravityFromBrix(b)) - b)).toBeLessThan(0.03);
      expect(Math.abs(platoFromGravity(gravityFromBrix(b)) - b)).toBeLessThan(0.04);
    }
    for (let b = 1; b <= 16; b++) expect(Math.abs(platoByRule(gravityFromBrix(b)) - b)).toBeLessThan(0.06);
  });
  test('index and Brix, there and back from 0 to 84, and near the published polynomial', () => {
    for (let b = 0; b <= 84; b += 0.25) expect(brixFromIndex(indexOfSucrose(b / 100))).toBeCloseTo(b, 6);
    for (let b = 1; b <= 50; b++) expect(Math.abs(brixFromIndexPolynomial(indexOfSucrose(b / 100)) - b)).toBeLessThan(0.035);
    expect(brixFromIndex(1.3)).toBe(0);
    expect(brixFromIndex(1.6)).toBe(84);
    expect(brixFromIndex(NaN)).toBeNaN();
  });
  test('saturation is as in the table and between its points', () => {
    expect(sucroseSaturation(20)).toBe(67.09);
    expect(sucroseSaturation(-5)).toBe(64.18);
    expect(sucroseSaturation(120)).toBe(82.97);
    for (let t = 0; t < 100; t++) expect(sucroseSaturation(t + 1)).toBeGreaterThan(sucroseSaturation(t));
    expect(supersaturated(66.7, 5)).toBe(true);
    expect(supersaturated(66.7, 25)).toBe(false);
  });
  test('sweetness of a name, or nothing', () => {
    expect(relativeSweetness('fructose')).toMatchObject({ low: 1.5, high: 1.73 });
    expect(relativeSweetness('no such sugar')).toBeUndefined();
  });
});

describe('a refractometer', () => {
  test('shows sugar alone as it is', () => {
    // the two formulas for water differ by 0.003 kg/m3, 0.0005 Brix
    for (const b of [5, 20, 50, 66]) expect(refractometerBrix(block({ water: 100 - b, sucrose: b }), 0)).toBeCloseTo(b, 2);
  });
  // CRC 102nd ed., n20D of ethanol and water: 1.3395 at 10 %, 1.3583 at 40 %
  test('takes ethanol for sugar', () => {
    expect(Math.abs(refractiveIndex(block({ water: 90, ethanol: 10 }), 0) - 1.3395)).toBeLessThan(0.0002);
    expect(Math.abs(refractiveIndex(block({ water: 60, ethanol: 40 }), 0) - 1.3583)).toBeLessThan(0.0002);
    const plain = refractometerBrix(block({ water: 80, sucrose: 20 }), 0);
    expect(refractometerBrix(block({ water: 80, sucrose: 20, ethanol: 10 }), 0)).toBeGreaterThan(plain);
  });
  // CRC index of citric acid: 0.62 to 0.88 Brix per 1 %; juice tables add 0.19 to 0.20, the index asks for 0.12 to 0.13
  test('shows acid as less than its weight of sugar', () => {
    const shown = refractometerBrix(block({ water: 89, sucrose: 10, citric: 1 }), 0) - 10;
    expect(1 - shown).toBeGreaterThan(0.08);
    expect(1 - shown).toBeLessThan(0.2);
    expect(brixToAddForAcid(0)).toBe(0);
    for (let a = 0; a < 20; a += 0.5) expect(brixToAddForAcid(a + 0.5)).toBeGreaterThan(brixToAddForAcid(a));
  });
  test('fat and pulp do not change what it shows', () => {
    const clear = refractometerBrix(block({ water: 85, sucrose: 10 }), 0);
    expect(refractometerBrix(block({ water: 85, sucrose: 10, fat: 5, insolubles: 3, fibre: 2 }), 0)).toBeCloseTo(clear, 9);
  });
  test('is corrected by nothing at 20 C, less below, more above, without a step', () => {
    for (const read of [0, 5, 10, 30, 60, 75, 80]) {
      expect(refractometerCorrection(20, read)).toBe(0);
      for (let t = 5; t < 40; t += 0.5) {
        const rise = refractometerCorrection(t + 0.5, read) - refractometerCorrection(t, read);
        expect(rise).toBeGreaterThan(0);
        expect(rise).toBeLessThan(0.12);
      }
    }
  });
});

describe('a hydrometer', () => {
  test('shows spirit and syrup alone as they are', () => {
    expect(apparentStrength(block({ water: 60, ethanol: 40 }), 0)).toBeCloseTo(strengthOf(block({ water: 60, ethanol: 40 }), 0), 6);
    for (const t of [10, 20, 30]) expect(apparentBrix(block({ water: 70, sucrose: 30 }), 0, t)).toBeCloseTo(30, 2);
  });
  test('is fooled the more the more sugar hides the spirit', () => {
    let before = 0;
    for (let sugar = 0.2; sugar < 3; sugar += 0.2) {
      const hidden = obscuration(block({ water: 60, ethanol: 35, sucrose: sugar }), 0);
      expect(hidden).toBeGreaterThan(before);
      before = hidden;
    }
    expect(apparentStrength(block({ water: 50, ethanol: 10, sucrose: 30 }), 0)).toBeNaN();
  });
});

describe('two rules for strong sweet mixtures', () => {
  const drink = (strength: number, sugar: number): Float64Array => {
    const b = block({ ethanol: strength * 7.89239, sucrose: sugar });
    for (let i = 0; i < 20; i++) b[at.water]! += 1000 - volume(b, 0, 20);
    return b;
  };
  test('meet where there is no ethanol or no sugar', () => {
    expect(rivalDensity(drink(0, 200), 0)).toBeCloseTo(0, 6);
    expect(rivalDensity(drink(40, 0), 0)).toBeCloseTo(0, 6);
  });
  // additive less Tabarié as worked out apart from this code, sucrose 100 to 300 g/L: small to 20 % vol, about -1, -3, -5 at 40 %
  test('part above 20 % vol, by several kg/m3 at 40 %', () => {
    for (const sugar of [100, 200, 300]) expect(Math.abs(rivalDensity(drink(20, sugar), 0))).toBeLessThan(0.4);
    expect(rivalDensity(drink(40, 100), 0)).toBeCloseTo(-1.1, 0);
    expect(rivalDensity(drink(40, 300), 0)).toBeCloseTo(-4.8, 0);
    expect(densityByTabarie(drink(40, 300), 0)).toBeGreaterThan(1000 * densityOf(drink(40, 300), 0, 20));
  });
  test('strength comes back from density and solutes over the whole range', () => {
    for (let q = 0.5; q <= 60; q += 3.5) for (const sugar of [0, 50, 250]) {
      const b = drink(q, sugar);
      expect(strengthFromDensityAndSolutes(b, 0, 1000 * densityOf(b, 0, 20))).toBeCloseTo(q, 4);
    }
    expect(strengthFromDensityAndSolutes(block({ sucrose: 5 }), 0, 700)).toBeNaN();
  });
});
