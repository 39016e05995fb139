import type { Action, Fill, Garnish, Line, Measure, Step } from '@washline/engine';
import { describe, expect, test } from 'vitest';
import { parse } from '../document/parse.ts';

// Definitions of the text format: what a line says is what its numbers and units mean.
const spec = (...rows: string[]) => parse(['A drink', ...rows].join('\n'));
const line = (text: string): Line => { const one = spec('Build:', text).sections[0]?.lines[0]; if (one === undefined) throw new Error(`no line: ${text}`); return one; };
const first = <T extends Action>(text: string, kind: T['kind']): T => { const one = line(text).actions[0]; if (one?.kind !== kind) throw new Error(`${text}: ${one?.kind ?? 'nothing'}`); return one as T; };
const step = (text: string) => first<Step>(text, 'step');
const fill = (text: string) => first<Fill>(text, 'fill');
const measure = (text: string) => first<Measure>(text, 'measure');

describe('words for how much', () => {
  test.each(['ein bisschen big cube', 'einige ice cubes', 'some rum'])('%s has no number', (text) => { expect(measure(text).amount).toBeNull(); });
  test.each([['a few cubes', 2, 5], ['several big cubes', 3, 6], ['a few mint leaves', 2, 5]])('%s', (text, low, high) => { expect(measure(text).amount).toMatchObject({ low, high }); });
});

describe('a range written backwards', () => {
  test.each([['between 30 and 20 ml rum', 20, 30], ['between 20 and 30 ml rum', 20, 30], ['zwischen 30 und 20 ml rum', 20, 30], ['between 1,000.5 and 20 ml verjus', 20, 1000.5]])('%s', (text, low, high) => { expect(measure(text).amount).toMatchObject({ low, high, unit: 'ml' }); });
});

describe('packs with their size', () => {
  test.each(['2 cans of 400 ml coconut milk', '2 400 ml cans coconut milk', '2 (400 ml) cans of coconut milk'])('%s', (text) => {
    const { amount, thing } = measure(text);
    expect(amount).toMatchObject({ low: 2, unit: 'can', twin: { low: 400, unit: 'ml', each: true } });
    expect(thing.link).toMatchObject({ kind: 'larder', id: 'coconut-milk' });
  });
  test.each(['400 ml can coconut milk', '400 ml tin of coconut milk'])('%s is what is in it', (text) => { expect(measure(text)).toMatchObject({ amount: { low: 400, unit: 'ml' }, thing: { link: { kind: 'larder', id: 'coconut-milk' } } }); });
});

describe('ice by its shape', () => {
  test.each([['strain over an ice spear', 'spear', undefined], ['strain over a clear ice spear', 'spear', true], ['strain over a clear ice sphere', 'sphere', true], ['strain over ice', 'cubes', undefined], ['strain over ice cubes', 'cubes', undefined]] as const)('%s', (text, kind, clear) => {
    expect(step(text).ice).toMatchObject({ kind, ...(clear === undefined ? {} : { clear }) });
  });
});

describe('the size of ice', () => {
  test.each([['strain over 32 mm cubes', 32], ['strain over cubes 1 inch', 25.4], ['strain over a 5 cm ice sphere', 50]] as const)('%s', (text, size) => { expect(step(text).ice?.size_mm).toBeCloseTo(size, 9); });
  test.each(['strain over 0 mm cubes', 'strain over cubes 0 inch', 'strain over 0.2 mm ice'])('%s: under 1 mm is no piece', (text) => { expect(step(text).ice).not.toHaveProperty('size_mm'); });
});

describe('so much per so much', () => {
  test.each([['agar, 2 g per 0.5 l', 4], ['agar, 2 g per 500 ml', 4]])('%s', (text, value) => { expect(measure(text).share).toMatchObject({ value, basis: 'g per L' }); });
  test.each(['agar, 2 g per 0 ml', 'agar, 4.6 g per 0 kg'])('%s is no share: nothing is divided by nothing', (text) => { expect(measure(text)).not.toHaveProperty('share'); });
});

