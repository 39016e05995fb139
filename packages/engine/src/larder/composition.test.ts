import { describe, expect, test } from 'vitest';
import type { Ingredient } from './types.ts';
import { at, type Constituent } from '../matter/constituents.ts';
import { composition } from './composition.ts';

/** A row of the larder from a few columns. */
function row(numbers: Readonly<Record<string, number>>, text: Readonly<Record<string, string>> = {}, category = 'juice', acidsInCarb = true): Ingredient {
  const cells = Object.fromEntries(Object.entries(numbers).map(([column, value]) => [column, { value, grade: 'compiled' as const, source: 'usda-sr28' }]));
  return { id: 'x', name: 'X', category, cells, text, acidsInCarb, vegan: 'yes', vegetarian: 'yes', allergens: [], hazards: [] };
}
const part = (ingredient: Ingredient, name: Constituent) => composition(ingredient).grams[at[name]] ?? NaN;
const sum = (ingredient: Ingredient) => composition(ingredient).grams.reduce((total, mass) => total + mass, 0);

/** Lemon juice, raw: USDA SR28 09152, with 4.66 g citric acid from Penniston et al. 2008 inside the 6.9 g carbohydrate. */
const LEMON = { water_g: 92.31, protein_g: 0.35, fat_g: 0.24, carb_g: 6.9, fibre_g: 0.3, sugars_g: 2.52, sucrose_g: 0.43, glucose_g: 0.99, fructose_g: 1.1, ash_g: 0.21, potassium_mg: 103, sodium_mg: 1 };

describe('carbohydrate', () => {
  test('acids inside it leave the rest smaller, acids beside it add to the whole', () => {
    const inside = row({ ...LEMON, citric_g: 3.9 });
    expect(part(inside, 'other_solubles')).toBeCloseTo(6.9 - 2.52 - 0.3 - 3.9, 9);
    const beside = row({ water_g: 94.78, carb_g: 0.04, sugars_g: 0.04, ash_g: 0.02, acetic_g: 5.16 }, {}, 'vinegar', false);   // USDA SR28 02053, distilled vinegar
    expect([part(beside, 'acetic'), part(beside, 'other_solubles')]).toEqual([5.16, 0]);
    expect(part(beside, 'water')).toBeCloseTo(94.78, 2);
  });
  test('parts above the carbohydrate take from the water, never below zero', () => {
    const made = row({ ...LEMON, citric_g: 4.66, malic_g: 0.243 });
    expect(part(made, 'other_solubles')).toBe(0);
    expect(sum(made)).toBeCloseTo(100, 9);
    expect(part(made, 'water')).toBeLessThan(92.31);
  });
  test('sugar beyond the named kinds goes to the kind usual for the row', () => {
    const honey = row({ water_g: 17.1, carb_g: 82.4, sugars_g: 82.12, sucrose_g: 0.89, glucose_g: 35.75, fructose_g: 40.94 }, { sugar: 'maltose' });
    expect(part(honey, 'maltose')).toBeCloseTo(82.12 - 0.89 - 35.75 - 40.94, 9);
  });
  test('starch and bark of a dry spice are insoluble', () => {
    const spice = row({ water_g: 10, protein_g: 4, carb_g: 80, fibre_g: 50, sugars_g: 2, ash_g: 4 }, { rest: 'insolubles' });
    expect(part(spice, 'insolubles')).toBeCloseTo(28 + 2, 9);                            // 80 - 50 - 2, and the 2 g the columns leave
    expect(part(spice, 'water')).toBe(10);
  });
});

describe('protein, agents, salt', () => {
  test('casein and whey stand for the protein of milk, the remainder is other protein', () => {
    const milk = row({ water_g: 88, protein_g: 3.3, casein_g: 2.6, whey_g: 0.6, fat_g: 3.3, carb_g: 4.8, ash_g: 0.7 }, {}, 'dairy');
    expect([part(milk, 'casein'), part(milk, 'whey')]).toEqual([2.6, 0.6]);
    expect(part(milk, 'other_protein')).toBeCloseTo(0.1, 9);
  });
  test('milk of an animal whose casein is not known says so', () => {
    expect(composition(row({ water_g: 87, protein_g: 3.6, fat_g: 4.1, carb_g: 4.5, ash_g: 0.8 }, {}, 'dairy')).missing).toContain('casein_g');
  });
  test('gelatin is its protein, a gum its carbohydrate, a blend its fibre alone', () => {
    expect(part(row({ water_g: 13, protein_g: 85.6, fat_g: 0.1, ash_g: 1.3 }, { form: 'agent', agent: 'gelatin', agent_of: 'protein' }, 'texture'), 'gelatin')).toBe(85.6);
    expect(part(row({ water_g: 12, protein_g: 3, carb_g: 75, ash_g: 10 }, { form: 'agent', agent: 'xanthan', agent_of: 'carb' }, 'texture'), 'xanthan')).toBe(75);
    const blend = row({ water_g: 9, protein_g: 1, carb_g: 87, fibre_g: 40, sugars_g: 3, ash_g: 3 }, { form: 'agent', agent: 'agar', agent_of: 'fibre' }, 'texture');
    expect([part(blend, 'agar'), part(blend, 'other_solubles')]).toEqual([40, 44]);
  });
  test('sodium that is table salt leaves the ash and carries no charge', () => {
    const brine = row({ water_g: 80, ash_g: 20, sodium_mg: 7868 }, { sodium: 'salt' }, 'mineral');
    expect(part(brine, 'salt')).toBeCloseTo(20, 1);                                      // 20 g NaCl hold 7.868 g Na: 22.990 / 58.443
    expect(composition(brine).charge_mol).toBe(0);
  });
});

describe('what is not known', () => {
  test('a large gap is unknown solids, a small one is water', () => {
    expect(composition(row({ water_g: 9.6, ash_g: 33 }))).toMatchObject({ unknown_g: 57.4 });
    expect(composition(row({ water_g: 88, carb_g: 10, sugars_g: 10 }))).toMatchObject({ unknown_g: 0 });
    expect(part(row({ water_g: 88, carb_g: 10, sugars_g: 10 }), 'water')).toBe(90);
  });
  test('a row without any composition is unknown whole; a gas is no content at all', () => {
    expect(composition(row({}, { rest: 'insolubles' }))).toMatchObject({ unknown_g: 100 });
    expect(sum(row({}, { form: 'gas' }))).toBe(0);
  });
  test('parts printed as more than 100 are scaled back to 100', () => {
    expect(sum(row({ water_g: 1.5, fat_g: 99.9, protein_g: 0.28 }, { rest: 'fat' }, 'fat'))).toBeCloseTo(100, 9);
  });
});
