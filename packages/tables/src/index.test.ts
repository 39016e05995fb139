import { describe, expect, test } from 'vitest';
import { keys, tables } from './index.ts';

describe('look-ups', () => {
  test('a row comes with grade and source per value', () => {
    expect(tables.ingredient('lime-juice')?.cells['malic_g']).toEqual({ value: 0.2, grade: 'memory', source: 'memory' });
    expect(tables.ingredient('rum-white')?.cells['abv_min_law']).toMatchObject({ value: 37.5, source: 'eec-1576-89' });
    expect(tables.ingredient('lime-juice')).toBe(tables.ingredient('lime-juice'));
    expect(tables.ingredient('ambrosia')).toBeUndefined();
  });
  test('a question mark at an allergen means the maker decides', () => {
    expect(tables.ingredient('lemon-juice-bottled')?.allergens).toEqual([{ group: 'sulphites', certain: false }]);
    expect(tables.ingredient('milk-whole')?.allergens).toEqual([{ group: 'milk', certain: true }]);
  });
  test('the three meanings of a range are told apart', () => {
    expect(tables.spread('label/strength/spirits')).toMatchObject({ kind: 'offset', a: -0.3, b: 0.3 });
    expect(tables.spread('tool/household measure')).toMatchObject({ kind: 'per cent', a: -5, b: 5 });
    expect(tables.spread('ice/temperature')).toMatchObject({ kind: 'absolute', a: -18, b: 0 });
    expect(tables.spread('tool/kitchen scale')).toMatchObject({ kind: 'normal sd', a: 0.6, b: NaN });
  });
  test('an assumption is a number or a word', () => {
    expect(tables.assumption('place/room')).toMatchObject({ value: 20, low: 15, high: 25, unit: '°C' });
    expect(tables.assumption('larder/word/rum')).toMatchObject({ value: 'rum-white', low: null, high: null });
  });
  test('a hazard carries the limits of law', () => {
    // 21 CFR 172.575: at most 83 parts per million of quinine in carbonated beverages
    expect(tables.hazard('quinine')?.limits.find((limit) => limit.jurisdiction === 'US')).toMatchObject({ value: 83, unit: 'mg/kg', source: 'us-21cfr172-575' });
    expect(keys.hazards.length).toBe(36);
  });
  test('the sheets have a version', () => expect(tables.version).toMatch(/^[0-9a-f]{12}$/));
});
