import { describe, expect, test } from 'vitest';
import {
  densityFromStrength, densityOfEthanolWater, densityOfEthanolWaterAnywhere, densityOfWater, massFractionFromDensity, massFractionFromStrength, strengthFromDensity,
  strengthFromMassFraction, strengthOnBasis,
} from './index.ts';

describe('the general formula', () => {
  // OIML R 22 (1975), tables at 20 C, from memory; 998.201 and 789.239 are printed with the formula
  test.each([[0, 998.201], [10, 984.71], [40, 948.05], [70, 885.56], [100, 789.239]] as const)('%i %% vol has %f kg/m3', (strength, printed) => {
    expect(Math.abs(densityFromStrength(strength, 20) - printed)).toBeLessThan(0.012);
  });
  // Kell 1975: water 999.972 at 4 C, 997.045 at 25 C, 971.80 at 80 C
  test('water agrees with Kell from 0 to 40 C', () => {
    for (let t = 0; t <= 40; t++) expect(Math.abs(densityOfEthanolWater(0, t) - densityOfWater(t))).toBeLessThan(0.01);
    expect(densityOfWater(4)).toBeCloseTo(999.972, 2);
    expect(densityOfWater(25)).toBeCloseTo(997.045, 2);
    expect(densityOfWater(80)).toBeCloseTo(971.8, 1);
  });
  test('falls with strength at every temperature where the mixture is liquid', () => {
    for (let t = 0; t <= 40; t += 2) for (let p = 0; p < 1; p += 0.002) expect(densityOfEthanolWater(Math.min(1, p + 0.002), t)).toBeLessThan(densityOfEthanolWater(p, t));
  });
  test('is not answered outside its ranges', () => {
    for (const [p, t] of [[-0.01, 20], [1.01, 20], [0.5, -20.1], [0.5, 40.1], [NaN, 20], [0.5, NaN]] as const) expect(densityOfEthanolWater(p, t)).toBeNaN();
  });
  test('goes on plausibly to the boil and into the freezer', () => {
    // CRC Handbook: ethanol 736 kg/m3 at 78 C, water 958.4 at 100 C
    expect(Math.abs(densityOfEthanolWaterAnywhere(1, 78) - 736)).toBeLessThan(5);
    expect(Math.abs(densityOfEthanolWaterAnywhere(0, 100) - 958.4)).toBeLessThan(1.5);
    for (const p of [0.3, 0.6, 1]) expect(densityOfEthanolWaterAnywhere(p, -30)).toBeGreaterThan(densityOfEthanolWaterAnywhere(p, -20));
  });
});

describe('there and back over the whole range', () => {
  test.each(['20C', '60F'] as const)('strength and mass fraction, %s', (basis) => {
    let before = -1;
    for (let q = 0; q <= 1000; q++) {
      const p = massFractionFromStrength(q / 10, basis);
      expect(strengthFromMassFraction(p, basis)).toBeCloseTo(q / 10, 9);
      expect(p).toBeGreaterThan(before);
      before = p;
    }
  });
  test('strength and density from 0 to 40 C', () => {
    for (let t = 0; t <= 40; t += 2.5) for (let q = 0; q <= 100; q += 1) expect(strengthFromDensity(densityFromStrength(q, t), t)).toBeCloseTo(q, 6);
  });
  test('strength and density below 0 C, above the freezing curve', () => {
    for (let t = -20; t < 0; t += 2.5) for (let q = 40; q <= 100; q += 1) expect(strengthFromDensity(densityFromStrength(q, t), t)).toBeCloseTo(q, 6);
  });
  test('20 C and 60 F', () => {
    for (let q = 0; q <= 100; q += 2) expect(strengthOnBasis(strengthOnBasis(q, '20C', '60F'), '60F', '20C')).toBeCloseTo(q, 9);
    // p = 0.333 reads 40.000 and 39.932
    expect(strengthFromMassFraction(0.333)).toBeCloseTo(40.0, 2);
    expect(strengthFromMassFraction(0.333, '60F')).toBeCloseTo(39.932, 2);
  });
  test('outside: nothing', () => {
    expect(massFractionFromStrength(-1)).toBeNaN();
    expect(massFractionFromStrength(100.5)).toBeNaN();
    expect(massFractionFromDensity(1010, 20)).toBeNaN();
    expect(massFractionFromDensity(700, 20)).toBeNaN();
    expect(massFractionFromDensity(998.22, 20)).toBe(0);
  });
});
