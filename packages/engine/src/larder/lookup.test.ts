import { describe, expect, test } from 'vitest';
import type { AssumptionRow, Cell, Ingredient, SpreadRow } from './types.ts';
import { allergensOf, allergensUsOf, dietOf } from './diet.ts';
import { agentOf, form, labelStrengthOf, startOf, steeping } from './form.ts';
import { spreadOf } from './spread.ts';
import { toolFor } from './tool.ts';

const cell = (value: number): Cell => ({ value, grade: 'trade', source: 'common-practice' });
const row = (text: Ingredient['text'] = {}, cells: Ingredient['cells'] = {}): Ingredient => ({
  id: 'lime-juice', name: 'Lime juice', category: 'juice-citrus', cells, text, acidsInCarb: true, vegan: 'check', vegetarian: 'yes', allergens: [{ group: 'milk', certain: false }], hazards: [],
});
const spread = (a: number): SpreadRow => ({ kind: 'lognormal cv', a, b: NaN, unit: 'share', grade: 'measured', source: 'penniston-2008' });

describe('form', () => {
  test('what the table says, liquid where it says nothing known', () => {
    expect([form(row({ form: 'agent' })), form(row({ form: 'brick' })), form(row())]).toEqual(['agent', 'liquid', 'liquid']);
  });
  test('start, label and agent are keys, or the neutral answer', () => {
    expect([startOf(row({ start: 'start/juice' })), startOf(row())]).toEqual(['start/juice', 'place/room']);
    expect([labelStrengthOf(row({ label: 'label/strength/wine' })), labelStrengthOf(row())]).toEqual(['label/strength/wine', null]);
    expect([agentOf(row({ agent: 'gelatin' })), agentOf(row({ agent: 'glue' })), agentOf(row())]).toEqual(['gelatin', null, null]);
  });
  test('steeping needs both numbers', () => {
    expect(steeping(row({}, { held_g_g: cell(3), extractable_share: cell(0.35) }))).toEqual({ held_g_g: 3, extractable: 0.35 });
    expect(steeping(row({}, { held_g_g: cell(3) }))).toBeNull();
  });
});

describe('spread', () => {
  const rows: Record<string, SpreadRow> = { 'larder/lime-juice/citric_g': spread(0.15), 'larder/juice-citrus/citric_g': spread(0.25), 'larder/juice-citrus/malic_g': spread(0.3) };
  const tables = { spread: (key: string) => rows[key] };
  test('the ingredient goes before its class', () => {
    expect(spreadOf(row(), 'citric_g', tables)?.a).toBe(0.15);
    expect(spreadOf(row(), 'malic_g', tables)?.a).toBe(0.3);
    expect(spreadOf(row(), 'quinic_g', tables)).toBeUndefined();
  });
  test('pH has the band of the row', () => {
    expect(spreadOf(row({}, { ph_low: cell(2), ph_high: cell(2.35) }), 'ph', tables)).toMatchObject({ kind: 'absolute', a: 2, b: 2.35, unit: 'pH' });
    expect(spreadOf(row(), 'ph', tables)).toBeUndefined();
  });
});

test('the tool follows from the amount: 5 mL and 90 mL belong to the next one', () => {
  const word = (value: string): AssumptionRow => ({ value, low: null, high: null, unit: 'tool', grade: 'trade', source: 'common-practice', say: '' });
  const rows: Record<string, AssumptionRow> = { 'tool/for/ml/5': word('tool/small measure'), 'tool/for/ml/90': word('tool/jigger'), 'tool/for/ml/2000': word('tool/jug'), 'tool/for/g/20': word('tool/fine scale'), 'tool/for/g/1000000': word('tool/kitchen scale') };
  const tables = { assumption: (key: string) => rows[key] };
  expect([4.9, 5, 89, 90].map((mL) => toolFor('ml', mL, tables))).toEqual(['tool/small measure', 'tool/jigger', 'tool/jigger', 'tool/jug']);
  expect([toolFor('g', 0.75, tables), toolFor('g', 200, tables)]).toEqual(['tool/fine scale', 'tool/kitchen scale']);
});

test('diet and allergens of a row, US groups from their own column', () => {
  expect(dietOf(row())).toEqual({ vegan: 'check', vegetarian: 'yes' });
  expect(allergensOf(row())).toEqual([{ group: 'milk', certain: false }]);
  expect(allergensUsOf(row({ allergens_us: 'milk;tree nuts?' }))).toEqual([{ group: 'milk', certain: true }, { group: 'tree nuts', certain: false }]);
  expect(allergensUsOf(row())).toEqual([]);
});
