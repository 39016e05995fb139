import { expect, test } from 'vitest';
import { sheet } from './cells.ts';
import { differsFromUnits, impossibleWord, outOfOrder } from './words.ts';

test('what is assumed lies between its ends', () => expect(sheet('assumptions.tsv').flatMap(outOfOrder)).toEqual([]));
test('a numeral is its number, and what a vague word means lies between its ends', () => expect(sheet('vocabulary/words.tsv').flatMap(impossibleWord)).toEqual([]));
// SI brochure, NIST Handbook 44 Appendix C, the Weights and Measures Act 1985: the definitions stand in data/units.tsv, held to printed digits by the test of the tables
test('a unit is as large in the vocabulary as in the sheet of units', () => expect(sheet('vocabulary/units.tsv').flatMap(differsFromUnits)).toEqual([]));