describe('times', () => {
  test.each([
    ['shake 12 s', 12, 12], ['stir 1 min', 60, 60], ['stir 90 sec', 90, 90], ['stir 1 min 30 s', 90, 90], ['chill 1 h 30 min', 5400, 5400], ['chill 1 hour and 30 minutes', 5400, 5400], ['chill 2 to 3 minutes', 120, 180],
    ['chill 2-3 h', 7200, 10800], ['chill 30 s to 1 min', 30, 60], ['chill 30 min - 2 h', 1800, 7200], ['chill 30 min – 2 h', 1800, 7200], ['chill 1 day', 86400, 86400], ['chill overnight', 28800, 50400], ['rest 5 min 2 h', 300, 300],
    ['chill 1 Stunde und 30 Minuten', 5400, 5400],
  ])('%s', (text, low, high) => { expect(step(text).seconds).toMatchObject({ low, high }); });
  test('only "overnight" is a time in words', () => { expect(step('chill overnight').seconds).toHaveProperty('word', 'overnight'); expect(step('chill 8 h').seconds).not.toHaveProperty('word'); });
  test('the first time of a step is its time', () => { expect(step('stir 20 s, then rest 5 min').seconds).toMatchObject({ low: 20, high: 20 }); });
});

describe('facts of a step', () => {
  test.each([['heat to 85 °C', 85], ['heat to 185 °F', 85], ['chill at -18 °C', -18], ['warm to 50 °C, then 60 °C', 50]])('%s', (text, celsius) => { expect(step(text).temperature?.celsius).toBeCloseTo(celsius, 6); });
  test('spans are where the words stand', () => {
    const text = 'heat 5 min at 85 °C', one = step(text), whole = `A drink\nBuild:\n${text}`;
    expect(whole.slice(one.seconds!.span.from, one.seconds!.span.to)).toBe('5 min');
    expect(whole.slice(one.temperature!.span.from, one.temperature!.span.to)).toBe('85 °C');
  });
  test('ice below it has its own kind, mass and temperature', () => {
    expect(step('shake 12 s with 150 g cubes at -5 °C')).toMatchObject({ seconds: { low: 12 }, ice: { kind: 'cubes', mass: { low: 150, unit: 'g' }, temperature: { celsius: -5 } } });
    expect(step('strain over 1 clear cube 50 mm').ice).toMatchObject({ kind: 'large cube', count: 1, size_mm: 50, clear: true });
  });
});

describe('ice by its words', () => {
  test.each([
    ['over crushed ice', 'crushed'], ['over cracked ice', 'cracked'], ['over shaved ice', 'shaved'], ['over pebble ice', 'pebble'], ['over ice', 'cubes'], ['over ice cubes', 'cubes'], ['over 3 ice cubes', 'cubes'],
    ['over a large cube', 'large cube'], ['over an ice sphere', 'sphere'], ['over a clear spear', 'spear'], ['over a block of ice', 'block'], ['over fresh ice', 'cubes'], ['over lump ice', 'cracked'],
  ])('strain %s', (text, kind) => { expect(step(`strain ${text}`).ice?.kind).toBe(kind); });
  test.each([['over a 2 inch cube', 50.8], ['over a 5 cm cube', 50], ['over 1 cube 48 mm', 48]])('strain %s', (text, mm) => { expect(step(`strain ${text}`).ice?.size_mm).toBeCloseTo(mm, 6); });
});

describe('ways to fill', () => {
  test.each([['top with soda water', 'top'], ['fill with soda water', 'fill'], ['lengthen with soda water', 'lengthen'], ['crown with crushed ice', 'crown'], ['float 10 ml dark rum', 'float'], ['layer 10 ml dark rum', 'float'], ['top with 90 ml soda water', 'top']])('%s', (text, verb) => {
    expect(fill(text).verb).toBe(verb);
  });
  test('with so much of something, or with as much as there is room', () => {
    expect(fill('top with 90 ml soda water').measure).toMatchObject({ amount: { low: 90, unit: 'ml' } });
    expect(fill('float 10 ml dark rum').measure).toMatchObject({ amount: { low: 10, unit: 'ml' }, thing: { link: { kind: 'larder' } } });
    expect(fill('top with soda water').measure?.amount).toBeNull();
    expect(fill('fill with ice')).toMatchObject({ measure: null, ice: { kind: 'cubes' } });
    expect(fill('fill the glass with crushed ice')).toMatchObject({ measure: null, ice: { kind: 'crushed' } });
    expect(fill('fill with 200 g ice')).toMatchObject({ measure: null, ice: { mass: { low: 200, unit: 'g' } } });
  });
  test.each([['fill 3/4 full of shaved ice', 0.75], ['fill 1/2 full of shaved ice', 0.5], ['fill half full with shaved ice', 0.5]])('%s', (text, share) => {
    expect(fill(text).ice).toMatchObject({ kind: 'shaved', mass: { unit: 'glass' } });
    expect(fill(text).ice!.mass!.low).toBeCloseTo(share, 6);
  });
});

