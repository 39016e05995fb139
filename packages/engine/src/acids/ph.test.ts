import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { at } from '../matter/constituents.ts';
import { daviesLog } from './activity.ts';
import { ACIDS, constantsAt, ethanolShift, MOLAR_MASS, pK, pKByHeat, pkFromEnthalpy, pKw } from './constants.ts';
import { constantsInto, ethanolShiftBound } from './ethanol.ts';
import { pHByHalving } from './halving.ts';
import { chargeAt, pH, pHInto, protonsReleased } from './ph.ts';

const K25 = constantsAt(25), K20 = constantsAt(20);
const place = (name: keyof typeof at) => at[name] - at.citric;
const of = (name: keyof typeof at, mol: number) => { const c = new Float64Array(ACIDS); c[place(name)] = mol; return c; };

describe('pH of pure acids, computed table with activities (Giri 2019, copy of a speciation code), 25 °C', () => {
  // Rows of 100 mM are met within 0.03: Davies is near its end there.
  it.each([
    ['phosphoric', 0.001, 3.06, 0.01], ['phosphoric', 0.01, 2.26, 0.01], ['phosphoric', 0.1, 1.63, 0.03],
    ['citric', 0.001, 3.24, 0.01], ['citric', 0.01, 2.62, 0.01], ['citric', 0.1, 2.08, 0.02],
    ['lactic', 0.001, 3.51, 0.01], ['lactic', 0.1, 2.44, 0.02],
    ['acetic', 0.001, 3.91, 0.01], ['acetic', 0.1, 2.88, 0.02],
  ] as const)('%s %f mol/L reads %f', (name, mol, printed, tol) => {
    expect(Math.abs(pH(of(name, mol), 0, 0, K25) - printed)).toBeLessThanOrEqual(tol);
  });
  it.each([[0.001, 3.01], [0.01, 2.04], [0.1, 1.08]])('hydrochloric %f mol/L, as strong anions, reads %f', (mol, printed) => {
    expect(Math.abs(pH(new Float64Array(ACIDS), 0, -mol, K25) - printed)).toBeLessThanOrEqual(0.03);
  });
});

describe('standard buffers at 25 °C', () => {
  it('0.05 mol/kg KH2 citrate is 3.776 (NBS J. Res. 73A, 1969)', () => {
    expect(Math.abs(pH(of('citric', 0.05), 0, 0.05, K25) - 3.776)).toBeLessThan(0.02);
  });
  it('0.025 + 0.025 mol/kg phosphates is 6.865 (from memory, NBS)', () => {
    expect(Math.abs(pH(of('phosphoric', 0.05), 0, 0.075, K25) - 6.865)).toBeLessThan(0.02);
  });
  it('0.008695 + 0.03043 mol/kg phosphates is 7.413 (from memory, NBS)', () => {
    expect(Math.abs(pH(of('phosphoric', 0.008695 + 0.03043), 0, 0.008695 + 2 * 0.03043, K25) - 7.413)).toBeLessThan(0.02);
  });
  it('neutral phosphate at 5 and 10 °C is 6.95 and 6.92 (pH meter manual, NIST buffers)', () => {
    for (const [celsius, printed] of [[5, 6.95], [10, 6.92]] as const)
      expect(Math.abs(pH(of('phosphoric', 0.05), 0, 0.075, constantsAt(celsius)) - printed)).toBeLessThan(0.03);
  });
  it('pure water is pKw/2', () => {
    expect(pH(new Float64Array(ACIDS), 0, 0, K25)).toBeCloseTo(pKw(25) / 2, 3);
  });
});

