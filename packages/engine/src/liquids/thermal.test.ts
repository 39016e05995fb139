import { describe, expect, test } from 'vitest';
import { at, BLOCK } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import {
  densityOfIce, enthalpy, enthalpyOfIce, excessEnthalpyAt25, FUSION_J_PER_G, heatCapacity, heatCapacityOfIce, heatCapacityOfSyrup, temperatureOf, temperatureOfIce, viscosityOf,
  viscosityOfEthanolWater, viscosityOfSucrose, viscosityOfWater,
} from './index.ts';

function block(grams: Partial<Record<Constituent, number>>): Float64Array {
  const b = new Float64Array(BLOCK);
  for (const [name, g] of Object.entries(grams)) b[at[name as Constituent]] = g;
  return b;
}

describe('enthalpy', () => {
  test('is 0 for water, ethanol and solutes at 25 C, and that of mixing for the two', () => {
    expect(enthalpy(block({ water: 100 }), 0, 25)).toBe(0);
    expect(enthalpy(block({ ethanol: 100 }), 0, 25)).toBe(0);
    expect(enthalpy(block({ water: 18.0153 * 0.8, ethanol: 46.069 * 0.2 }), 0, 25)).toBeCloseTo(excessEnthalpyAt25(0.2), 6);
  });
  test('has the heat capacity as its slope, everywhere', () => {
    for (const b of [block({ water: 90, ethanol: 10 }), block({ water: 40, ethanol: 60, sucrose: 20 }), block({ water: 80, fat: 10, casein: 5 })])
      for (let t = -50; t < 110; t += 7) expect((enthalpy(b, 0, t + 0.01) - enthalpy(b, 0, t - 0.01)) / 0.02).toBeCloseTo(heatCapacity(b, 0, t), 3);
  });
  test('comes back as temperature from any guess', () => {
    const b = block({ water: 70, ethanol: 20, sucrose: 9, citric: 1 });
    for (let t = -45; t <= 105; t += 5) for (const guess of [-60, 0, 20, 120]) expect(temperatureOf(b, 0, enthalpy(b, 0, t), guess)).toBeCloseTo(t, 7);
    expect(temperatureOf(block({}), 0, 0, 20)).toBeNaN();
  });
  test('of parts adds up to that of the whole where nothing mixes with heat', () => {
    const whole = enthalpy(block({ water: 100, sucrose: 30, fat: 5 }), 0, 60);
    expect(enthalpy(block({ water: 100 }), 0, 60) + enthalpy(block({ sucrose: 30 }), 0, 60) + enthalpy(block({ fat: 5 }), 0, 60)).toBeCloseTo(whole, 8);
  });
  // heat of mixing at 0 C that capacities imply: about -1118 J/mol at the minimum, from a trial of these tables
  test('heat of mixing grows in the cold as the capacities say', () => {
    const x = 0.17, w = 18.0153 * (1 - x), e = 46.069 * x;
    const atZero = enthalpy(block({ water: w, ethanol: e }), 0, 0) - enthalpy(block({ water: w }), 0, 0) - enthalpy(block({ ethanol: e }), 0, 0);
    expect(atZero).toBeLessThan(-950);
    expect(atZero).toBeGreaterThan(-1250);
  });
});

describe('heat capacity', () => {
  test('of ethanol and water stays between plausible ends over the whole range', () => {
    for (let p = 0; p <= 1; p += 0.02) for (let t = -25; t <= 80; t += 5) {
      const cp = heatCapacity(block({ water: 1 - p, ethanol: p }), 0, t);
      expect(cp).toBeGreaterThan(2.0);
      expect(cp).toBeLessThan(4.6);
    }
  });
  test('of syrup is near the sugar formula', () => {
    for (const w of [0.1, 0.3, 0.65]) for (const t of [10, 20, 40, 60]) expect(Math.abs(heatCapacity(block({ water: 1 - w, sucrose: w }), 0, t) - heatCapacityOfSyrup(w, t))).toBeLessThan(0.02);
  });
});

describe('ice', () => {
  test('melts at 0 C by the heat of fusion against water of the same scale', () => {
    expect(enthalpy(block({ water: 1 }), 0, 0) - enthalpyOfIce(0)).toBeCloseTo(FUSION_J_PER_G, 9);
  });
  test('temperature and enthalpy, there and back', () => {
    for (let t = -60; t <= 0; t += 0.5) expect(temperatureOfIce(enthalpyOfIce(t))).toBeCloseTo(t, 9);
    expect(temperatureOfIce(enthalpyOfIce(0) + 5)).toBe(0);
  });
  test('slope of the enthalpy is the capacity; density rises in the cold', () => {
    for (let t = -40; t < -1; t += 3) {
      expect((enthalpyOfIce(t + 0.01) - enthalpyOfIce(t - 0.01)) / 0.02).toBeCloseTo(heatCapacityOfIce(t), 6);
      expect(densityOfIce(t)).toBeGreaterThan(densityOfIce(t + 1));
    }
  });
});

describe('viscosity', () => {
  // CRC Handbook: water 1.792 at 0, 1.002 at 20, 0.653 at 40 C
  test('of water', () => {
    for (const [t, eta] of [[0, 1.792], [20, 1.002], [40, 0.653]] as const) expect(Math.abs(viscosityOfWater(t) / eta - 1)).toBeLessThan(0.005);
  });
  test('falls with warmth and rises with sugar over the whole range', () => {
    for (let p = 0; p <= 1; p += 0.05) for (let t = -20; t < 40; t += 5) expect(viscosityOfEthanolWater(p, t + 5)).toBeLessThan(viscosityOfEthanolWater(p, t));
    for (let w = 0; w < 0.7; w += 0.05) for (let t = 0; t < 80; t += 10) {
      expect(viscosityOfSucrose(w, t + 10)).toBeLessThan(viscosityOfSucrose(w, t));
      expect(viscosityOfSucrose(w + 0.05, t)).toBeGreaterThan(viscosityOfSucrose(w, t));
    }
  });
  // CRC 102nd ed. at 20 C: 40 % glucose about 5.5, fructose 5.05, maltose 6.93 mPa s
  test('of other sugars within a tenth or so of print', () => {
    for (const [name, eta] of [['fructose', 5.046], ['maltose', 6.926]] as const) expect(Math.abs(viscosityOf(block({ water: 60, [name]: 40 }), 0, 20) / eta - 1)).toBeLessThan(0.12);
  });
});
