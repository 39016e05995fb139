import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { toJson } from './json.ts';
import { parse } from './parse.ts';
import { printAction } from './print.ts';

interface Schema { [key: string]: unknown; $ref?: string; $defs?: Record<string, Schema>; type?: string | string[]; properties?: Record<string, Schema>; required?: string[]; items?: Schema; enum?: unknown[]; const?: unknown; anyOf?: Schema[]; oneOf?: Schema[]; additionalProperties?: boolean | Schema; minimum?: number }
const schema = JSON.parse(readFileSync(new URL('../../../../schema/document.schema.json', import.meta.url), 'utf8')) as Schema;

/** The keywords of JSON Schema 2020-12 that the file uses; anything wrong is named by its place. */
function faults(value: unknown, by: Schema, at = '$'): string[] {
  if (by.$ref !== undefined) return faults(value, schema.$defs?.[by.$ref.replace('#/$defs/', '')] ?? {}, at);
  const out: string[] = [];
  const kind = value === null ? 'null' : Array.isArray(value) ? 'array' : typeof value;
  const types = by.type === undefined ? [] : [by.type].flat();
  if (types.length > 0 && !types.includes(kind) && !(types.includes('integer') && Number.isInteger(value))) out.push(`${at} is ${kind}`);
  if (by.const !== undefined && value !== by.const) out.push(`${at} is not ${JSON.stringify(by.const)}`);
  if (by.enum !== undefined && !by.enum.includes(value)) out.push(`${at} is ${String(value)}`);
  if (by.minimum !== undefined && typeof value === 'number' && value < by.minimum) out.push(`${at} too small`);
  if (by.anyOf !== undefined && !by.anyOf.some((one) => faults(value, one, at).length === 0)) out.push(`${at} fits none`);
  if (by.oneOf !== undefined && by.oneOf.filter((one) => faults(value, one, at).length === 0).length !== 1) out.push(`${at} does not fit one`);
  if (kind === 'object') {
    const object = value as Record<string, unknown>;
    for (const key of by.required ?? []) if (!(key in object)) out.push(`${at} lacks ${key}`);
    for (const [key, one] of Object.entries(object)) {
      const sub = by.properties?.[key];
      if (sub !== undefined) out.push(...faults(one, sub, `${at}.${key}`));
      else if (by.additionalProperties === false) out.push(`${at}.${key} is not known`);
      else if (typeof by.additionalProperties === 'object') out.push(...faults(one, by.additionalProperties, `${at}.${key}`));
    }
  }
  if (kind === 'array' && by.items !== undefined) (value as unknown[]).forEach((one, index) => out.push(...faults(one, by.items ?? {}, `${at}[${index}]`)));
  return out;
}
const colada = readFileSync(new URL('./clear-colada.drink', import.meta.url), 'utf8');
const old = (JSON.parse(readFileSync(new URL('../../../../cases/lines/old-book-recipes.json', import.meta.url), 'utf8')) as { recipes: { name: string; lines: string[] }[] }).recipes;
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
