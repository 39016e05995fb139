import { describe, expect, it } from 'vitest';
import { ACIDS, MOLAR_MASS } from './constants.ts';
import { acidToAdd, adjustDose, doseToAcidity, doseToTrade } from './adjust.ts';
import { citricFromMonohydrate, equivalentMass, monohydrateFromCitric, sumAsCitric, titratableAcidity, titratableAcidityInto } from './titration.ts';
import { phthalatePH } from './buffers.ts';

const mol = (grams: readonly number[]) => Float64Array.from({ length: ACIDS }, (_, i) => (grams[i] ?? 0) / MOLAR_MASS[i]!);

describe('titratable acidity to pH 8.2', () => {
  it('pure citric acid titrates as itself, within the 0.5 % its third proton holds back', () => {
    expect(titratableAcidity(mol([10]), 0, 0)).toBeGreaterThan(9.95);
    expect(titratableAcidity(mol([10]), 0, 0)).toBeLessThan(10.01);
  });
  it('4 % citric and 2 % malic are 5.9 g/100 mL', () => {
    expect(titratableAcidity(mol([40, 20]), 0, 0) / 10).toBeGreaterThan(5.87);
    expect(titratableAcidity(mol([40, 20]), 0, 0) / 10).toBeLessThan(5.911);
  });
  it('potassium of a juice takes its share: 35 mmol/L are 2.24 g/L', () => {
    expect(titratableAcidity(mol([48]), 0, 0) - titratableAcidity(mol([48]), 0, 0.035)).toBeCloseTo(0.035 * 64.041, 6);
  });
  it('ascorbic acid counts one proton, phosphoric two', () => {
    expect(titratableAcidity(mol([0, 0, 0, 0, 0, 0, 17.6124]), 0, 0)).toBeCloseTo(6.404, 1);
    expect(titratableAcidity(mol([0, 0, 0, 0, 0, 9.7995]), 0, 0) / 64.041).toBeGreaterThan(0.185);
  });
  it('is negative in a liquid more alkaline than the end point', () => { expect(titratableAcidity(mol([]), 0, 0.01)).toBeLessThan(0); });
  it('writes the same number into an array', () => {
    const out = new Float64Array(1);
    titratableAcidityInto(out, 0, mol([10]), 0, 0.01);
    expect(out[0]).toBe(titratableAcidity(mol([10]), 0, 0.01));
  });
});

describe('equivalents', () => {
  it('relative to citric acid (fruit juice acids, conversions): monohydrate 1.094, malic 1.047, tartaric 1.172', () => {
    expect(equivalentMass(1, 'citric', 'citric_monohydrate')).toBeCloseTo(1.094, 3);
    expect(equivalentMass(1, 'citric', 'malic')).toBeCloseTo(1.047, 3);
    expect(equivalentMass(1, 'citric', 'tartaric')).toBeCloseTo(1.172, 3);
  });
  it('acetic as sulfuric is 0.8167 (AWRI TN14)', () => { expect(equivalentMass(1, 'acetic', 'sulfuric')).toBeCloseTo(0.8167, 3); });
  it('a name not in the table gives no number', () => { expect(equivalentMass(1, 'citric', 'hydrochloric')).toBeNaN(); });
  it('the monohydrate holds 91.4 % citric acid', () => {
    expect(citricFromMonohydrate(100)).toBeCloseTo(91.43, 2);
    expect(monohydrateFromCitric(citricFromMonohydrate(7))).toBeCloseTo(7, 12);
  });
  it('sums 4 citric and 2 malic to 5.91', () => { expect(sumAsCitric([4, 2, 0, 0, 0, 0, 0, 0, 0, 0], 0)).toBeCloseTo(5.91, 2); });
  it('adds what a litre of orange juice lacks of lime: 32 g citric, 20 g malic', () => {
    expect(acidToAdd(1, 0.8, 4)).toBeCloseTo(32, 9);
    expect(acidToAdd(1, 0, 2)).toBeCloseTo(20, 9);
    expect(acidToAdd(1, 5, 4)).toBe(0);
  });
  it('grapefruit to lime takes 27 and 13 g/L', () => { expect(adjustDose('grapefruit', 'lime')).toEqual([27, 13]); expect(adjustDose('lime', 'lime')).toBeUndefined(); });
  it('phthalate buffer is 4.005 at 25 °C (Hetzer 1977 gives 4.006)', () => { expect(phthalatePH(25)).toBeCloseTo(4.006, 3); });
});

describe('doses of acid', () => {
  it('to the trade’s lime: what its general rule gives for 0.8 % citric, 32 and 20 g (acid-adjusting juices); monohydrate 1.094 times', () => {
    const dose = doseToTrade('lime', 8, 0);
    expect([dose.citric_g, dose.malic_g]).toEqual([32, 20]);
    expect(dose.citric_monohydrate_g).toBeCloseTo(32 * 1.094, 1);
  });
  it('to the trade’s lemon: 52 g of citric acid and no malic', () => { expect(doseToTrade('lemon', 8, 1.5)).toMatchObject({ citric_g: 52, malic_g: 0 }); });
  it('to limes that were titrated: the juice titrates as they do, two of citric to one of malic', () => {
    const orange = mol([8, 1.6]), before = titratableAcidity(orange, 0, 0.04);
    const dose = doseToAcidity('lime', before, 52);
    expect(dose.citric_g / dose.malic_g).toBeCloseTo(2, 9);
    expect(titratableAcidity(mol([8 + dose.citric_g, 1.6 + dose.malic_g]), 0, 0.04)).toBeGreaterThan(52 * 0.994);
    expect(titratableAcidity(mol([8 + dose.citric_g, 1.6 + dose.malic_g]), 0, 0.04)).toBeLessThan(52.01);
  });
  it('is nothing where the juice is as sour', () => { expect(doseToAcidity('lemon', 50, 45)).toEqual({ citric_g: 0, citric_monohydrate_g: 0, malic_g: 0 }); });
});
