import type { Action, Fill, Measure, Section, Step } from '@washline/engine';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from './parse.ts';
import { print } from './print.ts';

const text = readFileSync(new URL('./clear-colada.drink', import.meta.url), 'utf8');
const document = parse(text);
const section = (kind: string, key: string, variant: string | null = null): Section => {
  const found = document.sections.find((one) => one.kind === kind && one.key === key && one.variant === variant);
  if (found === undefined) throw new Error(`no section ${key}`);
  return found;
};
const at = (key: string, line: number, variant: string | null = null): Action => {
  const action = section(key === 'build' ? 'build' : 'prep', key, variant).lines[line]?.actions[0];
  if (action === undefined) throw new Error(`no action ${key} ${line}`);
  return action;
};
const measure = (key: string, line: number, variant: string | null = null): Measure => at(key, line, variant) as Measure;
const step = (key: string, line: number, variant: string | null = null): Step => at(key, line, variant) as Step;
const written = (span: { from: number; to: number }): string => text.slice(span.from, span.to);

test('is read whole, with no problem, and printed back as it stood', () => {
  expect(document.problems).toEqual([]);
  expect(document.cut).toBe(false);
  expect(print(document)).toBe(text);
});
test('has its head', () => {
  expect(document.name).toBe('Clear colada');
  expect(document.head.about?.value).toBe('Clear and cold, a pineapple cloud on top.');
  expect(document.head.source?.value).toBe('own, after the colada of the 1950s');
  expect(document.glass).toEqual({ key: 'double-rocks' });
  expect(document.serves).toBe(1);
  expect(document.variants).toEqual(['vegan']);
});
test('has its sections with methods', () => {
  expect(document.sections.map((one) => [one.kind, one.key, one.variant, one.method, one.lines.length])).toEqual([
    ['prep', 'coconut rum', null, 'fat wash', 7], ['prep', 'clear pineapple', null, 'clarify with agar', 6], ['prep', 'pineapple cloud', null, 'siphon foam', 8],
    ['build', 'build', null, 'mix', 8], ['prep', 'pineapple cloud', 'vegan', 'siphon foam', 9], ['shelf', 'shelf', null, 'mix', 1],
  ]);
});
describe('coconut rum', () => {
  test('white rum is the bottle on the shelf, its strength on the line', () => {
    const one = measure('coconut rum', 0);
    expect(one.amount).toMatchObject({ low: 300, high: 300, unit: 'ml' });
    expect(one.thing.link).toEqual({ kind: 'shelf', shelf: 'white rum', larder: 'rum-white' });
    expect(one.strength?.value).toBe(40);
    expect(written(one.strength?.span ?? { from: 0, to: 0 })).toBe('40 %');
    expect(written(one.amount?.number ?? { from: 0, to: 0 })).toBe('300');
    expect(written(one.amount?.unitSpan ?? { from: 0, to: 0 })).toBe('ml');
  });
  test('virgin coconut oil goes in melted at 40 °C', () => {
    const one = measure('coconut rum', 1);
    expect(one.thing.link).toMatchObject({ kind: 'larder', id: 'coconut-oil-virgin', assumed: false });
    expect(one.amount).toMatchObject({ low: 40, unit: 'g' });
    expect(one.temperature?.celsius).toBe(40);
    expect(one.treatments).toMatchObject([{ key: 'melted', celsius: 40 }]);
  });
  test('steps have their times, temperatures and cloths', () => {
    expect(step('coconut rum', 2)).toMatchObject({ verb: 'shake', seconds: { low: 30, high: 30 }, flags: [] });
    expect(step('coconut rum', 2).ice).toBeUndefined();
    expect(step('coconut rum', 3)).toMatchObject({ verb: 'rest', seconds: { low: 14400 }, temperature: { celsius: 30 } });
    expect(step('coconut rum', 4)).toMatchObject({ verb: 'freeze', seconds: { low: 43200 }, temperature: { celsius: -18 } });
    expect(step('coconut rum', 5)).toMatchObject({ verb: 'strain', through: { key: 'cheesecloth', times: 1 } });
    expect(step('coconut rum', 6)).toMatchObject({ verb: 'strain', through: { key: 'paper-filter', times: 1 }, temperature: { celsius: -18 } });
  });
});
describe('clear pineapple', () => {
  test('the agar has its own water', () => {
    const one = measure('clear pineapple', 0);
    expect(one.amount).toMatchObject({ low: 0.75, unit: 'g' });
    expect(one.thing.link).toMatchObject({ id: 'agar' });
    expect(one.carrier).toMatchObject({ amount: { low: 75, unit: 'ml' }, thing: { link: { id: 'water' } } });
  });
  test('the juice goes in at 40 °C, strained', () => {
    const one = measure('clear pineapple', 2);
    expect(one).toMatchObject({ amount: { low: 300 }, thing: { link: { id: 'pineapple-juice' } }, temperature: { celsius: 40 }, treatments: [{ key: 'strained' }] });
  });
  test('steps', () => {
    expect(step('clear pineapple', 1)).toMatchObject({ verb: 'boil', seconds: { low: 120 } });
    expect(step('clear pineapple', 3)).toMatchObject({ verb: 'chill', seconds: { low: 3600 }, temperature: { celsius: 4 } });
    expect(step('clear pineapple', 4).verb).toBe('break-the-gel');
  });
});
describe('pineapple cloud', () => {
  test('gold sheets, soaked ten minutes', () => {
    const one = measure('pineapple cloud', 0);
    expect(one.amount).toMatchObject({ low: 1.5, unit: 'sheet' });
    expect(one.thing.link).toMatchObject({ id: 'gelatin-sheet-gold', assumed: false });
    expect(one.treatments).toMatchObject([{ key: 'soaked', seconds: 600 }]);
    expect(one.carrier).toBeUndefined();
  });
  test('juice held five minutes at 85 °C', () => {
    expect(measure('pineapple cloud', 1)).toMatchObject({ amount: { low: 230 }, held: { seconds: 300, celsius: 85 } });
    expect(written(measure('pineapple cloud', 1).held?.span ?? { from: 0, to: 0 })).toBe('held 5 min at 85 °C');
  });
  test('the rum is the prep, the syrup one to one by weight', () => {
    expect(measure('pineapple cloud', 2).thing.link).toEqual({ kind: 'prep', prep: 'coconut rum' });
    expect(measure('pineapple cloud', 3)).toMatchObject({ thing: { link: { id: 'simple-syrup-1-1' } }, ratio: { a: 1, b: 1, by: 'weight', byWritten: false } });
  });
  test('two chargers in a half-litre siphon', () => {
    expect(step('pineapple cloud', 5)).toMatchObject({ verb: 'cool', temperature: { celsius: 20 } });
    expect(step('pineapple cloud', 6)).toMatchObject({ verb: 'charge', gas: { kind: 'N2O', chargers: 2 }, vessel_mL: { value: 500 } });
    expect(step('pineapple cloud', 6).measure).toBeUndefined();
  });
  test('the vegan one has foaming methylcellulose dispersed at 85 °C', () => {
    const one = measure('pineapple cloud', 3, 'vegan');
    expect(one).toMatchObject({ amount: { low: 3, unit: 'g' }, thing: { link: { id: 'methylcellulose-foaming' } }, carrier: { amount: { low: 40, unit: 'ml' }, thing: { link: { id: 'water' } }, temperature: { celsius: 85 } } });
    expect(measure('pineapple cloud', 4, 'vegan')).toMatchObject({ amount: { low: 0.5 }, thing: { link: { id: 'xanthan-gum' } } });
  });
});
describe('build', () => {
  test('measures', () => {
    expect(measure('build', 0).thing.link).toEqual({ kind: 'prep', prep: 'coconut rum' });
    expect(measure('build', 1).thing.link).toEqual({ kind: 'prep', prep: 'clear pineapple' });
    expect(measure('build', 2)).toMatchObject({ amount: { low: 10 }, thing: { link: { id: 'lime-acid-6' } }, concentration: { value: 6 } });
    expect(measure('build', 2).strength).toBeUndefined();
  });
  test('ice, size and temperature', () => {
    expect(step('build', 4)).toMatchObject({ verb: 'stir', seconds: { low: 25 }, ice: { kind: 'cubes', mass: { low: 200, unit: 'g' }, temperature: { celsius: -5 } } });
    expect(step('build', 4).temperature).toBeUndefined();
    expect(step('build', 5)).toMatchObject({ verb: 'strain', ice: { kind: 'large cube', count: 1, size_mm: 50, clear: true } });
  });
  test('the cloud on top by mass, the leaf', () => {
    const fill = at('build', 6) as Fill;
    expect(fill).toMatchObject({ kind: 'fill', verb: 'top', measure: { amount: { low: 15, unit: 'g' }, thing: { link: { kind: 'prep', prep: 'pineapple cloud' } } } });
    expect(at('build', 7)).toMatchObject({ kind: 'garnish', amount: null, thing: { words: 'pineapple leaf' } });
  });
});
test('the shelf has strength and price in minor units', () => {
  expect(section('shelf', 'shelf').shelf).toMatchObject([{ name: 'white rum', larder: 'rum-white', strength: 40, price: { minor: 2400, per_mL: 700 } }]);
});
test('paths count lines from 0 and every span lies in its line', () => {
  for (const one of document.sections) one.lines.forEach((line, index) => {
    expect(line.path.at(-1)).toBe(index);
    for (const action of line.actions) { expect(action.span.from).toBeGreaterThanOrEqual(line.span.from); expect(action.span.to).toBeLessThanOrEqual(line.span.to); }
    expect(text.slice(line.span.from, line.span.to)).toBe(line.text);
  });
});
test('with CRLF and a byte order mark it says the same, columns and spans moved', () => {
  const other = parse(`\ufeff${text.replaceAll('\n', '\r\n')}`);
  expect(other.problems).toEqual([]);
  expect(other.name).toBe('Clear colada');
  const first = other.sections[0]?.lines[0];
  expect(other.text.slice(first?.span.from, first?.span.to)).toBe('300 ml white rum 40 %');
});
