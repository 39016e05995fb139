import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

interface Printed { readonly file: string; readonly place: string; readonly print: unknown; readonly source: string; readonly where: string }
const text = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const values = ['constants', 'limits'].flatMap((name) => (JSON.parse(text(`cases/print/${name}.json`)) as { values: readonly Printed[] }).values);
const sources = new Map(text('data/sources.tsv').trimEnd().split('\n').map((line) => line.split('\t') as [string, string]));
const held = ({ file, place }: Printed): unknown => place.split('/').reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], JSON.parse(text(file)));

// each file of data/ beside the numbers as its sources print them: coefficients, constants, limits of law
test.each([...new Set(values.map(({ file }) => file))])('%s holds what is printed', (file) => {
  for (const one of values) if (one.file === file) expect(held(one), `${one.place}: ${one.where}, ${sources.get(one.source) ?? one.source}`).toEqual(one.print);
});

test('each printed number has its source', () => {
  expect(values.filter(({ source }) => !sources.has(source) && source !== 'common-practice').map(({ file, place, source }) => `${file} ${place} ${source}`)).toEqual([]);
});
