import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLOCK, at } from '../matter/constituents.ts';
import { balanceWithIce, enthalpy, enthalpyWithIce, freezingPoint, restWithIce } from './index.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const liquids = fc.record({ water: number(20, 200), ethanol: fc.oneof(fc.constant(0), number(1, 80)), sucrose: fc.oneof(fc.constant(0), number(1, 60)), citric: number(0, 5) });
const out = new Float64Array(2);
function block(grams: Readonly<Record<string, number>>): Float64Array {
  const s = new Float64Array(BLOCK);
  for (const [name, g] of Object.entries(grams)) s[at[name as keyof typeof at]] = g;
  return s;
}

describe('a liquid and ice of its own', () => {
  // 334 J/g and 2.09 J/(g K) for ice, 4.19 for water: CRC Handbook, ice and water at 0 °C
  it.each([[60, 4.3, 0], [10, 0, 54.1], [30, 0, 29]])('100 g of water at %d °C over 60 g of ice at -18 °C come to %d °C with %d g of ice', (celsius, ends, ice) => {
    const whole = block({ water: 160 });
    restWithIce(whole, 0, enthalpy(block({ water: 100 }), 0, celsius) + enthalpyWithIce(block({ water: 60 }), 0, -18, 60), 1, 0, out);
    expect(out[0]!).toBeCloseTo(ends, 0);
    expect(Math.abs(out[1]! - ice)).toBeLessThan(0.6);
  });
  // Melinder 2010, ethanol-water: 28 % ethanol by mass freezes at -18 °C; 20 g in 80 g of water so keep 51 g of it
  it('20 g of ethanol in 80 g of water, as cold as that: 29 g are ice at -18 °C', () => {
    const whole = block({ water: 80, ethanol: 20 });
    restWithIce(whole, 0, enthalpyWithIce(whole, 0, -18, 28.6), 1, 0, out);
    expect(Math.abs(out[0]! + 18)).toBeLessThan(0.5);
    expect(Math.abs(out[1]! - 28.6)).toBeLessThan(0.8);
  });
  it('keeps its heat to a thousandth of a joule, and what is left liquid stands in balance with the ice', () => {
    fc.assert(fc.property(liquids, number(-30, 20), number(0, 1), number(0.9, 1.1), (grams, celsius, share, factor) => {
      const s = block(grams), heat = enthalpyWithIce(s, 0, Math.min(celsius, 0), celsius < 0 ? share * grams.water : 0) + (celsius > 0 ? enthalpy(s, 0, celsius) - enthalpy(s, 0, 0) : 0);
      restWithIce(s, 0, heat, factor, 0, out);
      expect(Math.abs(enthalpyWithIce(s, 0, out[0]!, out[1]!) - heat)).toBeLessThan(1e-3);
      expect(out[1]!).toBeGreaterThanOrEqual(0);
      expect(out[1]!).toBeLessThanOrEqual(grams.water);
      if (out[1]! > 0 && out[1]! < 0.98 * grams.water) expect(out[0]!).toBeCloseTo(balanceWithIce(s, 0, out[1]!, factor), 3);
      if (out[1] === 0) expect(out[0]!).toBeGreaterThanOrEqual(factor * freezingPoint(s, 0) - 1e-6);
    }));
  });
});
