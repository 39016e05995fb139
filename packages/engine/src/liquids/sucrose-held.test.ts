import { describe, expect, it } from 'vitest';
import { sucroseHeld, sucroseInSpirit } from './sucrose-held.ts';
import { sucroseSaturation } from './solubility.ts';

describe('sucrose in water, spirit and beside other sugars', () => {
  // Mohos, Confectionery and Chocolate Engineering (2010), table A2.3: g in 100 g of water
  it.each([[0, 179.17], [20, 203.86], [40, 238.07], [60, 287.3]])('water at %i °C holds what is printed', (celsius, grams) => { expect(Math.abs(sucroseHeld(100, 0, 0, sucroseSaturation(celsius)) / grams - 1)).toBeLessThan(0.002); });
  // Scheibler 1872 by Seidell (from memory): g in 100 cm3 of solution saturated at 14 °C, where water holds 66.2 in 100 g; a gram of sucrose fills 0.632 mL in it
  it.each([[10, 81.5], [20, 74.5], [30, 67.9], [40, 58.0], [50, 47.1], [60, 33.9], [70, 18.8], [80, 6.6]])('spirit of %i % vol at 14 °C', (pct, grams) => {
    const water = (100 - pct) * 0.9982, held = sucroseHeld(water, pct * 0.78924, 0, sucroseSaturation(14));
    expect(Math.abs((100 * held) / (100 + 0.632 * held) / grams - 1)).toBeLessThan(0.01);
  });
  // read at k-mashzavod.narod.ru: 0.2 g in 100 cm3 of absolute alcohol at 14 °C, held at the table's end here
  it('next to none in alcohol alone', () => { expect(sucroseInSpirit(100)).toBeLessThan(0.005); expect(sucroseInSpirit(0)).toBe(1); });
  it('falls with strength and with what is beside it, and nothing holds where there is no water', () => {
    for (let pct = 0; pct < 95; pct += 5) expect(sucroseInSpirit(pct + 5)).toBeLessThanOrEqual(sucroseInSpirit(pct));
    expect(sucroseHeld(100, 0, 50, 67)).toBeLessThan(sucroseHeld(100, 0, 0, 67));
    expect(sucroseHeld(100, 0, 50, 67, 0)).toBe(sucroseHeld(100, 0, 0, 67));
    expect(sucroseHeld(0, 10, 0, 67)).toBe(0);
  });
});
