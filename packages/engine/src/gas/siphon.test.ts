import { describe, expect, it } from 'vitest';
import { classMargin, foamDensity, foamVolume, nitrousDissolved, nitrousFactor, overrunBound, overrunByWeight, overrunOf, siphonOf, siphonPressure } from './siphon.ts';

describe('pressure of a siphon', () => {
  // Worked from Henry's constant (Sander 2023) by a second script.
  it.each([[8, 0.5, 0.75, 5, 5.46, 0.675], [8, 0.5, 0.75, 20, 7.52, 0.576], [16, 0.5, 0.75, 5, 10.93, 0.675], [8, 0.25, 0.4, 5, 10.26, 0.634], [16, 1, 1.4, 5, 5.84, 0.722]])('%f g over %f L in %f L at %f °C: %f bar, share %f', (g, liquid, gross, celsius, bar, share) => {
    expect(Math.abs(siphonPressure(g, liquid, gross, celsius) - bar)).toBeLessThan(0.02);
    expect(nitrousDissolved(liquid, gross, celsius)).toBeCloseTo(share, 2);
  });
  it('a mix charged warm: 16 g over 318 mL in 750 are 10.8 bar at 4 °C, 13.7 at 20, 19.7 at 62', () => {
    expect(siphonPressure(16, 0.318, 0.75, 4)).toBeCloseTo(10.8, 1); expect(siphonPressure(16, 0.318, 0.75, 20)).toBeCloseTo(13.7, 1); expect(siphonPressure(16, 0.318, 0.75, 62)).toBeCloseTo(19.7, 1);
  });
  it('rises with gas, heat and fill', () => {
    expect(siphonPressure(16, 0.5, 0.75, 5)).toBeCloseTo(2 * siphonPressure(8, 0.5, 0.75, 5), 9);
    expect(siphonPressure(8, 0.6, 0.75, 20)).toBeGreaterThan(siphonPressure(8, 0.5, 0.75, 20)); // at 5 °C water takes up as much as the same headspace
    expect(siphonPressure(8, 0.8, 0.75, 20)).toBeGreaterThan(0); // overfull: no headspace, no negative one
  });
  it('a working siphon is far under the bound of its class', () => { expect(classMargin(10, 0.75)).toBeCloseTo(-42.5, 9); });
});

describe('foam', () => {
  it('5.6 volumes of gas bound the overrun of 8 g in half a litre at 5 °C', () => { expect(overrunBound(8, 0.5, 0.75, 5)).toBeCloseTo(560, -1); expect(overrunBound(8, 0, 0.75, 5)).toBe(0); });
  it('four times the volume is 300 %', () => { expect(overrunOf(4)).toBe(300); expect(overrunByWeight(100, 25)).toBe(300); });
  it('14.4 mL at 300 % stand as 57 mL of 0.26 g/mL', () => { expect(foamVolume(14.4, 300)).toBeCloseTo(57.6, 9); expect(foamDensity(1.04, 300)).toBeCloseTo(0.26, 9); });
});

describe('drinks and vessels', () => {
  it('sugar lowers, strong spirit raises what dissolves', () => { expect(nitrousFactor(0, 20)).toBeCloseTo(0.85, 9); expect(nitrousFactor(40, 0)).toBeCloseTo(1.15, 9); expect(nitrousFactor(17, 0)).toBeCloseTo(0.95, 9); expect(nitrousFactor(120, 90)).toBeCloseTo(4.2 * 0.7, 9); });
  it('half a litre takes half a litre; an odd size is scaled', () => { expect(siphonOf(500).gross_mL).toBe(750); expect(siphonOf(800).usable_mL).toBe(800); });
});
