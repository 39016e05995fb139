import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { tables } from './index.ts';

const factor = (unit: string, system: string | null = null) => tables.unit(unit, system)?.factor ?? NaN;

describe('units', () => {
  // NIST Handbook 44, Appendix C, General tables of units; digits as printed there
  test.each([['oz', 'us', 29.57353], ['cup', 'us', 236.5882], ['pint', 'us', 473.1765], ['quart', 'us', 946.3529], ['gallon', 'us', 3785.412], ['gill', 'us', 118.2941],
    ['fluid-dram', 'us', 3.696691], ['minim', 'us', 0.06161152]])('%s in %s is %f mL', (unit, system, mL) => {
    expect(factor(unit, system) / mL).toBeCloseTo(1, 6);
  });
  test.each([['lb', 453.59237], ['oz-weight', 28.349523125], ['grain', 0.06479891]])('%s is %f g', (unit, g) => expect(factor(unit) / g).toBeCloseTo(1, 9));
  test.each([['pint-uk', 568.26125], ['gill', 142.0653125], ['floz-uk', 28.4130625]])('imperial %s is %f mL', (unit, mL) => expect(factor(unit, 'uk') / mL).toBeCloseTo(1, 9));
  // Weights and Measures Act 1985, schedule 1: a gallon of 4.54609 L, 4 quarts, 8 pints, 160 fluid ounces
  test.each([['oz', 28.4130625], ['pint', 568.26125], ['quart', 1136.5225], ['gallon', 4546.09]])('the imperial %s is %f mL', (unit, mL) => expect(factor(unit, 'uk') / mL).toBeCloseTo(1, 9));
  test('a slice is a piece, half a wheel half of one, by definition', () => {
    expect(tables.unit('slice', null)).toMatchObject({ factor: 1, low: 0.5, high: 1 });
    const lines = readFileSync(new URL('../../../data/vocabulary/units.tsv', import.meta.url), 'utf8').trimEnd().split('\n').map((line) => line.split('\t'));
    expect(lines.filter(([unit, , written]) => unit === 'slice' && /^half.wheels?$/.test(written ?? '')).map((cells) => Number(cells[4]))).toEqual([0.5, 0.5]);
  });
  test('a pound-force per square inch is 6.894757 kPa', () => expect(factor('psi')).toBeCloseTo(6.894757, 6));

  test('a unit of several systems is read by the system, and by the usual one without it', () => {
    expect([factor('tbsp'), factor('tbsp', 'metric'), factor('tbsp', 'au'), factor('tbsp', 'uk')].map((mL) => Number(mL.toFixed(2)))).toEqual([14.79, 15, 20, 15]);
    expect(factor('cup', 'au')).toBe(250);
    expect(tables.unit('measure', null)).toMatchObject({ factor: 25, low: 25, high: 35, defined: false });
    expect(factor('jigger', 'us-1910')).toBeGreaterThan(44);
    expect(tables.unit('cubit', null)).toBeUndefined();
  });

  test('every unit of the vocabulary that has a number has a row, with the same factor where it is defined', () => {
    const lines = readFileSync(new URL('../../../data/vocabulary/units.tsv', import.meta.url), 'utf8').trimEnd().split('\n').slice(1).map((line) => line.split('\t'));
    const wrong = lines.filter(([unit = '', , , of = '', written = '', low = '', , system = '', status]) => {
      if (!['ml', 'g', 'piece', 'mm', 's', '°C', '%', 'kPa', 'share'].includes(of) || written.includes('t -')) return false;
      const row = tables.unit(unit, system);
      if (!row && (written || low)) return true;
      return status === 'defined' && unit !== 'slice' && Math.abs((row?.factor ?? NaN) / Number(written) - 1) > 1e-7;
    });
    expect(wrong.map(([unit, , , , , , , system]) => `${unit} ${system}`)).toEqual([]);
  });
});