describe('the solver over its whole range', () => {
  const amounts = fc.array(fc.oneof(fc.constant(0), fc.double({ min: 1e-7, max: 0.6, noNaN: true })), { minLength: ACIDS, maxLength: ACIDS });
  it('is undone by the charge that gives the same pH', () => {
    fc.assert(fc.property(amounts, fc.double({ min: -0.6, max: 1.5, noNaN: true }), fc.double({ min: 0, max: 60, noNaN: true }), fc.double({ min: 0, max: 60, noNaN: true }), (acids, strong, celsius, ethanol) => {
      const k = constantsAt(celsius, ethanol);
      const value = pH(acids, 0, strong, k);
      expect(Math.abs(chargeAt(acids, 0, value, k) - strong)).toBeLessThan(1e-6 * (1 + Math.abs(strong)));
    }), { numRuns: 400 });
  });
  it('agrees with halving to 1e-7, with casein, salt and ethanol', () => {
    const k = constantsAt(20);
    const strong = fc.oneof(fc.constant(0), fc.double({ min: -0.6, max: 1.5, noNaN: true }), fc.double({ min: 1e-7, max: 0.01, noNaN: true }));
    const some = (max: number) => fc.oneof(fc.constant(0), fc.double({ min: 0, max, noNaN: true }));
    fc.assert(fc.property(amounts, strong, some(60), some(0.3), some(60), fc.double({ min: 0.5, max: 1.5, noNaN: true }), (acids, charge, casein, salt, pct, share) => {
      constantsInto(k, K20, pct, share);
      expect(Math.abs(pH(acids, 0, charge, k, salt, casein) - pHByHalving(acids, 0, charge, k, salt, casein))).toBeLessThan(1e-7);
    }), { numRuns: 300 });
  });
  it('gives the same answer whatever was asked before', () => {
    const acids = Float64Array.of(0.02, 0.01, 0, 0, 0, 0.02, 0, 0, 0, 0);
    const first = pH(acids, 0, 0.07, K25, 0, 20);
    pH(of('acetic', 0.6), 0, -0.3, K20);
    chargeAt(of('tartaric', 0.1), 0, 9, K20, 0.2, 50);
    expect(pH(acids, 0, 0.07, K25, 0, 20)).toBe(first);
  });
  it('rises with strong cations and falls with acid', () => {
    let last = -9;
    for (let strong = -0.1; strong < 0.9; strong += 0.01) {
      const value = pH(of('citric', 0.25), 0, strong, K25);
      expect(value).toBeGreaterThan(last);
      last = value;
    }
  });
  it('writes the same number into an array', () => {
    const out = new Float64Array(2);
    pHInto(out, 1, of('malic', 0.1), 0, 0.01, K25);
    expect(out[1]).toBe(pH(of('malic', 0.1), 0, 0.01, K25));
  });
});

describe('constants', () => {
  it('pK of acetic acid at 5 °C from its heats is 4.769 (Goldberg 2002, second hand)', () => {
    expect(pkFromEnthalpy(4.756, -0.41, -142, 5)).toBeCloseTo(4.769, 2);
    expect(pK('acetic', 1, 5)).toBeCloseTo(4.769, 2);
  });
  it('first pK of citric acid follows the fit to Bates and Pinching 1949: 3.128 at 25 °C, 3.2205 at 0', () => {
    expect(pK('citric', 1, 25)).toBeCloseTo(3.128, 2);
    expect(pK('citric', 1, 0)).toBeCloseTo(3.2205, 3);
  });
  it('citric acid at 0 °C by its heats is 3.227 (Benezeth 1997)', () => { expect(Math.abs(pKByHeat('citric', 1, 0) - 3.227)).toBeLessThan(0.004); expect(pKByHeat('lactic', 1, 0)).toBeNaN(); });
  it('benzoic acid in 25.2 and 64.8 % ethanol by weight: 4.92 and 6.42, and more than the rule for food acids', () => {
    expect(4.21 + ethanolShiftBound(25.2)).toBeCloseTo(4.918, 1); expect(4.21 + ethanolShiftBound(64.8)).toBeCloseTo(6.424, 1);
    expect(ethanolShiftBound(32)).toBeGreaterThan(ethanolShift(40)); // 40 % vol
  });
  it('a step an acid does not have is not a number', () => { expect(pK('lactic', 2, 25)).toBeNaN(); });
  it('ethanol of 12 % vol raises lactic acid by 0.11 to 0.17 (Prenesti 2012 table 4)', () => {
    const shift = -Math.log10(constantsAt(25, 12).K[place('lactic') * 3]! / K25.K[place('lactic') * 3]!);
    expect(shift).toBeGreaterThan(0.11); expect(shift).toBeLessThan(0.17);
  });
  it('Davies at I 0.1 and 25 °C gives 0.78 for a univalent ion (from memory, textbooks)', () => {
    expect(10 ** daviesLog(0.1, K25.A)).toBeCloseTo(0.78, 2);
  });
  it('citric acid has given up 1.6 protons at pH 4.6 and I 0.08', () => {
    expect(Math.abs(protonsReleased(0, 4.6, 0.08, K25) - 1.6)).toBeLessThan(0.03);
  });
  it('malic acid weighs 134.087 g/mol', () => { expect(MOLAR_MASS[place('malic')]).toBe(134.087); });
});
