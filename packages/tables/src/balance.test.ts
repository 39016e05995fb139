import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ACIDS, MOLAR_MASS, balanceOf, composition, constantsAt, pH, strengthIn, volumeAt20, at } from '@washline/engine';
import { tables } from './index.ts';

const rows = tables.ids.map((id) => tables.ingredient(id)!);
const own = rows.filter((row) => balanceOf(row).kind === 'own');

describe('the balanced larder', () => {
  // the pH bands are those of FDA's "Approximate pH of foods" (2007) and the other tables named in each row
  it.each(own.map((row) => [row.id, row] as const))('%s gives its own pH back', (_id, row) => {
    const b = balanceOf(row), { grams } = composition(row);
    const litres = volumeAt20(grams, 0) / 1000;
    const perLitre = Float64Array.from({ length: ACIDS }, (_, k) => grams[at.citric + k]! / MOLAR_MASS[k]! / litres);
    const found = pH(perLitre, 0, b.charge_mol / litres, constantsAt(20, strengthIn(grams[at.ethanol]!, litres * 1000)), 0, grams[at.casein]! / litres);
    expect(found).toBeCloseTo((b.low + b.high) / 2, 6);
  });
  it('has a pH of its own for the juices, wines and dairy a bar uses', () => {
    for (const id of ['lime-juice', 'lemon-juice', 'orange-juice', 'pineapple-juice', 'grapefruit-juice-white', 'apple-juice', 'wine-red', 'wine-white', 'milk-whole', 'cream-heavy']) {
      expect(balanceOf(tables.ingredient(id)!).kind, id).toBe('own');
    }
  });
  it('gives none to what has salts without acids, or a pH without them', () => {
    for (const id of ['carrot-juice', 'prune-juice', 'coconut-water-packed', 'pear-nectar']) expect(balanceOf(tables.ingredient(id)!).kind, id).toBe('unknown');
  });
  it('lets spirits, sugar and water bring nothing, and an acid be itself', () => {
    for (const id of ['white-rum', 'simple-syrup', 'water-tap']) { const row = tables.ingredient(id); if (row) expect(balanceOf(row).kind, id).not.toBe('own'); }
    expect(balanceOf(tables.ingredient('lime-acid-6')!).kind).toBe('pure');
  });
  it('is written down as it stands', () => {
    const text = readFileSync(new URL('../../../data/larder/balance.tsv', import.meta.url), 'utf8');
    const lines = text.trimEnd().split('\n').slice(1).map((line) => line.split('\t'));
    expect(lines.length).toBe(rows.filter((row) => balanceOf(row).kind !== 'none').length);
    for (const [id, kind, , , , , charge] of lines) {
      const b = balanceOf(tables.ingredient(id!)!);
      expect(b.kind, id).toBe(kind);
      expect(Math.abs(b.charge_mol * 10_000 - Number(charge)), id).toBeLessThan(0.01);
    }
  });
});
