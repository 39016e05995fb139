import { describe, expect, it } from 'vitest';
import { agentBound, agentMixed, COPPER_PH, crystalMargin, flashPoint, limitMargin } from './harm.ts';
import { eggMinutesMissing } from './eggs.ts';
import { BOTULISM, botulismMargin, canGrow, keepsDays, ORGANISMS } from './growth.ts';

describe('eggs (9 CFR 590.570)', () => {
  it.each([['white', 57, 3.5, true], ['white', 56, 3.5, false], ['white', 55.6, 6.2, true], ['white', 55, 60, false], ['whole', 60, 3.4, false], ['whole', 60, 3.5, true], ['yolk', 61.1, 3.5, true], ['yolk', 60, 3.5, false], ['sugared yolk', 62.2, 6.2, true]] as const)('%s at %f °C for %f min: done %s', (part, celsius, minutes, done) => {
    expect(eggMinutesMissing(part, celsius, minutes) <= 0).toBe(done);
  });
});

describe('growth (Bad Bug Book)', () => {
  it('botulinum A and B do not grow at pH 4.5, do at 4.8', () => { expect(canGrow('C. botulinum A and B', NaN, 4.5)).toBe(false); expect(canGrow('C. botulinum A and B', 20, 4.8, 0.95)).toBe(true); });
  it('listeria grows in the fridge', () => { expect(canGrow('L. monocytogenes', 4, 5, 0.95)).toBe(true); expect(canGrow('L. monocytogenes', 4, 5, 0.9)).toBe(false); expect(canGrow('L. monocytogenes', 46)).toBe(false); });
  it('takes the lower of two lists', () => { expect(canGrow('S. aureus', 30, 4.1, 0.84)).toBe(true); expect(canGrow('Y. enterocolitica', 10, 9.5)).toBe(false); });
  it('knows nine and no more', () => { expect(ORGANISMS).toHaveLength(9); expect(canGrow('yeast')).toBeUndefined(); });
  it('the line of botulism is pH 4.6', () => { expect(botulismMargin(4.9)).toBeCloseTo(0.3, 12); expect(BOTULISM.aw).toBe(0.93); });
});

describe('harm', () => {
  it('3 g cinchona of 12 % in a litre, 30 mL of it in 200 g: over 83 mg/kg of quinine if all came out', () => {
    expect(agentBound(3, 120, 1000)).toBeCloseTo(360, 9);
    expect(limitMargin(agentBound(3, 120, 200, 0.03), 83)).toBeCloseTo(54 - 83, 9);
  });
  it('tonic of 60 mg/kg with spirit is weaker', () => { expect(agentMixed(150, 60, 50, 0)).toBeCloseTo(45, 12); });
  it('66.7 °Bx crystallises at 5 °C and not at 20 (sucrose 64.87 and 67.09 %)', () => { expect(crystalMargin(66.7, 5)).toBeGreaterThan(1.5); expect(crystalMargin(66.7, 20)).toBeLessThan(0); });
  it('40 % spirit catches at 26 °C, 96 % at 17 (from memory)', () => { expect(flashPoint(40)).toBeCloseTo(26, 9); expect(flashPoint(96)).toBe(17); expect(flashPoint(99)).toBe(17); expect(flashPoint(5)).toBe(Infinity); });
  it('keeps as the house says', () => { expect(keepsDays('fresh citrus')).toEqual([1, 2]); expect(keepsDays('nothing')).toBeUndefined(); expect(COPPER_PH).toBe(6); });
});
