import { describe, expect, test } from 'vitest';
import { enthalpy, temperatureOf } from '../liquids/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { pourOut, takeOut } from './move.ts';

const LIQUID = 0, LOST = BLOCK;
/** 300 g of a syrup with spirit and fat in it, at 5 °C; what is lost is empty. */
function cold(): Float64Array {
  const s = new Float64Array(2 * BLOCK);
  s[at.water] = 150; s[at.ethanol] = 40; s[at.sucrose] = 100; s[at.fat] = 10; s[slot.price_minor] = 250;
  s[slot.enthalpy_J] = enthalpy(s, LIQUID, 5);
  return s;
}

// No source needed: what is taken off at the temperature of the whole leaves the rest as warm as it was, and takes along what it holds.
describe('what is taken out of a liquid', () => {
  test.each(['sucrose', 'fat'] as const)('%s: goes with its own heat', (name) => {
    const s = cold(), before = s[slot.enthalpy_J]!;
    takeOut(s, LIQUID, LOST, at[name], 0.7, 5);
    expect(temperatureOf(s, LIQUID, s[slot.enthalpy_J]!)).toBeCloseTo(5, 9);
    expect(s[LIQUID + slot.enthalpy_J]! + s[LOST + slot.enthalpy_J]!).toBeCloseTo(before, 9);
    expect(s[LOST + slot.enthalpy_J]).toBeCloseTo(enthalpy(s, LOST, 5), 9);
  });
});

describe('a liquid that is poured out', () => {
  test('is there whole, but for what clings and the cost, which goes along', () => {
    const s = new Float64Array(3 * BLOCK), TO = 2 * BLOCK;
    s.set(cold());
    s[TO + at.water] = 10; s[TO + slot.price_minor] = 5;
    pourOut(s, LIQUID, TO, LOST, 6);
    for (let i = 0; i < BLOCK; i++) if (i !== slot.price_minor) expect(s[TO + i]! + s[LOST + i]!).toBeCloseTo(s[i]! + (i === at.water ? 10 : 0), 9);
    expect([s[TO + slot.price_minor], s[LOST + slot.price_minor]]).toEqual([255, 0]);
    expect(s[LOST + at.sucrose]! / s[LIQUID + at.sucrose]!).toBeCloseTo(s[LOST + at.water]! / s[LIQUID + at.water]!, 12);
    expect(temperatureOf(s, LOST, s[LOST + slot.enthalpy_J]!)).toBeCloseTo(5, 9);
  });
  test('nothing clings to a dry tin, never more than nine tenths', () => {
    const dry = new Float64Array(3 * BLOCK), wet = new Float64Array(3 * BLOCK);
    for (const s of [dry, wet]) s.set(cold());
    pourOut(dry, LIQUID, 2 * BLOCK, LOST, 0);
    pourOut(wet, LIQUID, 2 * BLOCK, LOST, 1e6);
    expect([dry[LOST + at.water], wet[LOST + at.water]]).toEqual([0, 135]);
  });
});
