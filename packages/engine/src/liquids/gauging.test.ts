import { describe, expect, test } from 'vitest';
import { gallonsPerPound, massFractionFromStrength, densityOfEthanolWater, obscurationByRule, proofGallonsPerPound, trueProof, volumeAt60F, waterParts, waterToReduce } from './index.ts';

// 27 CFR 30.66: 112 to 100 proof takes 12.42 gallons of water per 100
test('water to reduce, the worked example', () => expect(Math.abs(waterToReduce(100, 56, 50) - 12.42)).toBeLessThan(0.02));

test('reducing keeps the ethanol and the mass, at both bases', () => {
  for (const [basis, t] of [['20C', 20], ['60F', 140 / 9]] as const)
    for (let from = 20; from <= 96; from += 4) for (let to = 10; to <= from; to += 5) {
      const water_mL = waterToReduce(1000, from, to, basis);
      const p = massFractionFromStrength(from, basis);
      const spirit_g = densityOfEthanolWater(p, t), water_g = (water_mL * densityOfEthanolWater(0, t)) / 1000;
      const after = (spirit_g * p) / (spirit_g + water_g);
      expect(after).toBeCloseTo(massFractionFromStrength(to, basis), 9);
    }
});

test('a hydrometer at 60 F needs no correction, a warm spirit reads too strong', () => {
  for (let proof = 10; proof <= 190; proof += 5) {
    expect(trueProof(proof, 60)).toBeCloseTo(proof, 6);
    for (let f = 40; f < 95; f += 5) expect(trueProof(proof, f + 5)).toBeLessThan(trueProof(proof, f));
  }
});

test('volume, weight and parts of water are in order over the whole range', () => {
  for (let proof = 10; proof < 200; proof += 10) {
    expect(volumeAt60F(proof, 80)).toBeLessThan(1);
    expect(volumeAt60F(proof, 60)).toBeCloseTo(1, 9);
    expect(gallonsPerPound(proof + 0.5)).toBeGreaterThan(gallonsPerPound(proof));
    expect(waterParts(proof / 2)).toBeGreaterThan(100 - proof / 2);
    expect(proofGallonsPerPound(proof)).toBeCloseTo((gallonsPerPound(proof) * proof) / 100, 12);
  }
  expect(obscurationByRule(0.1)).toBeCloseTo(0.4, 12);
});

describe('printed in the gauging manual, 60 °F', () => {
  // 27 CFR 30.66 (table 6), 70 proof as quoted from it; table printed to 0.01 of a part
  test.each([[94, 7.36], [50, 53.73], [35, 68.12]])('parts of water beside %f of ethanol', (strength, printed) => { expect(Math.abs(waterParts(strength) - printed)).toBeLessThanOrEqual(0.012); });
  // 27 CFR 30.64 (table 4): wine gallons and proof gallons in a pound weighed in air
  test('gallons in a pound', () => {
    expect(Math.abs(gallonsPerPound(190) - 0.14718)).toBeLessThan(2e-5);
    expect(Math.abs(gallonsPerPound(0) - 0.120074)).toBeLessThan(1e-5);
    expect(Math.abs(proofGallonsPerPound(190) - 0.27964)).toBeLessThan(3e-5);
    expect(proofGallonsPerPound(0)).toBe(0);
  });
  // 27 CFR 30.23, 30.61 (table 1) and the interpolations of the bureau's page on proofing
  test.each([[80, 68, 76.4], [80, 69, 76], [193, 72, 190.2], [192, 73, 188.9], [193, 75, 189.5]])('reading %i at %i °F is %f proof', (reading, fahrenheit, printed) => {
    expect(Math.abs(trueProof(reading, fahrenheit) - printed)).toBeLessThanOrEqual(0.1);
  });
  // 27 CFR 30.25 (table 7)
  test('115 proof at 68 °F shrinks to 0.996', () => { expect(Math.abs(volumeAt60F(115, 68) - 0.996)).toBeLessThan(0.0006); });
});
