import { expect, test } from 'vitest';
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
