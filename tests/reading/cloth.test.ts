import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { runs, spec } from './specs.ts';

const preps = (text: string) => readText(text, { tables, quick: true }).reading.preps;
const clothOf = (text: string, name: string) => preps(text)[name]!.cloth!;

const PUNCH = 'Check\n\nPunch (clarify with milk):\n250 g whole milk\n150 ml lemon juice\n300 ml aged rum 40 %\n250 ml black tea\nrest 2 h at 4 °C\nstrain through cheesecloth\n\nBuild:\n90 ml punch';
const WASH = 'Check\n\nWash (fat wash):\n300 ml white rum 40 %\n40 g virgin coconut oil, melted at 40 °C\nfreeze 12 h at -18 °C\nstrain through cheesecloth\n\nBuild:\n60 ml wash';

// Conservation of mass is physics, no source needed.
const off = (b: { in: number; kept: number; cloth: number; boiled_off: number; left_in: number }) => b.in - b.kept - b.cloth - b.boiled_off - b.left_in;

describe('what stays in the cloth', () => {
  it('and what is kept, boiled off or never strained off is what was put in, in random specs', () => {
    fc.assert(fc.property(spec, (text) => {
      for (const { cloth } of Object.values(preps(text))) {
        if (!cloth) continue;
        expect(Math.abs(off(cloth.balance_g))).toBeLessThan(1e-9 * Math.max(1, cloth.balance_g.in));
        expect(cloth.solids.value + cloth.liquid.value).toBeCloseTo(cloth.mass.value, 9);
      }
    }), { numRuns: runs(150) });
  });
  // Whole milk in 100 g: 3.27 g protein, 3.20 g fat, 4.67 g lactose (USDA FoodData Central 746782, from memory); four fifths of the protein are casein
  // (Walstra, Wouters, Geurts: Dairy Science and Technology, from memory). Within 12 %: milk is not of one make.
  it('of a milk wash: all its casein and fat, and most of its whey protein and lactose pass', () => {
    const cloth = clothOf(PUNCH, 'punch'), near = (value: number, printed: number) => expect(Math.abs(value / printed - 1)).toBeLessThan(0.12);
    near(cloth.casein!.value, 0.8 * 0.0327 * 250);
    near(cloth.fat!.value, 0.032 * 250);
    const yielded = cloth.balance_g.kept / (cloth.balance_g.kept + cloth.liquid.value);
    near(cloth.passed!.whey.value, 0.2 * 0.0327 * 250 * yielded);
    near(cloth.passed!.lactose.value, 0.0467 * 250 * yielded);
  });
  it('of a fat wash: the fat, and rum that it holds; nothing of milk', () => {
    const cloth = clothOf(WASH, 'wash');
    expect(cloth.fat!.value).toBeCloseTo(40, 0);
    expect(cloth.solids.value).toBeCloseTo(40, 0);
    // 93 to 98 % of the spirit is kept (common practice, no source): 285 g of rum in 300 ml
    expect(cloth.liquid.value).toBeGreaterThan(0.02 * 285);
    expect(cloth.liquid.value).toBeLessThan(0.07 * 285);
    expect(cloth.casein).toBeUndefined();
    expect(cloth.passed).toBeUndefined();
  });
  it('more milk leaves more curd, and a prep without a cloth has none', () => {
    expect(clothOf(PUNCH.replace('250 g whole', '350 g whole'), 'punch').mass.value).toBeGreaterThan(clothOf(PUNCH, 'punch').mass.value);
    expect(preps('Check\n\nSyrup (syrup):\n100 g water\n100 g sugar\n\nBuild:\n20 ml syrup')['syrup']!.cloth).toBeUndefined();
  });
  it('what boils off is not in the cloth', () => {
    const { balance_g: b } = clothOf('Check\n\nClear (clarify with agar):\n0.75 g agar in 75 ml water\nboil 2 min\n300 ml pineapple juice\nchill 1 h at 4 °C\nstrain through cheesecloth\n\nBuild:\n60 ml clear', 'clear');
    expect(b.boiled_off).toBeCloseTo(75 * 0.998 * 0.05, 1);            // a twentieth of the agar's water, as assumed
    expect(Math.abs(off(b))).toBeLessThan(1e-9 * b.in);
  });
});
