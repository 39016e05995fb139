import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { toJson } from './json.ts';
import { parse } from './parse.ts';
import { faults, type Schema } from '../../../../tests/schema/faults.ts';
import { printAction } from './print.ts';

const schema = JSON.parse(readFileSync(new URL('../../../../schema/document.schema.json', import.meta.url), 'utf8')) as Schema;
const colada = readFileSync(new URL('./clear-colada.drink', import.meta.url), 'utf8');
const old = (JSON.parse(readFileSync(new URL('../../../../cases/books/bullock-1917.json', import.meta.url), 'utf8')) as { recipes: { name: string; lines: string[] }[] }).recipes;
const asJson = (text: string): unknown => JSON.parse(JSON.stringify(toJson(parse(text))));

describe('the JSON form follows its schema', () => {
  test('the spec of the contract', () => { expect(faults(asJson(colada), schema)).toEqual([]); });
  test.each(old.map((one) => [one.name, one.lines] as const))('%s (Bullock, The Ideal Bartender, 1917)', (name, lines) => { expect(faults(asJson([name, 'measures: us-1910', ...lines].join('\n')), schema)).toEqual([]); });
  test('a wrong one does not', () => { expect(faults({ washline: 2, lines: [{}], more: 1 }, schema)).not.toEqual([]); });
});
test.each(['60 ml white rum 40 % vol', '0.75 g agar in 75 ml water', 'stir 25 s over 200 g cubes at -5 °C', 'top with 15 g pineapple cloud', 'charge 2 N2O in a 500 ml siphon', 'rest 4 h at 30 °C', 'strain through cheesecloth', '15 ml simple syrup 1:1', '230 ml pineapple juice, held 5 min at 85 °C', 'garnish with 1 lemon wheel', '2 dash bitters', 'reduce to 200 ml', 'freeze overnight at -18 °C', 'shake 10 times', 'dilute 100 ml water'])('a line printed from its fields reads the same: %s', (text) => {
  const strip = (value: unknown): string => JSON.stringify(value, (key, one: unknown) => (key === 'span' || key === 'number' || key === 'unitSpan' ? undefined : one));
  const first = parse(`A\nBuild:\n${text}`).sections[0]?.lines[0]?.actions ?? [];
  const again = parse(`A\nBuild:\n${first.map(printAction).join('; ')}`).sections[0]?.lines[0]?.actions;
  expect(strip(again)).toBe(strip(first));
});
