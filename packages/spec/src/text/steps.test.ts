import { describe, expect, it } from 'vitest';
import { parse } from '../document/parse.ts';
import { inverse, splice } from './splice.ts';
import { scaled, stepOf, stepped, turn } from './steps.ts';

/** Steps of jiggers, jugs and scales: common practice, no source. Marks of jiggers go by 2.5 ml and a quarter ounce. */
describe('one step of a hand', () => {
  it.each([
    ['ml', 60, 1, false, 62.5], ['ml', 60, -1, false, 57.5], ['ml', 60, 1, true, 60.5], ['ml', 22, 1, false, 22.5], ['ml', 22, -1, false, 20],
    ['ml', 100, -1, false, 97.5], ['ml', 97.5, 1, false, 100], ['ml', 100, 1, false, 110], ['ml', 0.5, -1, false, 0.5], ['ml', 7.5, -2, false, 4.5],
    ['oz', 2, 1, false, 2.25], ['oz', 0.75, 1, false, 1], ['oz', 0.75, -1, true, 0.625], ['oz', 0.25, -1, false, 0.25],
    ['cl', 6, 1, false, 6.25], ['g', 1.5, 1, false, 1.6], ['g', 0.75, 1, true, 0.76], ['g', 15, 1, false, 16], ['dash', 2, 1, false, 3], ['dash', 1, -1, false, 1],
    ['sheet', 1.5, 1, false, 2], [null, 1, 1, false, 1.5],
  ] as const)('%s %d by %d, fine %s: %d', (unit, value, steps, fine, to) => {
    expect(stepped(unit, value, steps, fine)).toBeCloseTo(to, 9);
  });

  it('comes back to its mark: up and down again, from every mark a jigger has', () => {
    for (const fine of [false, true]) for (let value = 5; value < 200; value = stepped('ml', value, 1, fine)) expect(stepped('ml', stepped('ml', value, 1, fine), -1, fine)).toBeCloseTo(value, 9);
  });

  it('is never nothing', () => { for (const unit of ['ml', 'oz', 'g', 'dash', 'barspoon', 'sheet', null]) for (const value of [0.001, 0.3, 7, 1e6]) expect(stepOf(unit, value, true)).toBeGreaterThan(0); });
});

const SPEC = 'Rum sour\r\n\r\nBuild:\r\n60 ml white rum 40 %\r\n3/4 oz lime juice\r\n1 1/2 oz (45 ml) pineapple juice\r\n2 dashes saline 20 %\r\nshake 12 s over 200 g cubes\r\ntop with 30 ml soda\r\n';

describe('a line turned in the text', () => {
  const document = parse(SPEC), at = (line: number, steps: number, fine = false): string => splice(SPEC, turn(document, ['build', line], steps, fine)).split('\r\n')[3 + line]!;
  it('writes numbers as they were written: ml, bar fractions, both ways of one amount, a top-up', () => {
    expect(at(0, 1)).toBe('62.5 ml white rum 40 %');
    expect(at(1, 1)).toBe('1 oz lime juice');
    expect(at(1, -1)).toBe('1/2 oz lime juice');
    expect(at(2, 1)).toBe('1 3/4 oz (52.5 ml) pineapple juice');
    expect(at(3, 1)).toBe('3 dashes saline 20 %');
    expect(at(5, 2)).toBe('top with 35 ml soda');
  });
  it('leaves every other byte alone, and its inverse takes it back', () => {
    const splices = turn(document, ['build', 0], 3, false), next = splice(SPEC, splices);
    expect(next.length - SPEC.length).toBe('67.5'.length - '60'.length);
    expect(splice(next, inverse(SPEC, splices))).toBe(SPEC);
  });
  it('whole ounces gain quarters, a German spec a comma', () => {
    const oz = 'Rum\n\nBuild:\n2 oz white rum\n', german = 'Rum\nsprache: deutsch\n\nBuild:\n60 ml weißer Rum\n';
    expect(splice(oz, turn(parse(oz), ['build', 0], 1, false))).toContain('2 1/4 oz white rum');
    expect(splice(german, turn(parse(german), ['build', 0], 1, false))).toContain('62,5 ml weißer Rum');
  });
  it('does nothing to a line without an amount, and nothing below its last step', () => {
    const spec = 'Rum\n\nBuild:\nwhite rum\n1 dash saline 20 %\n';
    expect(turn(parse(spec), ['build', 0], 1, false)).toEqual([]);
    expect(turn(parse(spec), ['build', 1], -1, false)).toEqual([]);
  });
});

describe('a build scaled', () => {
  const document = parse(SPEC), half = splice(SPEC, scaled(document, 1.5));
  it('turns every measure to its own fine step, the top-up with them, and leaves ice and times alone', () => {
    expect(half).toContain('90 ml white rum');
    expect(half).toContain('1 1/8 oz lime juice');
    expect(half).toContain('2 1/4 oz (67.5 ml) pineapple juice');
    expect(half).toContain('3 dashes saline');
    expect(half).toContain('top with 45 ml soda');
    expect(half).toContain('shake 12 s over 200 g cubes');
  });
  it('by one changes nothing; no measure is lost by the smallest', () => {
    expect(scaled(document, 1)).toEqual([]);
    const least = splice(SPEC, scaled(document, 0.001));
    for (const thing of ['white rum', 'lime juice', 'pineapple juice', 'saline', 'soda']) expect(parse(least).sections[0]!.lines.some((l) => l.text.includes(thing) && !/^0+ /.test(l.text))).toBe(true);
  });
});
