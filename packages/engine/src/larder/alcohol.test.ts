import { describe, expect, test } from 'vitest';
import type { Cell, Ingredient } from './types.ts';
import { alcoholic, lawOfStrength, standardDrinks } from './alcohol.ts';

const cell = (value: number, source = 'common-practice'): Cell => ({ value, grade: 'trade', source });
const row = (cells: Ingredient['cells'], text: Ingredient['text'] = {}): Ingredient => ({ id: 'x', name: 'X', category: 'spirit', cells, text, acidsInCarb: true, vegan: 'yes', vegetarian: 'yes', allergens: [], hazards: [] });
/** Ethanol at 20 °C: 0.78924 g/mL (OIML R 22). */
const ethanol_g = (mL: number, strength: number) => (mL * strength * 0.78924) / 100;

describe('standard drinks', () => {
  test('US: 12 fl oz (354.88 mL) at 5 % vol hold 14.0 g, one drink (US Dietary Guidelines)', () => {
    expect(Math.abs(ethanol_g(354.88, 5) - 14.0)).toBeLessThan(0.05);
    expect(standardDrinks(ethanol_g(354.88, 5)).US).toBeCloseTo(1, 2);
  });
  test('UK: 25 mL at 40 % vol are one unit, 175 mL at 13 % are 2.275 (a unit is 10 mL of ethanol)', () => {
    expect(standardDrinks(ethanol_g(25, 40)).UK).toBeCloseTo(1, 3);
    expect(standardDrinks(ethanol_g(175, 13)).UK).toBeCloseTo(2.275, 3);
  });
  test('Australia: 285 mL at 4.8 % vol are 1.1 drinks of 10 g', () => {
    expect(Math.abs(standardDrinks(ethanol_g(285, 4.8)).AU - 1.1)).toBeLessThan(0.05);
  });
  test('no ethanol is no drink', () => expect(standardDrinks(0)).toEqual({ US: 0, UK: 0, AU: 0 }));
});

describe('labels and law', () => {
  test('strength and sugar of a liqueur as its label has them', () => {
    expect(alcoholic(row({ abv_pct: cell(24), sugar_g_l: cell(350) }, { label: 'label/strength/spirits' }))).toMatchObject({ strength: 24, sugar_g_L: 350, tolerance: 'label/strength/spirits' });
  });
  test('sugar of a wine from its share by mass and its density', () => {
    expect(alcoholic(row({ abv_pct: cell(12), sugars_g: cell(0.8), density_g_ml: cell(0.992) }))?.sugar_g_L).toBeCloseTo(7.936, 3);
  });
  test('no alcohol, no answer', () => {
    expect(alcoholic(row({ abv_pct: cell(0) }))).toBeNull();
    expect(alcoholic(row({}))).toBeNull();
  });
  test('rum: 37.5 % vol at least (Regulation (EEC) 1576/89, kept in (EU) 2019/787)', () => {
    expect(lawOfStrength(row({ abv_min_law: cell(37.5, 'eec-1576-89') }))).toMatchObject({ min: 37.5, max: null, sugar_min_g_L: null, source: 'eec-1576-89' });
    expect(lawOfStrength(row({}))).toBeNull();
  });
});