describe('what stands between a way to fill and the thing', () => {
  test.each(['fill the tumbler with soda water', 'fill the tumbler to the top with soda water', 'fill the tumbler to the brim with soda water', 'fill a tall glass to top with soda water', 'top slowly up with the soda water'])('%s', (text) => {
    expect(fill(text).measure).toMatchObject({ amount: null, thing: { words: 'soda water', link: { kind: 'larder' } } });
  });
  test.each([['top with a splash of soda water'], ['top with a splash soda water'], ['top with a dash of soda water']])('%s', (text) => {
    expect(fill(text).measure).toMatchObject({ amount: { low: 1, unit: text.includes('dash') ? 'dash' : 'splash' }, thing: { words: 'soda water' } });
  });
});

describe('pressure, and ice beside the drink', () => {
  test('is against the air unless "abs" stands behind it', () => {
    expect(step('carbonate at 3 bar').pressure_kPa).toMatchObject({ value: 300, absolute: false });
    expect(step('carbonate at 3 bar abs for 2 min')).toMatchObject({ pressure_kPa: { value: 300, absolute: true }, seconds: { low: 120 } });
  });
  test('ice that is served on the side is not in the glass', () => {
    for (const text of ['serve with ice on the side', 'serve with ice on the side.']) expect(step(text).ice).toBeUndefined();
    expect(step('serve over ice').ice).toMatchObject({ kind: 'cubes' });
  });
});

describe('amounts', () => {
  test('a few are two to five, several three to six (common practice, no source)', () => {
    expect(measure('a few drops saline').amount).toMatchObject({ low: 2, high: 5, unit: 'drop' });
    expect(measure('several dashes orange bitters').amount).toMatchObject({ low: 3, high: 6, unit: 'dash' });
  });
  test.each([['2 400 ml cans coconut milk', 2, 'can', 400], ['2 x 400 ml cans coconut milk', 2, 'can', 400], ['3 (200-ml) bottles tonic water', 3, 'bottle', 200], ['2 1 l cartons of milk', 2, 'carton', 1], ['1 14-oz can coconut milk', 1, 'can', 14], ['2 70 g packets salt', 2, 'packet', 70], ['1 250 g block butter', 1, 'block', 250], ['2 500 g bags sugar', 2, 'bag', 500]])('%s', (text, count, unit, size) => {
    expect(measure(text).amount).toMatchObject({ low: count, high: count, unit, twin: { low: size, high: size, each: true } });
  });
  test('"2 x 30 ml" is their product', () => { expect(measure('2 x 30 ml white rum').amount).toMatchObject({ low: 60, high: 60, unit: 'ml' }); });
});

describe('units whose words name what they hold', () => {
  test.each([['1 stick of butter', 'stick-butter', 'butter'], ['1 stick butter', 'stick-butter', 'butter'], ['1 bottle of wine', 'bottle-wine', 'wine'], ['one wine bottle', 'bottle-wine', 'wine'], ['1 sugar cube', 'cube', 'sugar'], ['2 cubes of sugar', 'cube', 'sugar'], ['2 sticks cinnamon', 'stick', 'cinnamon'], ['1 cinnamon stick', 'piece', 'cinnamon stick'], ['a leaf of gelatin', 'sheet', 'gelatin']])('%s', (text, unit, words) => {
    expect(measure(text)).toMatchObject({ amount: { unit }, thing: { words, link: { kind: 'larder' } } });
  });
});

