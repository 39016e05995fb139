import { afterEach, describe, expect, it } from 'vitest';
import { figureShown } from './numbers.ts';
import { amountIn, inBoth, inUnits, measureIn, measureShown, sentenceIn, weightIn } from './units.ts';

afterEach(() => { measureIn(null, '°C'); });
const figure = { value: 276.3, low: 268, high: 284, unit: 'mL' };

describe('units the drawing is lettered in', () => {
  it('ounces as a bar says them; what no fraction comes near to in decimals', () => {
    measureIn('oz', '°C');
    for (const [mL, said] of [[60, '2 oz'], [45, '1 1/2 oz'], [22.5, '3/4 oz'], [30, '1 oz'], [7.5, '1/4 oz'], [25, '7/8 oz'], [18.5, '5/8 oz'], [10, '0.34 oz'], [20, '0.68 oz'], [4, '1 bar spoon'], [2, '1/2 bar spoon'], [0.8, '1 dash'], [1.6, '2 dash'], [240, '8 oz']] as const) expect(measureShown(mL), String(mL)).toBe(said);
  });
  it('no fraction is further from what is meant than one in twenty', () => {
    measureIn('oz', '°C');
    for (let mL = 0.1; mL < 700; mL += 0.37) {
      const [, whole, parts, over, decimals, unit] = /^(?:(?:(\d+) ?)?(?:(\d+)\/(\d+))?|(\d+\.\d+)) (oz|bar spoon|dash)$/.exec(measureShown(mL))!;
      const told = (decimals === undefined ? Number(whole ?? 0) + Number(parts ?? 0) / Number(over ?? 1) : Number(decimals)) * (unit === 'oz' ? 29.5735 : unit === 'dash' ? 0.8 : 4);
      expect(Math.abs(told - mL) / mL, `${mL} ml is ${measureShown(mL)}`).toBeLessThan(0.06);
    }
  });
  it('a sentence tells its °C and ml in the units chosen, exact fixed points among them; what is no unit stays', () => {
    const said = 'The fat is set at 20 °C: it melts at 28.5 °C, freezes at -18 °C and −40 °C. Put 30 ml to it, 2 h below 0 °C; 30 mlb and 5 C stay.';
    expect(sentenceIn(said)).toBe(said);
    // 0 °C is 32 °F, 100 °C is 212 °F, -40 is the same in both (BIPM, SI brochure)
    measureIn('oz', '°F');
    expect(sentenceIn(said)).toBe('The fat is set at 68 °F: it melts at 83.3 °F, freezes at 0 °F and −40 °F. Put 1 oz to it, 2 h below 32 °F; 30 mlb and 5 C stay.');
    expect(sentenceIn('hält 100 °C, 12,5 ml')).toContain('212 °F');
    measureIn('cl', '°C');
    expect(sentenceIn('add 30 ml at 20 °C')).toBe('add 3 cl at 20 °C');
  });
  it('what is weighed is told in grams where they were chosen, as fine as a kitchen scale reads', () => {
    expect(weightIn(56.9, 'ml')).toBeNull();
    measureIn('g', '°C');
    expect([weightIn(56.88, 'ml'), weightIn(9.84, 'ml'), weightIn(0.412, 'dash'), weightIn(15, 'g'), weightIn(undefined, 'ml')]).toEqual(['57 g', '9.8 g', '0.41 g', null, null]);
    expect(inUnits(figure).unit).toBe('mL');
    expect([measureShown(45), amountIn(45, 'ml')]).toEqual(['45 ml', null]);
  });
  it('an amount follows only where another unit was chosen than it is written in', () => {
    expect(amountIn(60, 'ml')).toBeNull();
    measureIn('cl', '°C');
    expect([amountIn(60, 'ml'), amountIn(6, 'cl'), amountIn(2, 'dash'), amountIn(10, 'g'), amountIn(2, 'oz')]).toEqual(['6 cl', null, null, null, null]);
    expect(inBoth(() => [amountIn(60, 'ml'), amountIn(2, 'dash')])).toEqual(['60 ml (2 oz)', null]);
    expect(amountIn(60, 'ml')).toBe('6 cl');
    measureIn('ml', '°C');
    expect([amountIn(60, 'ml'), amountIn(4.5, 'cl'), amountIn(0.7, 'l')]).toEqual([null, '45 ml', '700 ml']);
  });
  it('figures: value and both ends; what is no volume and no temperature stays', () => {
    expect(figureShown(figure)).toBe('276 ml');
    measureIn('oz', '°F');
    expect(figureShown(figure)).toBe('9.3 oz');
    expect(inUnits(inUnits(figure))).toEqual(inUnits(figure));
    expect(figureShown({ value: -2, low: -6, high: 6, unit: '°C' })).toBe('28 °F');
    expect(figureShown({ value: 15.3, low: 14.6, high: 16, unit: '% vol' })).toBe('15.3 % vol');
    measureIn('cl', '°C');
    expect(figureShown(figure)).toBe('27.6 cl');
  });
});
