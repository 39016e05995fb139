import { describe, expect, it } from 'vitest';
import { at } from '../matter/constituents.ts';
import { daviesLog } from './activity.ts';
import { phthalatePH } from './buffers.ts';
import { ACIDS, constantsAt, constantsOf, debyeHueckelA, EQUIVALENT, MOLAR_MASS, pK, pKByHeat, pKw, STEPS } from './constants.ts';
import { chargeBySettling, pHByHalving } from './halving.ts';
import { bufferAt, chargeAt, pH, protonsReleased } from './ph.ts';

// From memory: pK at 0, 25 and 50 °C by cells without transference (Bates and co-workers, Harned and Ehlers, Martin and Tartar), as collected in Robinson and Stokes, Electrolyte Solutions, appendix 12.1
describe('pK of the acids at 0, 25 and 50 °C', () => {
  it.each([
    ['citric', 1, [3.22, 3.128, 3.095], 0.008], ['citric', 2, [4.837, 4.761, 4.757], 0.008], ['citric', 3, [6.393, 6.396, 6.484], 0.008],
    ['tartaric', 1, [3.118, 3.036, 3.018], 0.004], ['tartaric', 2, [4.426, 4.366, 4.391], 0.004],
    ['succinic', 1, [4.285, 4.207, 4.188], 0.008], ['succinic', 2, [5.674, 5.638, 5.68], 0.008],
    ['acetic', 1, [4.781, 4.756, 4.787], 0.004], ['lactic', 1, [3.88, 3.858, 3.895], 0.006],
    ['phosphoric', 1, [2.056, 2.148, 2.261], 0.02], ['phosphoric', 2, [7.313, 7.198, 7.183], 0.015],
  ] as const)('%s, step %i', (acid, step, printed, within) => {
    printed.forEach((value, n) => { expect(Math.abs(pK(acid, step, 25 * n) - value)).toBeLessThanOrEqual(within); });
  });
  it('by heat alone they are the same, but for the first step of citric acid', () => {
    for (const [acid, step] of [['citric', 2], ['citric', 3], ['tartaric', 1], ['acetic', 1], ['phosphoric', 2]] as const) expect(pKByHeat(acid, step, 40)).toBe(pK(acid, step, 40));
    expect(pKByHeat('citric', 1, 40)).not.toBe(pK('citric', 1, 40));
    for (const [acid, step] of [['lactic', 1], ['citric', 4], ['no such acid', 1], ['quinic', 1]] as const) expect(pKByHeat(acid, step, 40)).toBeNaN();
  });
  // From memory: Harned and Davis 1943, Harned and Scholes 1941; Hamer, Pinching and Acree 1945
  it('carbonic and phthalic acid at 25 °C are known too, and nothing else', () => {
    expect([pK('carbonic', 1, 25), pK('carbonic', 2, 25), pK('phthalic', 1, 25), pK('phthalic', 2, 25)].map((value) => Math.round(100 * value))).toEqual([635, 1033, 295, 541]);
    for (const [acid, step] of [['phthalic', 3], ['no such acid', 1], ['citric', 0], ['citric', 4]] as const) expect(pK(acid, step, 25)).toBeNaN();
  });
});

describe('water', () => {
  // From memory: Harned and Robinson 1940, as in Robinson and Stokes, appendix 12.2
  it.each([[0, 14.9435], [10, 14.5346], [20, 14.1669], [25, 13.9965], [40, 13.5348], [50, 13.2617], [60, 13.0171]])('at %i °C has pKw %f', (celsius, printed) => {
    expect(Math.abs(pKw(celsius) - printed)).toBeLessThan(0.004);
  });
  // From memory: Robinson and Stokes, appendix 7.1
  it.each([[0, 0.4918], [10, 0.4989], [20, 0.507], [25, 0.511]])('at %i °C has the slope %f', (celsius, printed) => {
    expect(Math.abs(debyeHueckelA(celsius) - printed)).toBeLessThan(0.001);
  });
  it('activity is 1 without ions and held from 0.5 mol/L on (the range of the equation)', () => {
    expect(daviesLog(0, 0.511)).toBeCloseTo(0, 12);
    expect(daviesLog(-1, 0.511)).toBeCloseTo(0, 12);
    expect(daviesLog(3, 0.511)).toBe(daviesLog(0.5, 0.511));
    expect(daviesLog(0.4, 0.511)).not.toBe(daviesLog(0.5, 0.511));
  });
});

// IUPAC recommendations 2002, table of the phthalate buffer, from memory; the fit of 1977 lies within 0.011 of it
it.each([[0, 4.0], [10, 3.997], [20, 4.0], [30, 4.011], [40, 4.027], [50, 4.05], [60, 4.08]])('phthalate buffer at %i °C reads %f', (celsius, printed) => {
  expect(Math.abs(phthalatePH(celsius) - printed)).toBeLessThan(0.011);
});

