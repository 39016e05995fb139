import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { beerVolumes } from './index.ts';

const { rows } = JSON.parse(readFileSync(new URL('../../../../cases/print/beer.json', import.meta.url), 'utf8')) as { rows: [number, number, number][] };

// the brewers' chart of carbonation (Brewing Techniques 2.1, 1994, Table I): volumes over °F and psi, printed to 0.01
test('the formula gives the brewers\u2019 chart, nineteen of twenty values within 0.03 volumes', () => {
  const off = rows.map(([fahrenheit, psi, printed]) => beerVolumes(fahrenheit, psi) - printed);
  const sizes = off.map(Math.abs).sort((a, b) => a - b);
  expect(sizes[Math.floor(0.95 * sizes.length)]).toBeLessThan(0.03);
  expect(Math.abs(off.reduce((sum, one) => sum + one, 0) / off.length)).toBeLessThan(0.01);
});
