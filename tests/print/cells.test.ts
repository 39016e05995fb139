import { describe, expect, test } from 'vitest';
import { differs, impossible, impossibleCraft, nameOf, printedCells, sheet, sheets } from './cells.ts';

const sources = new Set(sheet('sources.tsv').map(nameOf));

describe('sheets beside print', () => {
  test.each(sheets)('%s holds each cell as its source prints it', (name) => {
    expect(sheet(name).flatMap((row) => differs(name, row))).toEqual([]);
  });
  test('every printed cell is in its sheet, with a source', () => {
    for (const name of sheets) {
      const cells = sheet(name).flatMap((row) => printedCells(name, row));
      expect(cells.length, name).toBeGreaterThan(40);
      expect(cells.filter((cell) => !sources.has(cell['source'] ?? '') && cell['source'] !== 'common-practice').map((cell) => `${cell['row']} ${cell['source']}`)).toEqual([]);
    }
  });
});

// conservation of mass, ethanol at 20 °C by OIML R 22, the energy factors of Regulation (EU) 1169/2011, Annex XIV
test('no row of the larder is impossible', () => expect(sheet('larder/ingredients.tsv').flatMap(impossible)).toEqual([]));
test('no row of craft facts is impossible', () => expect(sheet('larder/craft.tsv').flatMap(impossibleCraft)).toEqual([]));
