import { describe, expect, it } from 'vitest';
import { at } from '../matter/constituents.ts';
import { ACIDS, constantsAt, ethanolShift, STEPS } from './constants.ts';
import { constantsInto, ETHANOL_SHIFT, ethanolShiftBound } from './ethanol.ts';
import { pH } from './ph.ts';

const WATER = constantsAt(20);

describe('the share of the rule for ethanol', () => {
  // Prenesti 2012 table 4, log beta at 0 and 12 % vol: lactic, then the two steps of succinic, by two laboratories and at two ionic strengths
  it.each([[3.7, 3.81], [3.7, 3.87], [5.319, 5.467], [5.319, 5.49], [9.347 - 5.319, 9.651 - 5.467], [9.347 - 5.319, 9.68 - 5.49], [3.66, 3.77], [3.66, 3.83], [5.24, 5.38], [5.24, 5.39]])(
    'takes in %f to %f', (water, wine) => {
      expect(wine - water).toBeGreaterThan(ethanolShift(12, ETHANOL_SHIFT.low) - 0.005);
      expect(wine - water).toBeLessThan(ethanolShift(12, ETHANOL_SHIFT.high) + 0.005);
    });
  it('takes in caseinate at 60 % vol, 1.0 (Mezdour 2006), and acetic acid at 57.8, 5.84 (from memory, Grunwald 1951)', () => {
    for (const [pct, shift] of [[60, 1.0], [57.8, 5.84 - 4.756]] as const) {
      expect(shift).toBeGreaterThan(ethanolShift(pct, ETHANOL_SHIFT.low));
      expect(shift).toBeLessThan(ethanolShift(pct, ETHANOL_SHIFT.high));
    }
  });
  it('stays below benzoic acid from 25 % by weight on', () => {
    for (const [pct, weight] of [[31, 25.2], [52, 44.1], [60, 52.1]] as const) expect(ethanolShift(pct, 1)).toBeLessThan(ethanolShiftBound(weight) + 0.2);
  });
  it('is held at 0 and 60 % vol', () => {
    expect(ethanolShift(-3)).toBe(0);
    expect(ethanolShift(96)).toBe(ethanolShift(60));
  });
});

describe('constants filled in', () => {
  const k = constantsAt(5);
  it('are those made anew at that strength', () => {
    constantsInto(k, WATER, 23.5);
    const fresh = constantsAt(20, 23.5);
    for (let i = 0; i < ACIDS * STEPS; i++) expect(k.K[i]! / (fresh.K[i]! || 1)).toBeCloseTo(fresh.K[i]! > 0 ? 1 : 0, 12);
  });
  it('are those of water without ethanol, or at no share', () => {
    for (const [pct, share] of [[0, 1], [40, 0]] as const) {
      constantsInto(k, WATER, pct, share);
      expect([...k.K]).toEqual([...WATER.K]);
      expect(k.lift).toBe(1);
    }
  });
  it('make a sour of 20 % vol read 0.15 to 0.3 higher', () => {
    const acids = new Float64Array(ACIDS);
    acids[at.citric - at.citric] = 0.06;
    constantsInto(k, WATER, 20);
    const rise = pH(acids, 0, 0.01, { ...k, Kw: WATER.Kw, A: WATER.A }) - pH(acids, 0, 0.01, WATER);
    expect(rise).toBeGreaterThan(0.1);
    expect(rise).toBeLessThan(0.26);
  });
});
