import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { citricForMilk, milkBuffer, milkMixPH } from './milk.ts';
import { CRITICAL_PH, criticalEthanol, criticalPH, curdle, curdleInto, curdleKnown, CURDLING, curdleOdds, curdleSeverity, CURDS, FEATHERS, HAZE, MARGIN, MIX_PH, ODDS, ULTRA } from './curdle.ts';

/** Lemon juice of the tests: 47 g/L citric acid, 33 mmol/L potassium. */
const CITRIC_MOLAR = 192.124;

function mixWithLemon(dairy: number, fat: number, spirit: number, abv: number, lemon: number) {
  const acids = new Float64Array(10);
  acids[0] = (0.047 / CITRIC_MOLAR) * lemon;
  return curdle({ serum_mL: dairy * (1 - fat), casein_g: dairy * (1 - fat) * 0.027, acids_mol: acids, strong_mol: 33e-6 * lemon, other_mL: spirit + lemon, ethanol_mL: (spirit * abv) / 100 });
}

function lemonAtOdds(dairy: number, fat: number, spirit: number, abv: number, odds: number): number {
  let low = 0, high = 60;
  for (let i = 0; i < 40; i++) { const x = (low + high) / 2; if (mixWithLemon(dairy, fat, spirit, abv, x).odds > odds) high = x; else low = x; }
  return low;
}

describe('ethanol alone', () => {
  const milk = (solution: number) => criticalPH(solution / 2) - 6.65; // equal volumes
  it.each([[60, false], [68, false], [72, false], [86, true], [90, true], [96, true]])('herd milk of pH 6.65 with an equal volume of %f %%: curdles %s (Davies and White 1958: 80-84 %%)', (solution, curdles) => {
    expect(milk(solution) > 0).toBe(curdles);
  });
  it('the solution that just does it lies at 80 to 84 %', () => {
    expect(2 * criticalEthanol(6.65)).toBeGreaterThan(80); expect(2 * criticalEthanol(6.65)).toBeLessThan(84);
  });
  it.each([[6.55, 0, 0.15], [6.1, 0.3, 0.95], [5.9, 0.85, 1]])('alizarol test, 34 %% in the mix, pH %f: odds between %f and %f (none, small flakes, big flakes)', (pH, low, high) => {
    const odds = curdleOdds(criticalPH(34) - pH);
    expect(odds).toBeGreaterThanOrEqual(low); expect(odds).toBeLessThanOrEqual(high);
  });
  it.each([[0, 5.05], [5, 5.19], [10, 5.34], [15, 5.49], [17, 5.56], [20, 5.66], [25, 5.83], [30, 6.04], [35, 6.27], [40, 6.58], [42, 6.73], [45, 7.02]])('critical pH at %f %% vol is %f (table of the recommended curve)', (E, pH) => {
    expect(criticalPH(E)).toBeCloseTo(pH, 2);
  });
  it('pH and ethanol undo each other', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 51, noNaN: true }), fc.constantFrom(0, ULTRA), (E, heat) => {
      expect(criticalEthanol(criticalPH(E, 20, heat), heat)).toBeCloseTo(E, 6);
    }));
    expect(criticalEthanol(4.8)).toBe(0);
  });
});

describe('shifts', () => {
  it('2 mM calcium turns a 34 % mix of good milk positive (dairy supply house)', () => {
    expect(criticalPH(34) < 6.6).toBe(true);
    expect(criticalPH(34, 20, 0, 2) > 6.6).toBe(true);
  });
  it('1 mM citrate does nothing, more a little (Horne and Parker 1981)', () => {
    expect(criticalPH(20, 20, 0, 0, 1)).toBe(criticalPH(20));
    expect(criticalPH(20) - criticalPH(20, 20, 0, 0, 5)).toBeCloseTo(0.04, 9);
    expect(criticalPH(20) - criticalPH(20, 20, 0, 0, 50)).toBeCloseTo(0.1, 9);
  });
  it('hot milk curdles on far less acid: 1.3 g citric per L at 88 °C (ricotta recipe)', () => {
    const one = { serum_mL: 1000, casein_g: 27, acids_mol: [1.32 / CITRIC_MOLAR, 0, 0, 0, 0, 0, 0, 0, 0, 0], other_mL: 0 };
    expect(curdle({ ...one, celsius: 88 }).margin).toBeGreaterThan(0);
    expect(curdle({ ...one, celsius: 4 }).margin).toBeLessThan(0);
  });
  it('the heat shift is gone at 25 % vol', () => { expect(criticalPH(25, 60)).toBe(criticalPH(25)); });
  it('says nothing above 30 °C and 25 % vol', () => {
    expect(curdleKnown(26, 31)).toBe(false); expect(curdleKnown(26, 30)).toBe(true); expect(curdleKnown(25, 31)).toBe(true);
    expect(curdle({ serum_mL: 50, casein_g: 1.3, acids_mol: new Float64Array(10), other_mL: 50, ethanol_mL: 30, celsius: 40 })).toMatchObject({ known: false, margin: NaN });
  });
});

