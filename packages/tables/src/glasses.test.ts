import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { keys, tables } from './index.ts';

type Profile = readonly (readonly [number, number])[];
/** Sum of the frusta between the points of a profile, mL. */
const brim = (profile: Profile) => profile.slice(1).reduce((sum, [height, radius], i) => {
  const [below, other] = profile[i] ?? [0, 0];
  return sum + (Math.PI * (height - below) * (radius * radius + radius * other + other * other)) / 3000;
}, 0);
const glass = (key: string) => {
  const found = tables.glass(key);
  if (!found) throw new Error(`no glass ${key}`);
  return found;
};

test('profiles rise from the floor and hold more than nothing', () => {
  for (const key of keys.glasses) {
    const { profile } = glass(key);
    expect(profile[0]?.[0], key).toBe(0);
    expect(profile.every(([height, radius], i) => radius > 0 && (i === 0 || height > (profile[i - 1]?.[0] ?? 0))), key).toBe(true);
  }
});

// common practice, no source: generic shapes; the volume is that of the frusta
test.each([['cocktail', 190.7], ['coupe', 201.1], ['collins', 389.8], ['flute', 213.3], ['nick-nora', 145.1]])('%s holds %f mL to the brim', (key, mL) => {
  expect(Math.abs(brim(glass(key).profile) - mL)).toBeLessThan(0.3);
});

test('the tasting glass of ISO 3591 holds 215 ± 10 mL, rim 46 mm and widest 65 mm outside', () => {
  const { profile, wall_mm } = glass('tasting');
  expect(Math.abs(brim(profile) - 215)).toBeLessThan(10);
  expect(Math.abs(2 * ((profile.at(-1)?.[1] ?? 0) + wall_mm) - 46)).toBeLessThan(1);
  expect(Math.abs(2 * (Math.max(...profile.map(([, radius]) => radius)) + wall_mm) - 65)).toBeLessThan(1);
});

test('every glass word of the vocabulary has a shape, within the brim it is known for', () => {
  const lines = readFileSync(new URL('../../../data/vocabulary/words.tsv', import.meta.url), 'utf8').split('\n').map((line) => line.split('\t'));
  const wrong = lines.filter(([group]) => group === 'glass').filter(([, key, , , , low, high]) => {
    const mL = tables.glass(key ?? '') ? brim(glass(key ?? '').profile) : NaN;
    return !(mL >= Number(low) && mL <= Number(high));
  });
  expect([...new Set(wrong.map(([, key]) => key))]).toEqual([]);
});

test('the brim assumed for a kind of drink is that of the glass assumed for it, within 2 %', () => {
  const kinds = keys.assumptions.filter((key) => key.startsWith('glass/brim/')).map((key) => key.slice('glass/brim/'.length));
  expect(kinds.length).toBeGreaterThan(10);
  for (const kind of kinds) {
    const [shape, mL] = [tables.assumption(`glass/${kind}`)?.value, tables.assumption(`glass/brim/${kind}`)?.value];
    expect(Math.abs(brim(glass(String(shape)).profile) / Number(mL) - 1), kind).toBeLessThan(0.02);
  }
});
