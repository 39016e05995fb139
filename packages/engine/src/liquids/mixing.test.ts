import { expect, test } from 'vitest';
import { at, BLOCK } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import { densityOf, densityOfEthanolWater, enthalpy, freezingPoint, iceAt, massFractionFromStrength, strengthOf, temperatureOf, volume, volumeAt20 } from './index.ts';

function block(grams: Partial<Record<Constituent, number>>): Float64Array {
  const b = new Float64Array(BLOCK);
  for (const [name, g] of Object.entries(grams)) b[at[name as Constituent]] = g;
  return b;
}

test('50 ml of water and 50 ml of 96 % spirit make less than 100 ml and warm up', () => {
  const p = massFractionFromStrength(96);
  const spirit_g = (50 * densityOfEthanolWater(p, 20)) / 1000;
  const water_g = (50 * densityOfEthanolWater(0, 20)) / 1000;
  const spirit = block({ water: spirit_g * (1 - p), ethanol: spirit_g * p });
  const water = block({ water: water_g });
  const both = block({ water: spirit_g * (1 - p) + water_g, ethanol: spirit_g * p });
  expect(volumeAt20(spirit, 0)).toBeCloseTo(50, 6);
  expect(strengthOf(spirit, 0)).toBeCloseTo(96, 6);
  // OIML R 22: 48 ml of ethanol in 96.96 ml is 49.5 % vol
  expect(volumeAt20(both, 0)).toBeGreaterThan(96.8);
  expect(volumeAt20(both, 0)).toBeLessThan(97.1);
  const warm = temperatureOf(both, 0, enthalpy(spirit, 0, 20) + enthalpy(water, 0, 20));
  // a reported trial with 95 % spirit in an open glass rose by 6.5 K; without losses, 7 to 8.5 K
  expect(warm - 20).toBeGreaterThan(6.5);
  expect(warm - 20).toBeLessThan(8.5);
});

test('sucrose in water has the density of the handbook (CRC 102nd ed., 20 C)', () => {
  for (const [pct, g] of [[5, 1.0178], [20, 1.081], [36, 1.1562], [50, 1.2295]] as const)
    expect(Math.abs(densityOf(block({ water: 100 - pct, sucrose: pct }), 0, 20) - g)).toBeLessThan(0.0002);
});

test('temperatureOf gives back the temperature for every drink and every degree', () => {
  for (const grams of [{ water: 100 }, { ethanol: 10 }, { water: 50, ethanol: 30, sucrose: 12, citric: 1 }, { water: 35, sucrose: 65 }, { fat: 10, water: 1 }])
    for (let t = -60; t <= 120; t += 3) {
      const b = block(grams);
      expect(temperatureOf(b, 0, enthalpy(b, 0, t), 20)).toBeCloseTo(t, 7);
    }
});

test('freezing point of a syrup and a spirit (CRC 102nd ed.) and the ice below it', () => {
  expect(freezingPoint(block({ water: 100 }), 0)).toBeCloseTo(0, 12);
  expect(Math.abs(freezingPoint(block({ water: 62, sucrose: 38 }), 0) + 4.02)).toBeLessThan(0.06);
  expect(Math.abs(freezingPoint(block({ water: 66, ethanol: 34 }), 0) + 24.27)).toBeLessThan(0.4);
  const b = block({ water: 80, ethanol: 15, sucrose: 10, citric: 1 });
  for (let t = -50; t < 0; t += 0.5) {
    const ice = iceAt(b, 0, t);
    const rest = block({ water: 80 - ice, ethanol: 15, sucrose: 10, citric: 1 });
    if (ice > 0) expect(freezingPoint(rest, 0)).toBeCloseTo(t, 6);
    else expect(freezingPoint(rest, 0)).toBeLessThanOrEqual(t);
  }
});

test('volume goes on smoothly across the ends of the formula', () => {
  const b = block({ water: 60, ethanol: 30, sucrose: 10 });
  for (const end of [-20, 40]) expect(Math.abs(volume(b, 0, end + 1e-6) - volume(b, 0, end - 1e-6))).toBeLessThan(1e-4);
});
