// What a bench says: lines as the manual's page on the bench has them. Widths are those of data/bench.json (common practice, no source).
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { atoms } from './atoms.ts';
import { parseBench } from './bench.ts';

const read = (...lines: string[]) => parseBench(['My bench', ...lines].join('\n'));
const codes = (...lines: string[]) => read(...lines).problems.map((p) => `${p.code} ${p.line}:${p.column}`);
const value = (key: string, ...lines: string[]) => read(...lines).bench.values.get(key);

describe('places', () => {
  it('a temperature stands for the row of its place, as narrow as a thermometer in it', () => {
    const own = value('place/freezer', 'freezer: -21 °C')!;
    expect(own).toMatchObject({ value: -21, unit: '°C', grade: 'own', source: 'bench' });
    expect(own.high! - own.low!).toBeCloseTo(2 * 1.96, 2);
  });
  it('± on the line goes before the row, and two ends are its ends', () => {
    expect(value('place/freezer', 'freezer: -21 °C ± 0.5 °C')).toMatchObject({ value: -21, low: -21.5, high: -20.5 });
    expect(value('place/room', 'room: 18 to 24 °C')).toMatchObject({ value: 21, low: 18, high: 24 });
  });
  // 0 °F is -17.78 °C by definition
  it('degrees Fahrenheit and a true minus are read', () => { expect(value('place/freezer', 'freezer: 0 °F')!.value).toBeCloseTo(-17.78, 2); expect(value('place/freezer', 'freezer: −18 °C')!.value).toBe(-18); });
  it('bottles, tins and glasses stand in the room, juice and milk in the fridge', () => {
    expect(['start/spirit', 'start/shaker tin', 'start/serving glass'].map((key) => value(key, 'room: 26 °C')?.value)).toEqual([26, 26, 26]);
    expect(['start/juice', 'start/prep from the fridge'].map((key) => value(key, 'fridge: 3 °C')?.value)).toEqual([3, 3]);
    expect(value('start/spirit', 'fridge: 3 °C')).toBeUndefined();
  });
  it('ice: size and temperature of cubes, or of the kind named', () => {
    expect([value('ice/size/shake', 'ice: 32 mm cubes at -10 °C')!.value, value('ice/temperature/not said', 'ice: 32 mm cubes at -10 °C')!.value]).toEqual([32, -10]);
    expect(value('ice/temperature/not said', 'ice: crushed at -3 °C')).toBeUndefined();
    expect(value('ice/temperature/crushed', 'ice: crushed at -3 °C')).toMatchObject({ value: -3 });
    expect(value('ice/temperature/not said', 'ice: cubes at -1 °C')!.high).toBe(0);
  });
  // ISO 2533: 845.6 hPa at 1500 m; water boils there at 95.0 °C (handbooks of steam, from memory)
  it('height above the sea: how the air presses and at what water boils', () => {
    expect(value('place/pressure', 'altitude: 1500 m')!.value).toBeCloseTo(845.6, 0);
    expect(value('place/boiling point', 'altitude: 1500 m')!.value).toBeCloseTo(95, 0);
    expect(value('place/boiling point', 'pressure: 1013 hPa')!.value).toBeCloseTo(100, 0);
  });
  it.each([['freezer: 18 °C', 'bench-value-unlikely 2:10'], ['fridge: 40 °C', 'bench-value-unlikely 2:9'], ['ice: 32 mm cubes at 10 °C', 'bench-value-unlikely 2:21'], ['altitude: 15000 m', 'bench-value-unlikely 2:11']])('%s cannot be meant', (line, problem) => { expect(codes(line)).toEqual([problem]); });
});

