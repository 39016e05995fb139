import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from '../document/parse.ts';

// Lines in English and in German that say the same: all that is understood of them must be the same but where and in which words it stands.
const rows = readFileSync(new URL('../../../../cases/lines/german-twins.tsv', import.meta.url), 'utf8').trim().split('\n').slice(1).map((row) => row.split('\t') as [string, string]);

const WRITTEN = /^(span|path|words|word|number|unitSpan|others|assumed|byWritten|system|systemAssumed|nearest|named|name)$/;
function meant(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(meant);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).filter(([key]) => !WRITTEN.test(key)).map(([key, one]) => [key, key === 'flags' ? [...(one as string[])].sort() : meant(one)]));
}
const read = (line: string) => { const document = parse(`A drink\nPart (mix):\n${line}\n`); return { actions: meant(document.sections[0]?.lines[0]?.actions), problems: document.problems.map((one) => one.code) }; };

test.each(rows)('%s = %s', (english, german) => {
  const one = read(german);
  expect(one.problems).toEqual([]);
  expect(one).toEqual(read(english));
});

test('language: de in the head settles words that mean one thing in English and another in German', () => {
  const linked = (language: string, line: string) => { const first = parse(`A drink\nlanguage: ${language}\n${line}\n`).sections[0]?.lines[0]?.actions[0]; return first?.kind === 'measure' && first.thing.link.kind === 'larder' ? first.thing.link.assumed : undefined; };
  // "Soda" is soda water in German; in English it may be lemonade or baking soda too
  expect([linked('en', '60 ml soda'), linked('de', '60 ml Soda')]).toEqual([true, false]);
  expect(parse('A drink\nlanguage: fr\n60 ml gin\n').problems.map((one) => one.code)).toEqual(['key-unclear']);
  expect(parse('Ein Drink\nSprache: deutsch\n60 ml Gin\n').problems).toEqual([]);
});
