import { expect, it } from 'vitest';
import { at, BLOCK } from '../matter/constituents.ts';
import { ACIDS } from './constants.ts';
import { molarInto } from './molar.ts';

// Formula weights of the CRC Handbook: citric acid 192.124, malic acid 134.087, lactic acid 90.078 g/mol; the amounts are arithmetic.
it('half a litre with 9.6062 g of citric and 1.34087 g of malic acid has 0.1 and 0.02 mol in a litre', () => {
  const s = new Float64Array(3 + BLOCK), out = new Float64Array(ACIDS).fill(9);
  s[3 + at.water] = 480; s[3 + at.citric] = 9.6062; s[3 + at.malic] = 1.34087;
  expect(molarInto(out, s, 3, 500)).toBeCloseTo(0.12, 12);
  expect(out[0]).toBeCloseTo(0.1, 12);
  expect(out[at.malic - at.citric]).toBeCloseTo(0.02, 12);
  expect([...out].filter((mol) => mol !== 0)).toHaveLength(2);
});
it('90.078 g of lactic acid in a litre is one mole, and what titrates as citric counts as citric: 192.124 g', () => {
  for (const [acid, grams] of [['lactic', 90.078], ['other_acid', 192.124]] as const) {
    const s = new Float64Array(BLOCK), out = new Float64Array(ACIDS);
    s[at[acid]] = grams;
    expect(Math.abs(molarInto(out, s, 0, 1000) - 1)).toBeLessThan(1e-4);
    expect(out[at[acid] - at.citric]).toBeCloseTo(1, 3);
  }
});
