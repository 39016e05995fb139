import { describe, expect, it } from 'vitest';
import { at } from '../matter/constituents.ts';
import { caseinInto } from './casein.ts';
import { ACIDS, constantsAt, MOLAR_MASS } from './constants.ts';
import { bufferAt, chargeAt, pH } from './ph.ts';
import { milkBuffer } from '../clarity/milk.ts';

const K = constantsAt(20);
/** Skim milk: citrate and inorganic phosphate in mol/L (Fox and McSweeney 1998, table 5.6), casein 26 g/L (24 to 28, from memory). */
const milk = new Float64Array(ACIDS);
milk[at.citric - at.citric] = 0.0092;
milk[at.phosphoric - at.citric] = 0.0208;
const CASEIN = 26, SALT = 0.03;
const charge = (value: number, casein = CASEIN) => chargeAt(milk, 0, value, K, SALT, casein);

describe('milk as citrate, phosphate and casein', () => {
  it('buffers most about pH 5.1 (Lucey 1993: 5.0; Advanced Dairy Chemistry: 5.1), by 0.0333 mol/L per pH (cow, skim; e-course of a dairy college)', () => {
    let peak = 0, where = 0;
    for (let value = 4; value < 6.6; value += 0.01) {
      const strength = bufferAt(milk, 0, value, K, SALT, CASEIN);
      if (strength > peak) { peak = strength; where = value; }
    }
    expect(where).toBeGreaterThan(4.9);
    expect(where).toBeLessThan(5.25);
    expect(Math.abs(peak - 0.0333)).toBeLessThan(0.0333 * 0.07);
  });
  it('takes 50 to 65 mmol of strong acid a litre from 6.6 to 4.6 (from memory, casein makers) within 5 %', () => {
    const taken = 1000 * (charge(6.6) - charge(4.6));
    expect(taken).toBeGreaterThan(47.5);
    expect(taken).toBeLessThan(65);
  });
  it('takes the 38 to 40 mmol of casein making to reach 5.0 to 5.1 (Bulletin 661, a pint of sulfuric acid to 1000 lb)', () => {
    const reached = pH(milk, 0, charge(6.7) - 0.0387, K, SALT, CASEIN);
    expect(reached).toBeGreaterThan(4.9);
    expect(reached).toBeLessThan(5.15);
  });
  it('follows the curve of curdling, which was set up from the peak alone, within its 15 %', () => {
    for (let value = 6.5; value > 3; value -= 0.1) expect(Math.abs(1000 * (charge(6.7) - charge(value)) / milkBuffer(value) - 1)).toBeLessThan(0.15);
  });
  it('citric acid for a litre to pH 4.6 is 5.5 to 7 g (from memory), to mozzarella at 5.6 1.3 to 1.9 g (maker of citric acid, monohydrate)', () => {
    const withCitric = (grams: number) => { const all = Float64Array.from(milk); all[0]! += grams / MOLAR_MASS[0]!; return pH(all, 0, charge(6.7), K, SALT, CASEIN); };
    expect(withCitric(5.5)).toBeGreaterThan(4.45);
    expect(withCitric(7)).toBeLessThan(4.6);
    expect(withCitric(1.3)).toBeLessThan(5.85);
    expect(withCitric(1.9)).toBeGreaterThan(5.4);
  });
  it('stands at 6.6 to 6.8 with the salts of milk, as far as these are known', () => {
    // Fox and McSweeney 1998 and from memory, mmol/L: K 31-43, Na 17-28, Ca 26-32, Mg 4-6; Cl 22-34, sulfate 1, organic acids 2
    const low = 0.031 + 0.017 + 2 * (0.026 + 0.004) - 0.034 - 0.004, high = 0.043 + 0.028 + 2 * (0.032 + 0.006) - 0.022 - 0.004;
    expect(charge(6.6)).toBeGreaterThan(low);
    expect(charge(6.8)).toBeLessThan(high);
  });
  it('without its phosphate and citrate is casein, without charge about 4.6 (its isoelectric point)', () => {
    const out = new Float64Array(4);
    const net = (value: number) => { caseinInto(out, 0, 10 ** -value, K, 1, 0); return out[0]! - out[2]!; };
    expect(net(4.5)).toBeLessThan(0);
    expect(net(4.8)).toBeGreaterThan(0);
  });
});

describe('the slopes that the solver takes', () => {
  it.each([3, 4.2, 5.1, 6, 7])('are those of the charge at pH %f', (value) => {
    const a = new Float64Array(4), b = new Float64Array(4), c = new Float64Array(4), step = 1e-4;
    const h = 10 ** -value;
    caseinInto(a, 0, h, K, 20, 0.01);
    caseinInto(b, 0, h * Math.exp(step), K, 20, 0.01);
    caseinInto(c, 0, h * Math.exp(-step), K, 20, 0.01);
    expect((c[0]! - b[0]!) / (2 * step) / a[1]!).toBeCloseTo(1, 5);
    expect((b[2]! - c[2]!) / (2 * step) / a[3]!).toBeCloseTo(1, 5);
  });
});
