import { describe, expect, it } from 'vitest';
import { fatLiquid, fatNotMelted, fatNotSet, strengthAfterFat } from './fat.ts';
import { clearingDose, curdMass, juiceShare, milkForPunch, milkWashYield, through, wholePieces } from './yields.ts';
import { plantCriticalPH, plantVerdict } from './plant.ts';

describe('yields', () => {
  it('1500 mL base and 960 mL milk give 2162 mL through two papers', () => { expect(milkWashYield(1500, 960, 0.3, 2, 5)).toBeCloseTo(2162, 6); expect(milkWashYield(0, 1, 1, 9, 5)).toBe(0); });
  it('10 kg milk drain to 1.74 to 2.32 kg ricotta (recipe, 1.5 to 2 lb a gallon)', () => { expect(curdMass(10, 0.174)).toBeCloseTo(1.74, 9); expect(curdMass(10, 0.232)).toBeCloseTo(2.32, 9); });
  it('100 mL of setting water leave 80 % juice (spin gel)', () => { expect(juiceShare(400, 100)).toBeCloseTo(0.8, 12); expect(juiceShare(0, 0)).toBe(0); });
  it('2 g agar per kg are 1.5 g for 750 g', () => { expect(clearingDose(750, 0.2)).toBeCloseTo(1.5, 12); });
  it('17 limes of 30 mL give 500 mL; a fifth of a litre of milk clears 0.8 L', () => { expect(wholePieces(500, 30)).toBe(17); expect(wholePieces(60, 30)).toBe(2); expect(milkForPunch(800)).toBe(200); });
  it('share first, then what each cloth holds', () => { expect(through(300, 0.95, 2, 5)).toBeCloseTo(275, 9); expect(through(3, 0.9, 1, 5)).toBe(0); });
});

describe('fat', () => {
  it('butter brings water: 150 g take 700 mL of 40 % to 38.7 (butter wash)', () => { expect(strengthAfterFat(700, 40, 150)).toBeCloseTo(38.7, 1); });
  it('coconut oil melts between 23 and 27 °C', () => {
    expect(fatLiquid(40, 23, 27)).toBe(1); expect(fatLiquid(25, 23, 27)).toBe(0.5); expect(fatLiquid(4, 23, 27)).toBe(0);
    expect(fatNotMelted(20, 27)).toBe(7); expect(fatNotSet(-18, 23)).toBe(-41);
  });
});

describe('plant drinks', () => {
  it('soy curds hot at pH 5.6 and holds at 6.6 (tofu practice 5.7-6.4)', () => { expect(plantCriticalPH('soy', 80)).toBeGreaterThan(5.6); expect(plantCriticalPH('soy', 80)).toBeLessThan(6.6); });
  it('coconut breaks at pH 4 and is best at 6.5', () => { expect(plantCriticalPH('coconut')).toBeGreaterThan(4); expect(plantCriticalPH('coconut')).toBeLessThan(6.5); });
  it('oat only hazes', () => { expect(plantVerdict('oat')).toBe('haze'); });
});