describe('what is put in', () => {
  test.each([
    ['put into the glass 1 sugar cube', 'measure', { thing: { words: 'sugar' }, amount: { low: 1, unit: 'cube' } }], ['break an egg into the glass', 'measure', { thing: { words: 'egg' }, amount: { low: 1 } }],
    ['put a cherry in the glass', 'garnish', { thing: { words: 'cherry' }, amount: { low: 1, unit: 'piece' } }], ['drop two olives in', 'garnish', { amount: { low: 2, unit: 'piece' } }], ['add the juice of half a lemon', 'measure', { thing: { words: 'lemon juice' }, amount: { low: 0.5 } }],
    ['add the white of an egg', 'measure', { thing: { words: 'egg white' } }], ['put in 2 dashes orange bitters', 'measure', { amount: { low: 2, unit: 'dash' } }], ['add butter', 'measure', { amount: null, thing: { words: 'butter' } }],
    ['add ice', 'fill', { measure: null, ice: { kind: 'cubes' } }], ['add enough soda water to fill the glass', 'fill', { measure: { amount: null, thing: { words: 'soda water' } } }], ['add some soda water to fill the glass', 'fill', { measure: { amount: null, thing: { words: 'soda water' } } }],
    ['pour on ice', 'step', { verb: 'pour', ice: { kind: 'cubes' } }], ['pour in a glass', 'step', { verb: 'pour' }],
  ] as const)('%s', (text, kind, what) => { expect(line(text).actions[0]).toMatchObject({ kind, ...what }); });
  test('a thing that is dropped in is laid in or on', () => {
    for (const [text, unit] of [['drop in 1 olive', 'piece'], ['add 1 cherry', 'piece'], ['add 2 olives', 'piece']] as const) expect(first<Garnish>(text, 'garnish').amount).toMatchObject({ unit });
    expect(measure('add 30 ml lime juice')).toMatchObject({ amount: { low: 30, unit: 'ml' }, thing: { link: { kind: 'larder' } } });
    expect(measure('pour into the glass 60 ml white rum')).toMatchObject({ amount: { low: 60, unit: 'ml' } });
  });
  test('pour over ice is a step', () => { expect(step('pour over ice').verb).toBe('pour'); });
});

describe('shares of a line named by its last words', () => {
  const share = (...rows: string[]) => { const one = spec('Gel (gel):', ...rows).sections[0]!.lines.at(-1)!.actions[0]; if (one?.kind !== 'measure' || one.share?.of === undefined) throw new Error('no share'); return one.share.of[0]!.link; };
  test('is linked to what that line is about, where only one fits', () => {
    expect(share('200 ml pineapple juice', 'agar, 2 g per kg of juice')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' });
    expect(share('200 ml pineapple juice', '100 ml water', 'agar, 2 g per kg of pineapple juice')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' });
  });
  test('is not where two do', () => { expect(share('200 ml pineapple juice', '100 ml lime juice', 'agar, 2 g per kg of juice')).not.toMatchObject({ kind: 'larder', id: 'pineapple-juice' }); });
  test('a plural or a hyphen is the same name', () => {
    expect(share('200 g raspberries', '100 ml water', 'agar, 2 g per kg of raspberry')).toMatchObject({ kind: 'larder' });
    expect(share('200 ml pineapple juice', '100 ml water', 'agar, 2 g per kg of pineapple-juice')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' });
  });
  test('a prep by its name stays that prep', () => {
    const one = spec('Cloud juice (mix):', '200 ml pineapple juice', 'Gel (gel):', '100 ml lime juice', 'agar, 2 g per kg of cloud juice').sections[1]!.lines[1]!.actions[0] as Measure;
    expect(one.share?.of?.[0]?.link).toEqual({ kind: 'prep', prep: 'cloud juice' });
  });
  test('two lines of one thing are one', () => { expect(share('200 ml pineapple juice', '100 ml pineapple juice', 'agar, 2 g per kg of juice')).toMatchObject({ kind: 'larder', id: 'pineapple-juice' }); });
});
