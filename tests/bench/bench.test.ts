// What a bench does to a reading: the manual's page on the bench. Precedence: line, bench, the spec's shelf, tables (the contract of the text).
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const SOUR = 'Sour\nglass: coupe\n\n60 ml white rum\n25 ml lime juice\n20 ml simple syrup 1:1 by weight\nshake 12 s\n\nShelf:\nwhite rum: 40 %, 24.00 per 700 ml\n';
const read = (text: string, bench?: string) => readText(text, { tables, ...(bench === undefined ? {} : { bench }) });
const strengthOf = (text: string, bench?: string) => read(text, bench).reading.figures['strength']!.value;
const taken = (text: string, bench: string, key: string) => read(text, bench).reading.taken!.find((t) => t.key === key);
const assumed = (text: string, bench?: string) => read(text, bench).reading.assumed.map((a) => a.key);
const width = (f: { low: number; high: number }) => f.high - f.low;
const RUM = 'Shelf:\nwhite rum: 50 %';

describe('which value is taken', () => {
  const neat = (line: string, shelf = '') => `A\n${line}\n${shelf}`;
  const SHELF = '\nShelf:\nwhite rum: 45 %';
  it.each([
    ['the line', neat('60 ml white rum 38 %', SHELF), RUM, 38, { from: 'line', over: [{ from: 'bench', value: 50 }, { from: 'spec', value: 45 }, { from: 'table', value: 40 }] }],
    ['the bench', neat('60 ml white rum', SHELF), RUM, 50, { from: 'bench', over: [{ from: 'spec', value: 45 }, { from: 'table', value: 40 }] }],
    ['the spec', neat('60 ml white rum', SHELF), 'Shelf:\ngin: 50 %', 45, { from: 'spec', over: [{ from: 'table', value: 40 }] }],
    ['the bench by what it is, under another name', neat('60 ml white rum', SHELF), 'Shelf:\nlight rum: 50 %', 50, { from: 'bench' }],
  ])('%s', (_who, text, bench, strength, said) => {
    expect(strengthOf(text, bench)).toBeCloseTo(strength, 6);
    expect(taken(text, bench, 'bottle/white rum/strength')).toMatchObject(said);
  });
  it('where neither had a say nothing is listed', () => { expect(read('A\n60 ml white rum 40 %').reading.taken).toEqual([]); });
  it('where they agree nothing was passed over', () => { expect(taken(neat('60 ml white rum 50 %'), RUM, 'bottle/white rum/strength')!.over).toEqual([{ from: 'table', value: 40 }]); });
  it('a bottle only the bench knows is known', () => {
    expect(read('A\n30 ml zorblax').reading.findings.map((f) => f.code)).toContain('ingredient-unknown');
    expect(read('A\n30 ml zorblax', 'Shelf:\nzorblax: 35 %').reading.findings.map((f) => f.code)).not.toContain('ingredient-unknown');
    expect(strengthOf('A\n30 ml zorblax', 'Shelf:\nzorblax: 35 %')).toBeCloseTo(35, 6);
  });
  it('a bottle of the bench without a strength leaves the spec’s', () => { expect(strengthOf(neat('60 ml white rum', SHELF), 'Shelf:\nwhite rum: 20.00 per 700 ml')).toBeCloseTo(45, 6); });
});

