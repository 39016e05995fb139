import { describe, expect, test } from 'vitest';
import { at, BLOCK } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import { enthalpyWith, momentWith, takeBeside, temperatureWith } from './enthalpy.ts';
import { freezingPointWith, takeDissolved } from './freezing.ts';
import { brixToAddForAcid, densityOf, densityOfSucroseSolution, enthalpy, freezingPoint, heatCapacity, refractometerCorrection, temperatureOf, viscosityOfSucrose, volume, volumeAt20 } from './index.ts';

function block(grams: Partial<Record<Constituent, number>>, offset = 0): Float64Array {
  const b = new Float64Array(offset + BLOCK);
  for (const [name, g] of Object.entries(grams)) b[offset + at[name as Constituent]] = g;
  return b;
}
const LIQUIDS: readonly Partial<Record<Constituent, number>>[] = [
  { water: 100 }, { water: 75, ethanol: 15, sucrose: 2, glucose: 0.9, fructose: 1, citric: 1.2, malic: 0.3, ascorbic: 0.02, salt: 0.1, ash: 0.2 }, { water: 70, ethanol: 20, sucrose: 9, citric: 1 }, { water: 1.5, ethanol: 0.4, sucrose: 0.3 }, { water: 60, ethanol: 40 }, { water: 65, glucose: 20, fructose: 15, salt: 0.5, fat: 3, casein: 2 },
];
const OFFSET = 3;

// by definition: the same liquid, of which only the water changes, and its slopes as quotients of small differences
describe('a liquid of which only the water changes', () => {
  test.each(LIQUIDS)('%j freezes as the whole does, and by as much higher for a gram more of water', (grams) => {
    const whole = block(grams, OFFSET), water = grams.water!, out = new Float64Array(2);
    takeDissolved(whole, OFFSET);
    for (const near of [0, 5, -5, -80]) {
      freezingPointWith(water, near, out);
      expect(out[0]).toBeCloseTo(freezingPoint(whole, OFFSET), 8);
      const step = 1e-4 * water;
      const quotient = (freezingPoint(block({ ...grams, water: water + step }), 0) - freezingPoint(block({ ...grams, water: water - step }), 0)) / (2 * step);
      expect(Math.abs(out[1]! - quotient)).toBeLessThan(1e-4 * (Math.abs(quotient) + 1e-9));
    }
  });
  test('does not freeze above -80 without water', () => {
    const out = new Float64Array(2);
    takeDissolved(block({ water: 10, ethanol: 10 }), 0);
    for (const water of [0, -1]) { freezingPointWith(water, 0, out); expect([...out]).toEqual([-80, 0]); }
    freezingPointWith(1e-9, 0, out);
    expect([...out]).toEqual([-80, 0]);
  });
  test.each(LIQUIDS)('%j holds the heat of the whole', (grams) => {
    const whole = block(grams, OFFSET), water = grams.water!, out = new Float64Array(4);
    for (const celsius of [-10, 4, 20, 60]) {
      const held = enthalpy(whole, OFFSET, celsius);
      expect(temperatureOf(whole, OFFSET, held)).toBeCloseTo(celsius, 7);
      takeBeside(whole, OFFSET);
      expect(enthalpyWith(water, celsius)).toBeCloseTo(held, 8);
      expect(temperatureWith(water, held, 0)).toBeCloseTo(celsius, 7);
      momentWith(water, held, 0, out);
      expect(out[0]).toBeCloseTo(celsius, 7);
      expect(out[1]! / heatCapacity(whole, OFFSET, celsius)).toBeCloseTo(1, 9);
      const of = (more: number) => enthalpy(block({ ...grams, water: water + more }), 0, celsius), step = 0.02 * water;
      expect(Math.abs(out[2]! - (of(step) - of(-step)) / (2 * step))).toBeLessThan((water > 2 ? 0.02 : 0.05) * (1 + Math.abs(out[2]!))); // a liquid of a gram or two is asked in coarser steps
      expect(Math.abs(out[3]! - (of(step) - 2 * of(0) + of(-step)) / (step * step)) * water).toBeLessThan(2 + 0.3 * Math.abs(out[3]! * water));
    }
  });
});

