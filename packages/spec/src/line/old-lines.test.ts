import type { Action } from '@washline/engine';
import { describe, expect, test } from 'vitest';
import { parse } from '../document/parse.ts';

// Lines as Kappeler prints them (Modern American Drinks, New York 1895, public domain), or as close to them as the case needs.
const read = (line: string): { actions: readonly Action[]; codes: readonly string[] } => {
  const { sections, problems } = parse(`Old\nmeasures: us-1910\nBuild:\n${line}\n`);
  return { actions: sections[0]!.lines[0]!.actions, codes: problems.map((one) => one.code) };
};
const fills = (line: string) => read(line).actions.flatMap((one) => (one.kind === 'fill' ? [one] : []));

describe('a vessel that is partly full of ice', () => {
  test.each([
    ['Mixing-glass half-full fine ice', 0.5], ['A mixing-glass half-full fine ice', 0.5], ['Fill a mixing-glass half-full of fine ice', 0.5], ['fill glass half-full fine ice', 0.5], ['fill half-full fine ice', 0.5],
    ['A mixing-glass one-fourth full fine ice', 0.25], ['Fill a mixing-glass one-third full of fine ice', 1 / 3], ['Fill a thin fizz-glass three-fourths full of fine ice', 0.75], ['half full fine ice', 0.5], ['half full of fine ice', 0.5],
  ])('%s', (line, share) => {
    const { actions, codes } = read(line);
    expect(codes).toEqual([]);
    expect(actions).toHaveLength(1);
    expect(fills(line)[0]!.ice).toMatchObject({ kind: 'crushed', mass: { unit: 'glass' } });
    expect(fills(line)[0]!.ice!.mass!.low).toBeCloseTo(share, 3);
    expect(fills(line)[0]!.measure).toBeNull();
  });
  test('"Fine ice in mixing-glass" is ice in no written amount', () => {
    expect(fills('Fine ice in mixing-glass')[0]!.ice).toMatchObject({ kind: 'crushed' });
    expect(fills('Fine ice in mixing-glass')[0]!.ice!.mass).toBeUndefined();
  });
  test.each(['fine gin in mixing-glass', 'half full gin glass ice'])('"%s" is not', (line) => { expect(fills(line).filter((one) => one.ice !== undefined)).toEqual([]); });
});

describe('lumps of ice that are put in', () => {
  test.each([['add one lump of ice', 1], ['Add a lump of ice', 1], ['Place a lump of ice in a long thin punch-glass', 1], ['2 or 3 lumps of Crystal Ice', 2], ['Two lumps of ice in a small wine-glass', 2], ['Drop 1 piece of Ice into a Highball glass', 1]])('%s', (line, count) => {
    const { actions, codes } = read(line);
    expect(codes).toEqual([]);
    expect(actions.map((one) => one.kind)).toEqual(['fill']);
    expect(fills(line)[0]!.ice!.count).toBe(count);
  });
});

describe('what a glass holds is an action of its own', () => {
  test('behind sugar that is dissolved', () => {
    const { actions } = read('Dissolve a lump of cut-loaf sugar in a hot-drink glass half-full of boiling water');
    expect(actions.map((one) => one.kind)).toEqual(['step', 'fill']);
    const fill = actions[1]!;
    expect(fill.kind === 'fill' && fill.measure).toMatchObject({ amount: { low: 0.5, unit: 'glass' }, temperature: { celsius: 98 } });
  });
  test.each(['one jigger Tom gin in a mixing-glass half-full fine ice', 'half a jigger French vermouth, in a mixing-glass half-full fine ice'])('%s', (line) => {
    const { actions } = read(line);
    expect(actions.map((one) => one.kind)).toEqual(['measure', 'fill']);
    expect(fills(line)[0]!.ice).toMatchObject({ kind: 'crushed', mass: { low: 0.5 } });
  });
  test('but not of a step that works with it', () => { expect(read('Mix in a mixing-glass half-full fine ice').actions.map((one) => one.kind)).toEqual(['step']); });
});

describe('how warm it is stays with what fills up', () => {
  test.each([['fill with boiling water', 98], ['fill up with boiling water', 98], ['top with hot water', 88], ['fill with cold milk', 4], ['Fill a Whiskey glass 1/2 full Hot Water', 88]])('%s', (line, celsius) => {
    expect(fills(line)[0]!.measure!.temperature!.celsius).toBe(celsius);
  });
  test('what is written behind goes first', () => { expect(fills('top with hot water at 70 °C')[0]!.measure!.temperature!.celsius).toBe(70); });
  test('and nothing is made up', () => { expect(fills('top with water')[0]!.measure!.temperature).toBeUndefined(); });
});

describe('two measures joined by "and" are both read, the second with a problem', () => {
  test.each([
    ['add one jigger whiskey and one bottle of imported ginger ale', 'bourbon', 'ginger-ale'], ['add one jigger brandy and a cold bottle of imported ginger ale', 'brandy', 'ginger-ale'], ['1/2 oz gin and 1/2 oz lemon juice', 'gin', 'lemon-juice'],
  ])('%s', (line, first, second) => {
    const { actions, codes } = read(line);
    expect(codes).toEqual(['second-measure']);
    const ids = actions.map((one) => (one.kind === 'measure' && one.thing.link.kind === 'larder' ? one.thing.link.id : null));
    expect(ids).toHaveLength(2);
    expect(ids[1]).toBe(second);
    if (first !== 'bourbon') expect(ids[0]).toBe(first);
  });
  test('an amount in two units is one measure', () => {
    const { actions, codes } = read('add a pint and 1 gill of water');
    expect(codes).toEqual([]);
    expect(actions).toHaveLength(1);
    expect(actions[0]).toMatchObject({ kind: 'measure', amount: { unit: 'pint', plus: [{ unit: 'gill' }] } });
  });
  test.each(['1 oz rock and rye', '1 oz half and half', '15 ml honey and ginger syrup'])('a name that holds the word is one: %s', (line) => { expect(read(line).actions).toHaveLength(1); });
});

describe('where it is put stands before what is put', () => {
  test.each([['Put into a long glass the juice of half a lemon', 'lemon-juice'], ['Put into a long thin punch-glass one tablespoonful fine sugar', 'sugar-white'], ['Pour into a Punch glass the Juice of 1 Lime and a little Water', 'lime-juice']])('%s', (line, id) => {
    expect(read(line).actions[0]).toMatchObject({ kind: 'measure', thing: { link: { id } } });
  });
  test.each(['put in a mixing-glass', 'put into a Collins-glass'])('%s names no thing', (line) => { expect(read(line).actions.map((one) => one.kind)).toEqual(['step']); });
});

test.each(['Sip with straws', 'Drink while effervescent', 'Drink during effervescence'])('serving: %s', (line) => { expect(read(line)).toMatchObject({ actions: [{ kind: 'step', verb: 'serve' }], codes: [] }); });
test.each([['fizz up with a little siphon seltzer', 'soda-water'], ['fill with siphon seltzer', 'soda-water'], ['fill the glass with siphon carbonic or vichy', 'soda-water']])('sparkling: %s', (line, id) => { expect(fills(line)[0]!.measure!.thing.link).toMatchObject({ kind: 'larder', id }); });

test('a word that is no number leaves the amount open, in front of juice of a fruit as well', () => {
  for (const line of ['a touch of saft von bitterorangen', 'a touch of juice of oranges', 'a touch of lime juice', 'ein hauch g je Saft']) expect(read(line).actions[0]).toMatchObject({ kind: 'measure', amount: null });
});
