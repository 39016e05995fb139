import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '@washline/engine';
import { parse, readText } from '@washline/spec';
import { keys, tables } from '@washline/tables';
import notListed from '../../data/assumptions-not-listed.json' with { type: 'json' };
import specs from '../ranges/specs.json' with { type: 'json' };
import short from './assumed-specs.json' with { type: 'json' };
import { replacedOneByOne } from './replaced.ts';

const DEMO = new URL('../../demo/', import.meta.url);
const demos = readdirSync(DEMO).filter((file) => file.endsWith('.drink')).map((file) => [file, readFileSync(new URL(file, DEMO), 'utf8')] as const);
const named = (texts: readonly string[]) => texts.map((text) => [text.split('\n')[0] ?? '', text] as const);

/** Keys of the table that a text's reading hangs on. */
function keysOf(text: string): string[] {
  const { book } = compile(parse(text), tables).ctx;
  return [...book.list.flatMap((i) => /^assumptions (.*)$/.exec(i.row)?.[1] ?? []), ...book.words.map((w) => w.key)];
}

describe('what was not written is listed with words, and the words in their place replace it', () => {
  it.each(named(short.texts))('%s', (_name, text) => {
    const { assumed, faults } = replacedOneByOne(text);
    expect(faults).toEqual([]);
    expect(assumed.length).toBeGreaterThan(0);
  });
  it.each(demos)('demo %s', (_file, text) => { expect(replacedOneByOne(text).faults).toEqual([]); }, 60_000);
  it.each(named(specs.filter((_text, i) => i % 3 === 0)))('one of the fifty: %s', (_name, text) => { expect(replacedOneByOne(text).faults).toEqual([]); }, 60_000);

  it('a fact of the head is the value that is used, and no longer assumed', () => {
    const spec = (head: string) => `A\n${head}60 ml white rum 40 %\n30 ml lime juice\nshake 12 s over 150 g cubes at -5 °C\nstrain`;
    const kept = (head: string) => { const { ctx } = compile(parse(spec(head)), tables); return ctx.book.list.find((i) => i.key === 'hold/shaker'); };
    expect(kept('')).toMatchObject({ value: 3, row: 'assumptions hold/shaker' });
    expect(kept('shaker keeps: 5 ml\n')).toMatchObject({ value: 5, row: 'spreads given/volume' });
    expect(readText(spec('shaker keeps: 5 ml\n'), { tables }).reading.assumed.map((a) => a.key)).not.toContain('hold/shaker');
  });
  it.each([
    ['room: 72 °F', 'place/room', (72 - 32) / 1.8], ['fridge: 4 °C', 'place/fridge', 4], ['air pressure: 980 hPa', 'place/pressure', 98], ['curd keeps: 25 %', 'cloth/curd held', 0.25],
    ['a lime gives: 1 oz', 'fruit/yield/lime', 29.5735295625], ['gelatin soaks up: 5 times its mass', 'gelatin/soak water', 5], ['Raum: 21,5 °C', 'place/room', 21.5],
  ] as const)('the head reads %s', (line, key, value) => {
    const { given, problems } = parse(`A\n${line}\n60 ml rum`);
    expect(problems).toEqual([]);
    expect(given?.map((g) => g.key)).toEqual([key]);
    expect(given?.[0]?.value).toBeCloseTo(value, 6);
  });
  it('a fact with a wrong unit, said twice or behind the lines is a problem at its place', () => {
    expect(parse('A\nroom: 20 ml\n60 ml rum').problems.map((p) => [p.code, p.line, p.column])).toEqual([['key-unclear', 2, 7]]);
    expect(parse('A\nroom: 20 °C\nroom: 21 °C\n60 ml rum').problems.map((p) => [p.code, p.line])).toEqual([['key-twice', 3]]);
    expect(parse('A\n60 ml rum\nroom: 20 °C').problems.map((p) => [p.code, p.line])).toEqual([['key-late', 3]]);
  });
});

describe('the table of assumptions is complete', () => {
  const out = new Set(notListed.rows.flatMap((row) => row.keys));
  const seen = new Set([...short.texts, ...specs].flatMap(keysOf));
  // pieces and spoonfuls: by the names of the larder, tried with the measures
  const open = keys.assumptions.filter((key) => !/^(each|spooned|larder\/word)\//.test(key));

  it('no row is silently dead: each is listed by some short card, or says why not', () => { expect(open.filter((key) => !seen.has(key) && !out.has(key))).toEqual([]); });
  it('no row that says it is not listed is', () => { expect([...out].filter((key) => seen.has(key))).toEqual([]); });
  it('no key that is gone is explained', () => { expect([...out].filter((key) => !keys.assumptions.includes(key))).toEqual([]); });
});
