import { describe, expect, it } from 'vitest';
import { acidDoses, sournessOf, spreadOf } from '@washline/engine';
import { tables } from './index.ts';

/** Ends of the 95 % band of an acid in a row, g per litre. */
function bandOf(id: string, acid: 'citric' | 'malic'): readonly [number, number] {
  const row = tables.ingredient(id)!;
  const value = sournessOf(row)?.[acid] ?? NaN, spread = spreadOf(row, `${acid}_g`, tables)!;
  if (spread.kind === 'absolute') return [(value * spread.a) / row.cells[`${acid}_g`]!.value, (value * spread.b) / row.cells[`${acid}_g`]!.value];
  expect(spread.kind).toBe('lognormal cv');
  const log = Math.sqrt(Math.log(1 + spread.a ** 2));
  return [value * Math.exp(-1.96 * log), value * Math.exp(1.96 * log)];
}

// Printed means, g/L. Rows that were made from another table than the one beside them say so; Karadeniz's orange (13.3) lies above the band of the row, which
// stands on US juice, and its malic acid of tangerine and orange is far above all other reports.
describe('acids in juices as printed lie in the band of the row', () => {
  it.each([
    ['lemon-juice', 'citric', 48.0, 'Penniston 2008'], ['lemon-juice', 'citric', 48.54, 'Karadeniz 2004, lower end; the row stands on Penniston'], ['lemon-juice', 'citric', 60.32, 'Karadeniz 2004, upper end'],
    ['lime-juice', 'citric', 45.8, 'Penniston 2008'], ['lemon-juice-bottled', 'citric', 34, 'Penniston 2008, from concentrate'], ['lemon-juice-bottled', 'citric', 39, 'the same'], ['lime-juice-bottled', 'citric', 35.4, 'the same'],
    ['orange-juice', 'citric', 9.1, 'Penniston 2008; the row stands on USDA Foundation Foods'], ['orange-juice', 'citric', 8, 'trade, acid-adjusting juices: 0.8 %'],
    ['grapefruit-juice-white', 'citric', 19.61, 'Karadeniz 2004'], ['grapefruit-juice-white', 'citric', 25.0, 'Penniston 2008, ready to drink; the row stands on Karadeniz'],
    ['tangerine-juice', 'citric', 9.22, 'Karadeniz 2004'], ['pomegranate-juice-from-concentrate', 'citric', 11.9, 'Krueger 2012, 477 samples at 16 Brix'], ['pomegranate-juice-from-concentrate', 'malic', 0.65, 'the same'],
    ['passion-fruit-juice-purple', 'citric', 14.87, 'Ramaiya 2018'], ['passion-fruit-juice-purple', 'malic', 1.56, 'Ramaiya 2018, low end of four kinds'],
  ] as const)('%s, %s acid %f g/L (%s)', (id, acid, printed, _from) => {
    const [low, high] = bandOf(id, acid);
    expect(printed).toBeGreaterThanOrEqual(low * 0.995);
    expect(printed).toBeLessThanOrEqual(high * 1.005);
  });
});

describe('doses of acid from the larder', () => {
  const of = (id: string, week = {}) => acidDoses(tables.ingredient(id)!, tables, week);
  // How to acid adjust juices (ingredient supplier): orange and pineapple to lime 32 and 20 g/L, to lemon 52; grapefruit to lime 27 and 13, to lemon 40
  it.each([['orange-juice', 'lime', 32, 20], ['pineapple-juice', 'lime', 32, 20], ['orange-juice', 'lemon', 52, 0], ['pineapple-juice', 'lemon', 52, 0], ['grapefruit-juice-white', 'lemon', 40, 0]] as const)(
    'to the trade’s 6 % by its own acids, %s to %s comes to what the trade prints', (id, to, citric, malic) => {
      const dose = of(id).find((d) => d.to === to && d.by === 'trade')!;
      expect(Math.abs(dose.citric_g - citric)).toBeLessThan(1);
      // the trade leaves the malic acid of orange and pineapple, 1.7 and 2.8 g/L, out of account
      expect(Math.abs(dose.malic_g - malic)).toBeLessThan(3);
      expect(of(id).find((d) => d.to === to && d.by === 'printed')).toMatchObject({ citric_g: citric, malic_g: malic });
    });
  it('limes that were titrated decide their own column alone', () => {
    const usual = of('orange-juice'), sour = of('orange-juice', { lime: 60 });
    expect(usual.filter((d) => d.by !== 'fruit')).toEqual(sour.filter((d) => d.by !== 'fruit'));
    expect(sour.find((d) => d.to === 'lime' && d.by === 'fruit')).toMatchObject({ aim_g_l: 60, acidity_g_l: expect.closeTo(60, 6) });
  });
  it('weighs the monohydrate 1.094 times', () => { for (const dose of of('orange-juice')) expect(dose.citric_monohydrate_g / dose.citric_g).toBeCloseTo(1.0938, 3); });
  it('there is none for lime, lemon, spirit, syrup, or what is as sour', () => { for (const id of ['lime-juice', 'lemon-juice', 'rum-white', 'simple-syrup', 'citric-acid']) expect(tables.ingredient(id) ? of(id) : []).toEqual([]); });
});

describe('powders and blends as the trade makes them', () => {
  const part = (id: string, acid: string) => tables.ingredient(id)!.cells[`${acid}_g`]?.value ?? 0;
  it('citric acid monohydrate is 0.914 citric acid (210.139 g/mol), the anhydrous all of it', () => {
    expect(part('citric-acid-monohydrate', 'citric') / 100).toBeCloseTo(192.124 / 210.139, 3);
    expect(part('citric-acid', 'citric')).toBe(100);
  });
  it('lime acid is 94 water, 4 citric, 2 malic and 0.04 succinic (Liquid Intelligence, 2014)', () => {
    for (const [acid, grams] of [['citric', 4], ['malic', 2], ['succinic', 0.04]] as const) expect(part('lime-acid-6', acid)).toBeCloseTo((100 * grams) / 100.04, 1);
  });
  it.each([['lemon-acid-6', { citric: 6 }], ['malic-acid-6', { malic: 6 }], ['sparkling-acid-6', { tartaric: 3, lactic: 3 }], ['citric-acid-50', { citric: 50 }]] as const)('%s holds %j (common practice, no source)', (id, acids) => {
    let sum = 0;
    for (const [acid, grams] of Object.entries(acids)) { expect(part(id, acid)).toBe(grams); sum += grams; }
    expect(tables.ingredient(id)!.cells['water_g']!.value).toBe(100 - sum);
  });
  it('lime acid, lemon acid and sparkling acid titrate as the sum of their acids: 60, 61 and 48 g of citric acid in a litre (AWRI TN14 equivalents)', () => {
    for (const [id, acidity] of [['lime-acid-6', 60.4], ['lemon-acid-6', 61.3], ['sparkling-acid-6', 47.9]] as const) expect(Math.abs(sournessOf(tables.ingredient(id)!)!.acidity - acidity)).toBeLessThan(1);
  });
});