describe('what was assumed', () => {
  it('a value of the bench leaves what was assumed, and is listed with what it took the place of', () => {
    expect(assumed(SOUR)).toContain('ice/temperature/not said');
    expect(assumed(SOUR, 'ice: at -18 °C')).not.toContain('ice/temperature/not said');
    expect(taken(SOUR, 'ice: at -18 °C', 'ice/temperature/not said')).toMatchObject({ from: 'bench', value: -18, over: [{ from: 'table', value: -5 }] });
  });
  it('it narrows what hangs on it, and nothing that does not', () => {
    const [before, after] = [read(SOUR).reading.figures, read(SOUR, 'ice: 30 mm cubes at -5 °C').reading.figures];
    expect(width(after['dilution']!)).toBeLessThan(width(before['dilution']!));
    expect(after['dilution']!.value).toBeCloseTo(before['dilution']!.value, 9);
    expect(read(SOUR, 'freezer: -21 °C').reading.figures).toEqual(before);
  });
  it('colder ice dilutes less', () => { expect(read(SOUR, 'ice: at -18 °C').reading.figures['dilution']!.value).toBeLessThan(read(SOUR).reading.figures['dilution']!.value); });
  it('what the line writes goes before the bench', () => {
    const text = SOUR.replace('shake 12 s', 'shake 12 s over 150 g 30 mm cubes at -5 °C');
    expect(read(text, 'ice: 40 mm cubes at -18 °C').reading.figures).toEqual(read(text).reading.figures);
  });
  it('the maker’s own spoon', () => {
    const text = 'A\n60 ml white rum 40 %\n1 bar spoon simple syrup';
    const sugar = (bench: string) => read(text, bench).reading.figures['sugar']!;
    expect(sugar('bar spoon: 5 ml').value).toBeGreaterThan(1.5 * sugar('bar spoon: 2.5 ml').value);
    expect(width(sugar('bar spoon: 4 ml'))).toBeLessThan(width(read(text).reading.figures['sugar']!));
    expect(taken(text, 'bar spoon: 5 ml', 'unit/barspoon')).toMatchObject({ value: 5, over: [{ from: 'table', value: 4 }] });
  });
  it('what an ounce is, where the card does not say', () => {
    const ounces = (head: string, bench?: string) => read(`A\n${head}2 oz white rum 40 %`, bench).reading.figures['volume']!.value;
    // by definition: US 29.5735 mL, imperial 28.4131 mL
    expect(ounces('', 'measures: uk')).toBeCloseTo(2 * 28.4131, 2);
    expect(ounces('measures: us\n', 'measures: uk')).toBeCloseTo(2 * 29.5735, 2);
  });
  it('at a height water boils sooner', () => {
    const agar = 'A\nP (mix):\n2 g agar\n200 ml water\nboil 2 min\nBuild:\n30 ml p\n';
    expect(taken(agar, 'altitude: 1500 m', 'place/boiling point')!.value).toBeCloseTo(95, 0);
    expect(taken(agar, 'freezer: -18 °C', 'place/boiling point')).toBeUndefined();
  });
  it('a coarser scale weighs worse', () => {
    const text = 'A\n60 ml white rum 40 %\n10 g sugar\nstir 20 s over 200 g cubes';
    const sugar = (bench: string) => width(read(text, bench).reading.figures['sugar']!);
    expect(sugar('fine scale: none\nscale: reads 1 g')).toBeGreaterThan(sugar('fine scale: reads 0.01 g'));
  });
});

describe('jigger', () => {
  const coarse = (bench?: string) => read('A\nglass: coupe\n60 ml gin 40 %\n20 ml lime juice\n10 ml simple syrup 1:1 by weight', bench).reading.findings.some((f) => f.code === 'jigger-too-coarse');
  it('a pour between the lines of one’s own jigger is told; with lines there it is not, nor without a jigger', () => {
    expect([coarse('jigger: 15 / 30 ml'), coarse('jigger: 15 / 30 ml, steps of 5 ml'), coarse('jigger: none'), coarse()]).toEqual([true, false, false, false]);
  });
});

describe('customs', () => {
  it('standard drinks of the bench’s country come first; the numbers are the same', () => {
    const drinks = (bench?: string) => read(SOUR, bench).reading.standard_drinks;
    expect([Object.keys(drinks('country: AU'))[0], Object.keys(drinks('country: GB'))[0], Object.keys(drinks('country: DE'))]).toEqual(['AU', 'UK', Object.keys(drinks())]);
    expect(drinks('country: AU')).toEqual(drinks());
  });
  it('a problem of the bench has its file, line and column, and the spec is read', () => {
    const { problems, reading } = readText(SOUR, { tables, bench: 'freezer: -18 °C\nfrob: 3 ml', benchFile: 'my.bench', file: 'sour.drink' });
    expect(problems).toMatchObject([{ code: 'bench-word-unknown', where: { file: 'my.bench', line: 2, column: 1 } }]);
    expect([reading.partial, reading.drink]).toEqual([false, 'Sour']);
  });
});
