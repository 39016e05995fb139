import { expect, test } from 'vitest';
import { tables } from './index.ts';

/**
 * Rows as printed in the USDA National Nutrient Database for Standard Reference, Release 28 (2016), per 100 g:
 * water, protein, fat, carbohydrate, ash, alcohol (g), sodium, potassium (mg).
 */
const PRINTED: readonly (readonly [string, string, number, number, number, number, number, number, number, number])[] = [
  ['lime-juice', '09160', 90.79, 0.42, 0.07, 8.42, 0.31, 0, 2, 117],
  ['lemon-juice', '09152', 92.31, 0.35, 0.24, 6.9, 0.21, 0, 1, 103],
  ['pineapple-juice', '09273', 86.37, 0.36, 0.12, 12.87, 0.28, 0, 2, 130],
  ['milk-whole', '01077', 88.13, 3.15, 3.25, 4.8, 0.67, 0, 43, 132],
  ['egg-white', '01124', 87.57, 10.9, 0.17, 0.73, 0.63, 0, 166, 163],
  ['honey', '19296', 17.1, 0.3, 0, 82.4, 0.2, 0, 4, 52],
  ['coconut-milk', '12118', 72.88, 2.02, 21.33, 2.81, 0.97, 0, 13, 220],
  ['beer-lager', '14003', 91.96, 0.46, 0, 3.55, 0.16, 3.9, 4, 27],
  ['wine-red', '14096', 86.49, 0.07, 0, 2.61, 0.28, 10.6, 4, 127],
];
const COLUMNS = ['water_g', 'protein_g', 'fat_g', 'carb_g', 'ash_g', 'alcohol_g', 'sodium_mg', 'potassium_mg'];

test.each(PRINTED)('%s carries the values USDA prints as %s', (id, _number, ...values) => {
  const row = tables.ingredient(id);
  expect(COLUMNS.map((column) => row?.cells[column]?.value ?? 0)).toEqual(values);
  expect(row?.cells['water_g']).toMatchObject({ grade: 'compiled', source: 'usda-sr28' });
});

test('citric acid of fresh juice is that of Penniston et al. 2008: lemon 48.0, lime 45.8 g/L', () => {
  for (const [id, g_L] of [['lemon-juice', 48.0], ['lime-juice', 45.8]] as const) {
    const row = tables.ingredient(id);
    const read = (row?.cells['citric_g']?.value ?? NaN) * (row?.cells['density_g_ml']?.value ?? NaN) * 10;
    expect(Math.abs(read / g_L - 1)).toBeLessThan(0.025);                                // the density of the juice is good to 1 %
    expect(row?.cells['citric_g']).toMatchObject({ grade: 'measured', source: 'penniston-2008' });
  }
});