describe('tools', () => {
  it('a bar spoon, dash or drop of one’s own', () => {
    const { bench } = read('bar spoon: 4.2 ml', 'dash: 0.6 ml', 'drop: 0.04 ml');
    expect(['barspoon', 'dash', 'drop'].map((unit) => bench.units.get(unit)?.factor)).toEqual([4.2, 0.6, 0.04]);
    expect(bench.units.get('tsp')).toBeUndefined();
  });
  it('what a scale reads is how well it weighs, and on which a dose is weighed', () => {
    const { bench } = read('scale: reads 5 g', 'fine scale: none');
    expect(bench.tools).toMatchObject({ scale_g: 5, fineScale_g: null });
    expect(bench.spreads.get('tool/kitchen scale')!.a).toBeCloseTo(3, 6);
    expect([bench.values.get('tool/for/g/20')!.value, bench.values.get('tool/scale step')!.value]).toEqual(['tool/kitchen scale', 5]);
    expect(read('fine scale: reads 0.1 g').bench.values.get('tool/scale step')!.value).toBe(0.1);
    expect(read('scale: reads 1 g').bench.values.has('tool/scale step')).toBe(false);
  });
  it('a jigger: its sizes and the step of its marks; or none', () => {
    expect(read('jigger: 15 / 30 / 45 ml, steps of 5 ml').bench.tools.jigger).toEqual({ sizes_mL: [15, 30, 45], step_mL: 5 });
    expect(read('jigger: 30/60 ml').bench.tools.jigger).toEqual({ sizes_mL: [30, 60], step_mL: null });
    expect(read('jigger: none').bench.values.get('tool/for/ml/90')!.value).toBe('tool/free pour');
  });
  it('siphons: the first is meant where none is named, each with what it holds', () => {
    const { bench, problems } = read('siphon: 500 ml, holds 760 ml', 'siphon: 1 l, holds 1350 ml');
    expect(problems).toEqual([]);
    expect([bench.values.get('siphon/size')!.value, bench.values.get('siphon/gross volume/500')!.value, bench.values.get('siphon/gross volume/1000')!.value]).toEqual([500, 760, 1350]);
    expect(codes('siphon: 500 ml, holds 260 ml')).toEqual(['bench-line-unclear 2:1']);
  });
  it('cloths: which one is used and what each keeps', () => {
    expect([value('cloth/not said', 'cloth: bag holds 15 ml')!.value, value('cloth/bag hold', 'cloth: bag holds 15 ml')!.value]).toEqual(['bag', 15]);
    expect(value('cloth/not said', 'paper filter: holds 6 ml')).toBeUndefined();
    expect(value('cloth/paper hold', 'paper filter: holds 6 ml')!.value).toBe(6);
  });
  it('facts in the words of a spec’s head', () => {
    expect(read('a lime gives: 28 ml').bench.given).toMatchObject([{ key: 'fruit/yield/lime', value: 28 }]);
    expect(codes('a lime gives: plenty')).toEqual(['bench-line-unclear 2:1']);
  });
});

describe('bottles and money', () => {
  const bottle = (line: string, ...head: string[]) => read(...head, 'Shelf:', line).bench.shelf[0]!.shelf![0]!;
  it.each([
    ['white rum: 40 %, 24.00 per 700 ml', { strength: 40, price: { minor: 2400, per_mL: 700 } }], ['white rum: 40 %, 700 ml for 24', { price: { minor: 2400, per_mL: 700 } }],
    ['white rum: 24.5 EUR / l', { price: { minor: 2450, per_mL: 1000, currency: 'EUR' } }], ['sugar: £1.15 per kg', { price: { minor: 115, per_g: 1000, currency: 'GBP' } }],
    ['milk: 4.30 per gal', { price: { minor: 430, per_mL: 3785.411784 } }], ['gin: 42 %, 1 l', { strength: 42, size: { mL: 1000 } }], ['gin', { name: 'gin' }],
  ])('%s', (line, wanted) => { expect(bottle(line)).toMatchObject(wanted); });
  // ISO 4217: the yen has no smaller coin, the Kuwaiti dinar has a thousand
  it('prices are whole numbers of the smallest coin', () => {
    expect(bottle('gin: 2400 per 700 ml', 'currency: JPY').price).toMatchObject({ minor: 2400, currency: 'JPY' });
    expect(bottle('gin: 7.250 per 700 ml', 'currency: KWD').price).toMatchObject({ minor: 7250, currency: 'KWD' });
    expect(bottle('gin: $ 30 per 750 ml', 'currency: AUD').price).toMatchObject({ minor: 3000, currency: 'AUD' });
    expect(read('currency: JPY', 'Shelf:', 'gin: 24.50 per 700 ml')).toMatchObject({ problems: [{ code: 'number-unused', line: 4, column: 6 }] });
    expect(bottle('gin: 24.50 per 700 ml', 'currency: EUR').price?.minor).toBe(2450);
  });
  it('the currency holds for prices above it too; a price in another is said', () => {
    expect(read('Shelf:', 'gin: 24 per l', 'currency: USD').bench.shelf[0]!.shelf![0]!.price).toMatchObject({ currency: 'USD' });
    expect(codes('currency: EUR', 'Shelf:', 'gin: 24 GBP per l')).toEqual(['bench-other-money 4:1']);
    expect(codes('currency: EUR', 'Shelf:', 'gin: 24 EUR per l')).toEqual([]);
  });
});

