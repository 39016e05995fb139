import { expect, test } from 'vitest';
import { at, CONSTITUENTS, type Constituent } from '../matter/constituents.ts';
import { energyOf, energyOf_kJ } from './energy.ts';

const content = (parts: Partial<Record<Constituent, number>>) => {
  const grams = new Float64Array(CONSTITUENTS.length);
  for (const [name, mass] of Object.entries(parts)) grams[at[name as Constituent]] = mass;
  return grams;
};

// Regulation (EU) 1169/2011 Annex XIV: kcal and kJ per g
test.each([['sucrose', 4, 17], ['polyols', 2.4, 10], ['casein', 4, 17], ['fat', 9, 37], ['ethanol', 7, 29], ['citric', 3, 13], ['fibre', 2, 8], ['water', 0, 0], ['salt', 0, 0]] as const)(
  '1 g %s gives %f kcal and %f kJ', (name, kcal, kJ) => {
    expect([energyOf(content({ [name]: 1 })), energyOf_kJ(content({ [name]: 1 }))]).toEqual([kcal, kJ]);
  });

test('100 mL of wine at 12 % vol: 275 kJ and 66 kcal from ethanol (worked with the factors of Annex XIV, ethanol 0.789 g/mL)', () => {
  const wine = content({ ethanol: 100 * 0.12 * 0.789 });
  expect(Math.abs(energyOf_kJ(wine) - 275)).toBeLessThan(1);
  expect(Math.abs(energyOf(wine) - 66)).toBeLessThan(0.5);
});

test('160 mL of a sour at 16 % vol with 11.2 g sugar and 1.44 g acid: 794.9 kJ and 190.5 kcal (worked with the factors of Annex XIV)', () => {
  const sour = content({ ethanol: 160 * 0.16 * 0.789, sucrose: 11.2, citric: 1.44 });
  expect(Math.abs(energyOf_kJ(sour) - 794.9)).toBeLessThan(2);
  expect(Math.abs(energyOf(sour) - 190.5)).toBeLessThan(1);
});