describe('volume off 20 °C', () => {
  // Choi and Okos 1986, table 2: fat 925.59 - 0.41757 t kg/m³
  test.each([0, 20, 40, 60])('of fat is as printed at %i °C', (celsius) => {
    const mL = volume(block({ fat: 10 }), 0, celsius);
    expect(Math.abs(10_000 / mL - (925.59 - 0.41757 * celsius))).toBeLessThan(0.4);
    expect(volume(block({ water: 90, fat: 10 }), 0, celsius) - volume(block({ water: 90 }), 0, celsius)).toBeCloseTo(mL, 9);
  });
  // Emmerich 1994 (SPS-4): sucrose in water, read at its own temperature
  test.each([0, 10, 40, 60, 80])('of sucrose at %i °C', (celsius) => {
    for (const pct of [10, 40, 65]) expect(Math.abs(1000 * densityOf(block({ water: 100 - pct, sucrose: pct }), 0, celsius) - densityOfSucroseSolution(pct / 100, celsius))).toBeLessThan(celsius > 40 ? 0.7 : 0.05);
  });
  // by the statement of the model: a sugar beside sucrose swells as sucrose of the same share does
  test('of glucose grows by as much as that of sucrose', () => {
    for (const celsius of [5, 40, 70]) {
      const swell = (name: 'glucose' | 'sucrose') => { const one = block({ water: 70, [name]: 30 }); return volume(one, 0, celsius) - volumeAt20(one, 0); };
      expect(swell('glucose')).toBeCloseTo(swell('sucrose'), 9);
      expect(Math.sign(swell('glucose'))).toBe(Math.sign(celsius - 20));
    }
  });
  // Choi and Okos 1986, table 2 at 20 °C: protein 1329.9 - 0.5184 t, fibre 1311.5 - 0.36589 t kg/m³; it adds its own volume, whatever is beside it
  test('of protein and fibre is added as it is, at any temperature', () => {
    for (const [name, density] of [['casein', 1319.5], ['insolubles', 1304.2]] as const) for (const celsius of [0, 20, 50]) {
      const more = volume(block({ water: 80, sucrose: 10, [name]: 10 }), 0, celsius) - volume(block({ water: 80, sucrose: 10 }), 0, celsius);
      expect(Math.abs(10_000 / more - density)).toBeLessThan(2);
      expect(volume(block({ [name]: 10 }), 0, celsius)).toBeCloseTo(more, 9);
    }
  });
});

describe('ends of ranges', () => {
  test('the thickness of syrup is held from 70 % on', () => { expect(viscosityOfSucrose(0.8, 20)).toBe(viscosityOfSucrose(0.7, 20)); expect(viscosityOfSucrose(0.69, 20)).toBeLessThan(viscosityOfSucrose(0.7, 20)); });
  // juice tables (Stevens and Baier 1939): about 0.19 to 0.20 per 1 %
  test('half a per cent of acid asks for half of what one asks for', () => { expect(brixToAddForAcid(0.5)).toBeCloseTo(brixToAddForAcid(1) / 2, 2); expect(brixToAddForAcid(-1)).toBe(0); });
  test('a refractometer is corrected without a step at the edges of the printed table', () => {
    for (const read of [10, 40, 75]) for (const edge of [5, 16]) expect(Math.abs(refractometerCorrection(edge + 1e-6, read) - refractometerCorrection(edge - 1e-6, read))).toBeLessThan(1e-4);
    for (const celsius of [5, 10, 15]) for (const edge of [10, 75]) expect(Math.abs(refractometerCorrection(celsius, edge + 1e-6) - refractometerCorrection(celsius, edge - 1e-6))).toBeLessThan(1e-4);
    // thin syrups move less, as water alone does less than its sugar
    expect(Math.abs(refractometerCorrection(10, 0))).toBeLessThan(Math.abs(refractometerCorrection(10, 10)));
    expect(refractometerCorrection(25, 20)).toBeGreaterThan(refractometerCorrection(22, 20));
  });
});
