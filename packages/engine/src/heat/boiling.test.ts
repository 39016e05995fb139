import { expect, test } from 'vitest';
import { airPressure, boilingPoint } from './boiling.ts';

// ISO 2533:1975, standard atmosphere, table of pressures (from memory): 0 m 1013.25, 1000 m 898.76, 1500 m 845.59, 3000 m 701.21, 5000 m 540.48 hPa
test.each([[0, 1013.25], [1000, 898.76], [1500, 845.59], [3000, 701.21], [5000, 540.48]])('at %d m the air presses with %d hPa', (height, hPa) => { expect(airPressure(height) * 10).toBeCloseTo(hPa, 0); });
// Saturation pressure of water, IAPWS-95 as in handbooks of steam (from memory): 90 °C 70.18, 95 °C 84.61, 100 °C 101.42 kPa.
// A curve of three constants follows them within a tenth of a kelvin, a seventh of what a kitchen thermometer shows.
test.each([[70.18, 90], [84.61, 95], [101.42, 100]])('under %d kPa water boils at %d °C', (kPa, celsius) => { expect(Math.abs(boilingPoint(kPa) - celsius)).toBeLessThan(0.1); });
test('higher up it boils sooner, without end points running away', () => {
  let before = Infinity;
  for (let h = -1000; h <= 12_000; h += 250) { const t = boilingPoint(airPressure(h)); expect(t).toBeLessThanOrEqual(before); expect(t).toBeGreaterThan(60); before = t; }
});
