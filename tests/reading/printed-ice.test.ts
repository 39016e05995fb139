import { describe, expect, it } from 'vitest';
import { stirredDilutionByRule, shakenDilutionByRule } from '../../packages/engine/src/ice/by-rule.ts';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

/** A drink of 20 % vol and more before the ice, by how it meets it. */
const stage = (step: string, ...lines: string[]) => readText(['A', ...(lines.length > 0 ? lines : ['60 ml white rum 40 %', '22 ml lime juice', '22 ml simple syrup 1:1']), step, 'strain'].join('\n'), { tables, quick: true }).reading.stages[0]!.figures;
const celsius = (step: string, ...lines: string[]) => stage(step, ...lines)['temperature']!.value;
const dilution = (step: string, ...lines: string[]) => stage(step, ...lines)['dilution']!.value;
const MARTINI = ['60 ml gin 45 %', '15 ml dry vermouth 18 %'];

// Statements of Arnold, The science of shaking II, 2009 (ci_shake09), as far as they were read: a plateau by 12 to 15 s, over two minutes stirred, -6 °C from ice at 0 °C.
describe('what is printed of shaking and stirring', () => {
  it('shaking levels off: from 15 s to 30 s a drink loses less than a quarter of what it lost in the first 15 s', () => {
    const [start, first, second] = [20, celsius('shake 15 s over 200 g cubes at 0 °C'), celsius('shake 30 s over 200 g cubes at 0 °C')];
    expect(first - second).toBeLessThan((start - first) / 4);
  });
  it('ice at 0 °C chills a drink below 0 °C, to about -6 °C', () => {
    expect(celsius('shake 30 s over 250 g cubes at 0 °C')).toBeLessThan(-4);
    expect(celsius('shake 30 s over 250 g cubes at 0 °C')).toBeGreaterThan(-8);
  });
  it('a shaken sour ends near -5 to -7 °C, two kelvins to either side', () => {
    for (const ice of ['0 °C', '-5 °C', '-10 °C']) {
      const ends = celsius(`shake 15 s over 200 g cubes at ${ice}`);
      expect(ends).toBeGreaterThan(-9);
      expect(ends).toBeLessThan(-3);
    }
  });
  it('stirring takes minutes to reach what 15 s of shaking reach', () => {
    const shaken = celsius('shake 15 s over 200 g cubes at 0 °C', ...MARTINI);
    expect(celsius('stir 30 s over 200 g cubes at 0 °C', ...MARTINI)).toBeGreaterThan(shaken);
    expect(celsius('stir 60 s over 200 g cubes at 0 °C', ...MARTINI)).toBeGreaterThan(shaken);
    expect(Math.abs(celsius('stir 240 s over 200 g cubes at 0 °C', ...MARTINI) - shaken)).toBeLessThan(2);
  });
  it('small ice is faster than large', () => {
    for (const verb of ['shake 8 s', 'stir 15 s']) expect(celsius(`${verb} over 200 g crushed at 0 °C`)).toBeLessThan(celsius(`${verb} over 200 g cubes at 0 °C`));
  });
  it('the kind of ice hardly moves where shaking ends, but for the water that clings to it', () => {
    const ends = ['200 g crushed at 0 °C', '200 g cubes at 0 °C', '4 large cubes at 0 °C'].map((ice) => celsius(`shake 40 s over ${ice}`));
    expect(Math.max(...ends) - Math.min(...ends)).toBeLessThan(1.5);
    expect(dilution('shake 40 s over 200 g crushed at 0 °C')).toBeGreaterThan(dilution('shake 40 s over 200 g dry cubes at 0 °C'));
  });
});

// The two fitted equations are from memory (one book of 2014): a cross-check within a third, no measurement.
describe('dilution against remembered equations', () => {
  it('a stirred martini and a shaken sour take up what they say, within a third', () => {
    const stirred = dilution('stir 30 s over 200 g cubes at -1 °C', ...MARTINI) / 100, shaken = dilution('shake 12 s over 200 g cubes at -1 °C') / 100;
    expect(stirred / stirredDilutionByRule(0.396)).toBeGreaterThan(2 / 3);
    expect(stirred / stirredDilutionByRule(0.396)).toBeLessThan(4 / 3);
    expect(shaken / shakenDilutionByRule(0.231)).toBeGreaterThan(2 / 3);
    expect(shaken / shakenDilutionByRule(0.231)).toBeLessThan(4 / 3);
  });
});
