import { describe, expect, it } from 'vitest';
import { byBloom, bySheet, driedWhite, gelatinSet, GRADES, gramsToSheets, sheetsToGrams } from './gelatin.ts';

describe('gelatin', () => {
  // Table of factors by Bloom, 60 to 260: printed to two digits.
  it.each([[60, 80, 0.87], [60, 260, 0.48], [200, 100, 1.41], [240, 160, 1.22], [260, 60, 2.08], [140, 220, 0.8], [100, 180, 0.75]])('%f to %f Bloom is %f by weight', (from, to, factor) => {
    expect(Math.abs(byBloom(1, from, to) - factor)).toBeLessThan(0.02);
  });
  it('bronze to platinum is 0.75 by weight and 0.52 sheet for sheet', () => {
    expect(byBloom(1, 140, 250)).toBeCloseTo(0.75, 2);
    expect(GRADES.platinum.sheet_g / GRADES.bronze.sheet_g).toBeCloseTo(0.52, 2);
    expect(bySheet(1, 140, 250)).toBeCloseTo(0.56, 2);
  });
  it('is taken at the middle of the Bloom that is printed of a grade: 125 to 155, 190 to 220, 235 to 265; silver is printed as 160', () => {
    for (const grade of ['bronze', 'gold', 'platinum'] as const) expect(GRADES[grade].bloom).toBe((GRADES[grade].low + GRADES[grade].high) / 2);
    expect((GRADES.silver.low + GRADES.silver.high) / 2).toBe(160);
  });
  it('a sheet weighs 3.3, 2.5, 2, 1.7 g', () => { expect(sheetsToGrams(10, 'silver')).toBe(25); expect(gramsToSheets(6, 'gold')).toBe(3); });
  it('is full after 5-8 h at 5 °C and 15-20 h at 10 °C (gelatin maker)', () => {
    expect(gelatinSet(8 * 3600, 5)).toBeGreaterThan(0.95); expect(gelatinSet(5 * 3600, 5)).toBeLessThan(0.95);
    expect(gelatinSet(20 * 3600, 10)).toBeGreaterThan(0.95); expect(gelatinSet(15 * 3600, 10)).toBeLessThan(0.95);
    expect(gelatinSet(4 * 3600, 22)).toBe(0); expect(gelatinSet(0, 4)).toBe(0);
  });
  it('90 g of liquid white are 10.8 g powder and 79.2 g water (egg board)', () => { expect(driedWhite(90).powder_g).toBeCloseTo(10.8, 9); expect(driedWhite(90).water_g).toBeCloseTo(79.2, 9); });
});
