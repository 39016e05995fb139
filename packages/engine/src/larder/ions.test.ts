import { expect, test } from 'vitest';
import type { Ingredient } from './types.ts';
import { acidsUnknown, statesAcids, strongIons } from './ions.ts';

const row = (numbers: Readonly<Record<string, number>>, text: Readonly<Record<string, string>> = {}, category = 'juice'): Ingredient => ({
  id: 'x', name: 'X', category, text, acidsInCarb: true, vegan: 'yes', vegetarian: 'yes', allergens: [], hazards: [],
  cells: Object.fromEntries(Object.entries(numbers).map(([column, value]) => [column, { value, grade: 'compiled' as const, source: 'usda-sr28' }])),
});

test('potassium and sodium in mol: 117 mg and 2 mg of lime juice (USDA SR28 09160) are 3.08 mmol', () => {
  expect(strongIons(row({ potassium_mg: 117, sodium_mg: 2 })) * 1000).toBeCloseTo(117 / 39.098 + 2 / 22.99, 9);
});
test('calcium carbonate takes two charges a mole: 100.09 g/mol', () => {
  expect(strongIons(row({ calcium_mmol_kg: 9991 }, {}, 'mineral')) * 100.09 / 100).toBeCloseTo(2, 3);
  expect(strongIons(row({ calcium_mmol_kg: 28 }, {}, 'dairy'))).toBe(0);
});
test('chloride balances what is marked as salt, and the ions of a gum stay with it', () => {
  expect(strongIons(row({ sodium_mg: 7868 }, { sodium: 'salt' }, 'mineral'))).toBe(0);
  expect(strongIons(row({ sodium_mg: 9000 }, { form: 'agent' }, 'texture'))).toBe(0);
});
test('ascorbic acid alone is no answer to which acids a juice holds', () => {
  expect(statesAcids(row({ ascorbic_g: 0.04 }))).toBe(false);
  expect(acidsUnknown(row({ ascorbic_g: 0.04 }, { acids: 'stated' }))).toBe(100);
  expect(acidsUnknown(row({ citric_g: 4 }, { acids: 'stated' }))).toBe(0);
  expect(acidsUnknown(row({}, { acids: 'none' }))).toBe(0);
  expect(acidsUnknown(row({ lactic_g: 60 }, { acids: 'unknown' }))).toBe(100);
});
