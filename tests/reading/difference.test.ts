import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { differences, type Ranged } from '@washline/engine';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const FIGURES = ['strength', 'volume', 'ethanol', 'sugar', 'acidity', 'ph', 'temperature', 'dilution', 'energy'].map((name) => ['drink', name] as const);
const ranged = (text: string): Ranged => readText(text, { tables, quick: true, before: null }).ranged!;
const held = (a: string, b: string) => differences(ranged(a), ranged(b), [['glass', 'washline_mm'], ...FIGURES]);
const demo = (name: string): string => readFileSync(new URL(`../../demo/${name}.drink`, import.meta.url), 'utf8');
const SOUR = 'Sour\nglass: coupe\n\nBuild:\n60 ml white rum 40 %\n30 ml lime juice\n15 ml simple syrup 1:1\nshake 12 s over cubes\nstrain\n';

describe('two drinks held against each other', () => {
  it.each(['daiquiri', 'clear-colada', 'gin-and-tonic', 'tea-sour'])('%s against itself: every difference is nothing, with no range', (name) => {
    const all = held(demo(name), demo(name));
    expect(all.length).toBeGreaterThan(6);
    for (const d of all) expect([d.value, d.low, d.high, d.differs]).toEqual([0, 0, 0, false]);
  });
  it('the other way round it is the same with its sign turned', () => {
    const one = held(SOUR, demo('daiquiri')), two = held(demo('daiquiri'), SOUR);
    for (const [i, d] of one.entries()) {
      expect(two[i]!.value).toBeCloseTo(-d.value, 9);
      expect(two[i]!.low).toBeCloseTo(-d.high, 6);
      expect(two[i]!.high).toBeCloseTo(-d.low, 6);
    }
  });
  it('one hand, one jigger, one bottle: with one measure changed the difference is surer than two drinks that share nothing would be', () => {
    const more = SOUR.replace('60 ml', '75 ml'), a = readText(SOUR, { tables, quick: true }).reading, b = readText(more, { tables, quick: true }).reading;
    for (const name of ['strength', 'volume', 'acidity'] as const) {
      const d = held(SOUR, more).find((one) => one.name === name)!, x = a.figures[name]!, y = b.figures[name]!;
      expect(d.value).toBeCloseTo(y.value - x.value, 9);
      // variances of independent variables add (any textbook of probability)
      const apart = Math.hypot((x.high - x.low) / 2, (y.high - y.low) / 2);
      expect((d.high - d.low) / 2).toBeLessThan(0.7 * apart);
      expect(d.differs).toBe(true);
    }
  });
  it('where nothing is shared variances add: two bottles of two kinds, poured by weight into air that nobody asks about', () => {
    const a = 'A\nglass: rocks\n\nBuild:\n100 g white rum 40 %\n', b = 'B\nglass: rocks\n\nBuild:\n60 g gin 47 %\n';
    const x = readText(a, { tables, quick: true }).reading.figures['ethanol']!, y = readText(b, { tables, quick: true }).reading.figures['ethanol']!;
    const d = held(a, b).find((one) => one.name === 'ethanol')!;
    const half = (d.high - d.low) / 2, apart = Math.hypot((x.high - x.low) / 2, (y.high - y.low) / 2);
    expect(d.value).toBeCloseTo(y.value - x.value, 9);
    // the same line of the same scale is one weighing for both, so that it may be a little less
    expect(half).toBeLessThanOrEqual(apart * 1.001);
    expect(half).toBeGreaterThan(apart * 0.5);
  });
  it('two labels of one name that say another strength are two bottles: their ranges add, where one bottle in both goes out', () => {
    const of = (pct: number): string => `Neat\nglass: rocks\n\nBuild:\n100 g white rum ${pct} %\n`, half = (text: string): number => { const f = readText(text, { tables, quick: true }).reading.figures['strength']!; return (f.high - f.low) / 2; };
    const d = held(of(40), of(37.5)).find((one) => one.name === 'strength')!, apart = Math.hypot(half(of(40)), half(of(37.5)));
    expect(d.value).toBeCloseTo(-2.5, 1);
    expect(half(of(40))).toBeGreaterThan(0.05);
    expect((d.high - d.low) / 2).toBeCloseTo(apart, 2);
  });
  it('says of what differs by less than is uncertain that it is alike', () => {
    const all = held(SOUR, SOUR.replace('40 %', '40.1 %'));
    expect(all.find((d) => d.name === 'acidity')!.differs).toBe(false);
    expect(all.find((d) => d.name === 'ph')!.differs).toBe(false);
  });
  it('leaves out what one of them does not know', () => {
    const all = held(SOUR, SOUR.replace('white rum 40 %', 'something nobody knows'));
    expect(all.some((d) => d.name === 'strength')).toBe(false);
  });
});
