import { expect, it } from 'vitest';
import { leftWhenShaken, lostOnPouring } from './index.ts';

// Liger-Belair et al., J. Agric. Food Chem. 58 (2010) 8768, as a newspaper printed its six losses (content.usatoday.com, 11 August 2010): g of 11.4 g/L, straight down and along the wall.
it.each([[4, 3.0, 1.6], [12, 3.3, 2.0], [18, 4.0, 3.7]])('champagne at %i °C loses between what it loses along the wall and straight down', (celsius, straight, tilted) => {
  const lost = 11.4 * lostOnPouring(11.4, celsius);
  expect(lost).toBeGreaterThan(tilted * 0.95);
  expect(lost).toBeLessThan(straight);
});
// ACS Omega 6 (2021) 9672, table 1: champagne 11 g/L in the bottle, 8 in the flute; lager 5.49 and 5.19 in a tilted glass. Served cool; the spread of a pour is a factor of two either way.
it.each([[11, 8], [5.49, 5.19]])('%f g/L comes down to about %f', (before, after) => {
  const lost = before * lostOnPouring(before, 12);
  expect(Math.abs(Math.log(lost / (before - after)))).toBeLessThan(Math.log(1.4));
});
it('warmer and fuller of gas loses more, and never all', () => {
  for (let g = 0; g < 15; g += 0.5) for (let t = 0; t < 25; t += 1) {
    expect(lostOnPouring(g + 0.5, t)).toBeGreaterThanOrEqual(lostOnPouring(g, t));
    expect(lostOnPouring(g, t + 1)).toBeGreaterThanOrEqual(lostOnPouring(g, t));
    expect(lostOnPouring(g, t)).toBeLessThanOrEqual(0.9);
  }
});
// CRC Handbook, solubility of carbon dioxide in water at 100 kPa of it, mole fractions.
it.each([[5, 0.001123], [25, 0.000614]])('shaken at %i °C at most what water holds under an atmosphere stays', (celsius, fraction) => {
  expect(Math.abs(leftWhenShaken(celsius) / (fraction * 1.01325 * 55.4 * 44.01) - 1)).toBeLessThan(0.02);
});