describe('acid alone', () => {
  it('38 to 40 mmol strong acid per L stand at 5.0 to 5.1 (Bulletin 661, casein making)', () => {
    const none = new Float64Array(10);
    for (const mmol of [37.7, 39.7]) expect(Math.abs(milkMixPH(1, 1, 6.7, none, 0, -mmol / 1000, 1) - 5.05)).toBeLessThan(0.1);
  });
  it('a litre to 4.6 takes 6.2 g citric acid, ± 10 %', () => { expect(Math.abs(citricForMilk(1, 4.6) - 6.2)).toBeLessThan(0.6); });
  it('1.3 to 1.9 g citric per L are pH 5.8 to 5.6 (dairy use sheet)', () => {
    expect(citricForMilk(1, 5.8)).toBeGreaterThan(1.1); expect(citricForMilk(1, 5.6)).toBeLessThan(2.1);
  });
  it('15 mL lemon in a cup of milk just thickens: pH about 5.2, near the limit', () => {
    const r = mixWithLemon(225, 0.038, 0, 0, 15);
    expect(Math.abs(r.pH - 5.2)).toBeLessThan(0.12); expect(r.odds).toBeGreaterThan(0.1); expect(r.odds).toBeLessThan(0.85);
  });
  it('the buffer is steepest near 5.1 and goes on at its ends', () => {
    const slope = (pH: number) => (milkBuffer(pH - 0.05) - milkBuffer(pH + 0.05)) / 0.1;
    expect(slope(5.2)).toBeGreaterThan(slope(6.3)); expect(slope(5.2)).toBeGreaterThan(slope(4.1));
    expect(milkBuffer(7)).toBeLessThan(0); expect(milkBuffer(2.4)).toBeGreaterThan(103);
  });
  it('yoghurt starts at its own pH', () => { expect(milkMixPH(0.1, 1, 4.4, new Float64Array(10), 0, 0, 0.1)).toBeCloseTo(4.4, 2); });
});

describe('lemon juice (47 g/L citric, 33 mM K) that curdles half of all milks', () => {
  // Table of the recommended curve, worked with other constants for citric acid (2.96, 4.43, 5.79): within 6 % or 0.06 mL.
  it.each([
    ['whole milk', 60, 0.038, 0, 0, 5.0], ['whole milk', 60, 0.038, 45, 20, 3.6], ['whole milk', 60, 0.038, 45, 40, 2.5], ['whole milk', 60, 0.038, 60, 50, 1.6],
    ['half-and-half', 60, 0.118, 0, 0, 4.6], ['half-and-half', 60, 0.118, 45, 40, 2.2], ['half-and-half', 60, 0.118, 60, 50, 1.3],
    ['cream', 30, 0.38, 0, 0, 1.6], ['cream', 30, 0.38, 45, 20, 0.9], ['cream', 30, 0.38, 45, 40, 0.4], ['cream', 30, 0.38, 60, 50, 0.1],
  ])('%s %f mL (fat %f), spirit %f mL at %f %%: %f mL', (_, dairy, fat, spirit, abv, mL) => {
    expect(Math.abs(lemonAtOdds(dairy, fat, spirit, abv, 0.5) - mL)).toBeLessThan(Math.max(0.06, 0.06 * mL) + 0.05);
  });
  it('fresh dairy in 40 % spirit alone does not curdle', () => {
    for (const [dairy, fat] of [[60, 0.038], [30, 0.38]] as const) expect(mixWithLemon(dairy, fat, 60, 40, 0).odds).toBeLessThan(0.15);
  });
  it('more lemon is always more curdled', () => {
    let last = 0;
    for (let mL = 0; mL < 12; mL += 0.5) { const odds = mixWithLemon(60, 0.038, 45, 40, mL).odds; expect(odds).toBeGreaterThan(last); last = odds; }
  });
  it('much lemon is over-acid: cream 30 mL, spirit 60 mL, citrus 22 mL stand near pH 2.9', () => { expect(Math.abs(mixWithLemon(30, 0.38, 60, 40, 22).pH - 2.9)).toBeLessThan(0.2); });
});

describe('the rest', () => {
  it('severity by casein', () => { expect([9, 8, 3, 2.9].map(curdleSeverity)).toEqual([CURDS, FEATHERS, FEATHERS, HAZE]); });
  it('no dairy at all still answers', () => { expect(curdle({ serum_mL: 0, casein_g: 0, acids_mol: new Float64Array(10), other_mL: 100 }).severity).toBe(HAZE); });
  it('writes the same numbers into an array', () => {
    const out = new Float64Array(CURDLING), acids = new Float64Array(10);
    acids[0] = 0.0007;
    curdleInto(out, 0, 58, 1, 6.7, acids, 0, 0.0001, 50, 18, 20, 0, 0, 0);
    const r = curdle({ serum_mL: 58, casein_g: 58 * 0.027, acids_mol: acids, strong_mol: 0.0001, other_mL: 50, ethanol_mL: 18 });
    expect([out[MIX_PH], out[CRITICAL_PH], out[MARGIN], out[ODDS]]).toEqual([r.pH, r.critical_pH, r.margin, r.odds]);
  });
});
