import { describe, expect, test } from 'vitest';
import { at, BLOCK } from '../matter/constituents.ts';
import { densityFromStrength } from './strength.ts';
import { densityByTabarie, rivalDensity } from './tabarie.ts';
import { rivalShare } from './rival.ts';
import { densityOf, strengthOf, volume } from './volume.ts';

/** About a litre with this much sugar and ethanol in it. */
function liqueur(strength: number, sugar: number): Float64Array {
  const block = new Float64Array(BLOCK);
  block[at.ethanol] = (strength / 100) * densityFromStrength(100, 20);
  block[at.sucrose] = sugar;
  for (let i = 0; i < 15; i++) block[at.water]! += 1000 - volume(block, 0, 20);
  return block;
}

describe('how far the two published rules part', () => {
  // worked apart from this project with a straight sucrose line, kg/m³, additive less Tabarié, printed to 0.1: so to 0.06 and 4 %
  test.each([[30, 100, -0.2], [30, 200, -0.7], [30, 300, -1.5], [30, 400, -2.6], [40, 100, -1.1], [40, 200, -2.7], [40, 300, -4.8], [40, 400, -7.3], [45, 200, -3.9], [45, 300, -6.6]])(
    '%d vol, %d g/L sucrose: %d kg/m³', (strength, sugar, off) => {
      const block = liqueur(strength, sugar);
      expect(strengthOf(block, 0)).toBeCloseTo(strength, 2);
      expect(Math.abs(rivalDensity(block, 0) - off)).toBeLessThan(0.06 + 0.04 * Math.abs(off));
      expect(rivalShare(block, 0)).toBeCloseTo(rivalDensity(block, 0) / densityByTabarie(block, 0), 6);
    });
  test('a liquid with that volume has the rival density', () => {
    const block = liqueur(40, 300), mL = volume(block, 0, 20) * (1 + rivalShare(block, 0));
    expect((1000 * densityOf(block, 0, 20) * volume(block, 0, 20)) / mL).toBeCloseTo(densityByTabarie(block, 0), 3);
  });
  test('is nothing in wine, in spirit without sugar, in syrup, in an empty block', () => {
    for (const block of [liqueur(12, 60), liqueur(20, 300), liqueur(60, 0), liqueur(45, 20), liqueur(0, 600), new Float64Array(BLOCK)]) expect(rivalShare(block, 0)).toBe(0);
  });
  test('comes in without a step', () => {
    let last = 0;
    for (let strength = 19; strength < 30; strength += 0.05) {
      const share = rivalShare(liqueur(strength, 300), 0);
      expect(Math.abs(share - last)).toBeLessThan(3e-5);
      last = share;
    }
    for (let sugar = 15; sugar < 60; sugar += 0.25) {
      const one = rivalShare(liqueur(40, sugar), 0), two = rivalShare(liqueur(40, sugar + 0.25), 0);
      expect(Math.abs(one - two)).toBeLessThan(2.5e-5);
    }
  });
  test('does not depend on the amount', () => {
    const block = liqueur(35, 250), half = block.map((g) => g / 2);
    expect(rivalShare(half, 0)).toBeCloseTo(rivalShare(block, 0), 10);
  });
});
