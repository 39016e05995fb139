import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sheet } from './cells.ts';

const [head = '', ...lines] = readFileSync(new URL('../../cases/wines.csv', import.meta.url), 'utf8').trimEnd().split(/\r?\n/);
const columns = head.split(',');
const wines = lines.map((line) => line.split(','));
const spreads = sheet('spreads.tsv').filter((row) => row['key']?.startsWith('wine/') && row['source'] === 'wines-measured' && row['kind'] === 'normal sd');

// measured wines (Cortez et al. 2009): the standard deviation of a column, over the wines of one colour that the file holds, a part of all
test.each(spreads.map((row) => [row['key'] ?? '', Number(row['a'])] as const))('%s: measured wines differ by %f', (key, a) => {
  const [, colour, column = ''] = key.split('/');
  const values = wines.filter(([first]) => first === colour).map((line) => Number(line[columns.indexOf(column)])).filter(Number.isFinite);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  expect(Math.abs(a / sd - 1), `${sd}`).toBeLessThan(0.12);
});