describe('head', () => {
  it('currency, country, measures, units, language, zone', () => {
    expect(read('currency: kwd', 'country: uk', 'measures: us', 'units: oz', 'language: de', 'time zone: Europe/Berlin').bench).toMatchObject({ currency: 'KWD', country: 'GB', measures: 'us', shows: 'oz', language: 'de', zone: 'Europe/Berlin' });
  });
  it.each([['currency: XYZ'], ['country: Erewhon'], ['measures: cubits'], ['units: pints'], ['language: Klingon'], ['time zone: Mars/Olympus']])('%s is a problem at its value', (line) => {
    expect(codes(line)).toEqual([`bench-head-unclear 2:${line.indexOf(':') + 3}`]);
  });
});

describe('what is not understood', () => {
  it.each([
    ['frobnicator: 3 ml', 'bench-word-unknown 2:1'], ['bar spoon: big', 'bench-line-unclear 2:1'], ['bar spoon: 4.2 ml, 7 of them', 'number-unused 2:20'], ['Cellar:', 'bench-unclear 2:1'], ['words without a colon', 'bench-line-unclear 2:1'],
    ['bar spoon: 4.2 g', 'bench-line-unclear 2:1'], ['bar spoon: none', 'bench-line-unclear 2:1'], ['a\u0000b: 3', 'control-character 2:2'],
  ])('%s', (line, problem) => { expect(codes(line, '', 'Places:', 'freezer: -18 °C')[0]).toBe(problem); expect(read(line, 'Places:', 'freezer: -18 °C').bench.values.get('place/freezer')!.value).toBe(-18); });
  it('the same said twice: the first counts', () => {
    expect(codes('fridge: 3 °C', 'fridge: 6 °C')).toEqual(['key-twice 3:1']);
    expect(value('place/fridge', 'fridge: 3 °C', 'fridge: 6 °C')!.value).toBe(3);
  });
  it('remarks and notes are neither lost nor read', () => { expect(codes('# the old one', 'fridge: 3 °C # top shelf 5', 'note: buy ice')).toEqual([]); });
  it('an empty one, a huge one', () => { expect(parseBench('')).toMatchObject({ problems: [] }); expect(parseBench('x'.repeat(300_000)).problems).toMatchObject([{ code: 'text-too-large' }]); });
});

test('numbers of a line: units, lists, ranges, widths', () => {
  const plain = (text: string) => atoms(text).map((a) => [a.value, a.of, a.off]);
  expect(plain('15 / 30 / 45 ml')).toEqual([[15, 'mL', false], [30, 'mL', false], [45, 'mL', false]]);
  expect(plain('4,2 cl ± 1 ml')).toEqual([[42, 'mL', false], [1, 'mL', true]]);
  expect(atoms('18 bis 24 °C')).toMatchObject([{ low: 18, high: 24, value: 21 }]);
  expect(plain('3 lemons')).toEqual([[3, null, false]]);
});
// property: whatever the text, an answer with places inside it
test('never throws, and every problem lies in the text', () => {
  const word = fc.constantFrom('Shelf:', 'Tools:', 'freezer', 'currency:', ':', ' ', '\n', '-18', '°C', '±', '15 / 30 ml', '24.00 per 700 ml', 'none', 'ice: ', 'Ä', '\ud800', '#', 'rum: ', '%');
  fc.assert(fc.property(fc.array(word, { maxLength: 40 }).map((parts) => parts.join('')), (text) => {
    const { problems, bench } = parseBench(text);
    for (const p of problems) { expect(p.line).toBeLessThanOrEqual(text.split('\n').length); expect(p.column).toBeGreaterThan(0); expect(p.span.to).toBeLessThanOrEqual(text.length); }
    for (const row of bench.values.values()) if (typeof row.value === 'number') { expect(row.low!).toBeLessThanOrEqual(row.value); expect(row.high!).toBeGreaterThanOrEqual(row.value); }
  }));
});