describe('constants as the solvers take them', () => {
  const acid = (mol: number) => { const all = new Float64Array(ACIDS); all[0] = mol; return all; };
  it('stand in rows of three, 0 for a step the acid has not, the places as of the constituents', () => {
    const k = constantsAt(25);
    const row = (name: keyof typeof at) => [0, 1, 2].map((j) => { const K = k.K[(at[name] - at.citric) * STEPS + j]!; return K === 0 ? 0 : Math.round(-100 * Math.log10(K)) / 100; });
    expect(row('citric')).toEqual([3.13, 4.76, 6.4]);
    expect(row('malic')).toEqual([3.46, 5.1, 0]);
    expect(row('lactic')).toEqual([3.86, 0, 0]);
    expect(row('other_acid')).toEqual(row('citric'));
    expect([...k.steps]).toEqual([3, 2, 2, 1, 1, 3, 2, 1, 2, 3]);
    expect(k.Kw * 10 ** 13.995).toBeCloseTo(1, 2);
    expect(k.lift).toBe(1);
    expect(constantsAt(25, 12).lift).toBeGreaterThan(1.2);
    expect(MOLAR_MASS).toHaveLength(ACIDS);
  });
  it('grams that give a mole of protons are a molar mass by its protons, to the last digit printed', () => {
    for (const [name, protons] of [['citric', 3], ['malic', 2], ['tartaric', 2], ['lactic', 1], ['acetic', 1], ['succinic', 2], ['phosphoric', 2], ['ascorbic', 1]] as const) {
      const i = at[name] - at.citric;
      expect(Math.abs(EQUIVALENT[i]! * protons - MOLAR_MASS[i]!)).toBeLessThan(0.005);
    }
  });
  it('a single acid of a stated pK stands first: half given up at its pK in thin solution, by definition', () => {
    const k = constantsOf([4.756], 25);
    expect([...k.steps].map((n) => n)).toEqual([1, ...Array.from({ length: ACIDS - 1 }, () => 0)]);
    expect(protonsReleased(0, 4.756, 0, k)).toBeCloseTo(0.5, 12);
    // Giri 2019, as in the table of pure acids: 0.1 mol/L reads 2.88
    expect(Math.abs(pH(acid(0.1), 0, 0, k) - 2.88)).toBeLessThan(0.02);
  });
  it('an acid of three steps gives up one, two and three protons far from its pKs, and no more than three steps are taken', () => {
    const k = constantsOf([2, 7, 12], 25);
    for (const [value, protons] of [[-1.5, 0], [4.5, 1], [9.5, 2], [15.5, 3]] as const) expect(Math.abs(protonsReleased(0, value, 0, k) - protons)).toBeLessThan(0.005);
    expect(constantsOf([2, 7, 12, 14], 25).steps[0]).toBe(3);
  });
  // by definition of the activity: at pH = pK the base is 10^-(log g) to one of the acid, log g of -0.107 at 0.1 mol/L
  it('the charged side gains with the ionic strength', () => { expect(protonsReleased(0, 4.756, 0.1, constantsOf([4.756], 25))).toBeCloseTo(10 ** 0.1074 / (1 + 10 ** 0.1074), 3); });
  // ln 10 C / 4 at the pK of a weak acid that is half neutralised: Van Slyke 1922
  it('buffers by ln 10 / 4 of its amount at its pK', () => {
    const k = constantsOf([7], 25);
    expect(bufferAt(acid(0.001), 0, 7, k) / 0.001).toBeCloseTo(Math.LN10 / 4, 2);
    expect(bufferAt(acid(0), 0, 2, k) / (Math.LN10 * 0.01)).toBeGreaterThan(0.97);
  });
});

describe('the two ways to the same charge and the same pH', () => {
  const k = constantsAt(20);
  const liquids: readonly (readonly [name: string, acids: readonly number[], salt: number, casein: number])[] = [
    ['water', [], 0, 0], ['water and salt', [], 0.2, 0], ['lime', [0.25, 0.02], 0, 0], ['cola', [0, 0, 0, 0, 0, 0.006], 0.01, 0], ['vinegar', [0, 0, 0, 0, 0.8], 0, 0],
    ['milk', [0.009, 0, 0, 0, 0, 0.021], 0.03, 26], ['casein alone', [], 0, 26], ['milk, its phosphate short', [0.009, 0, 0, 0, 0, 0.001], 0.03, 40], ['strong brine', [0.1], 2, 0],
  ];
  it.each(liquids)('%s', (_name, list, salt, casein) => {
    const acids = Float64Array.from({ length: ACIDS }, (_, i) => list[i] ?? 0);
    for (let value = -1.5; value <= 15.5; value += 0.5) {
      const strong = chargeAt(acids, 0, value, k, salt, casein);
      expect(Math.abs(strong - chargeBySettling(acids, 0, value, k, salt, casein))).toBeLessThan(1e-6 * (1 + Math.abs(strong)));
    }
    for (const strong of [-0.2, -0.001, 0, 1e-5, 0.03, 0.4]) expect(Math.abs(pH(acids, 0, strong, k, salt, casein) - pHByHalving(acids, 0, strong, k, salt, casein))).toBeLessThan(1e-6);
  });
  it('reads the acids from where it is told to', () => {
    const moved = Float64Array.of(7, 7, 0.25, 0.02, 0, 0, 0, 0, 0, 0, 0, 0), acids = moved.slice(2);
    expect(chargeAt(moved, 2, 3, k)).toBe(chargeAt(acids, 0, 3, k));
    expect(chargeBySettling(moved, 2, 3, k)).toBe(chargeBySettling(acids, 0, 3, k));
    expect(pH(moved, 2, 0.01, k)).toBe(pH(acids, 0, 0.01, k));
  });
});
