import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import activity from '../../../../data/physics/activity.json' with { type: 'json' };
import refraction from '../../../../data/physics/refraction.json' with { type: 'json' };
import sweetness from '../../../../data/physics/sweetness.json' with { type: 'json' };
import viscosity from '../../../../data/physics/viscosity.json' with { type: 'json' };
import volumes from '../../../../data/physics/volumes.json' with { type: 'json' };
import { at, BLOCK } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import capacities from '../../../../data/physics/heat-capacity.json' with { type: 'json' };
import { densityOf, freezingPoint, heatCapacity, indexOfSucrose, refractiveIndex, viscosityOf, viscosityOfEthanolWater } from './index.ts';

const print = (name: string): unknown => JSON.parse(readFileSync(new URL(`../../../../cases/print/${name}`, import.meta.url), 'utf8'));
type Line = readonly [number, number, number, number | null, number | null];
const solutions = print('solutions.json') as { solutes: Record<string, Line[]> };
const grid = print('ethanol-water.json') as { cp: [number, number, number][]; eta: [number, number, number][] };
const names = Object.keys(solutions.solutes) as Constituent[];
const water = (name: Constituent, pct: number): Float64Array => {
  const block = new Float64Array(BLOCK);
  block[at.water] = 100 - pct;
  block[at[name]] = pct;
  return block;
};
/** Largest difference between what is worked out and the column, over the lines within reach. */
function worst(name: Constituent, column: 1 | 2 | 3 | 4, of: (block: Float64Array) => number, within: (pct: number) => boolean, relative = false): number {
  let most = 0;
  for (const line of solutions.solutes[name] ?? []) {
    const value = line[column];
    if (value === null || !within(line[0])) continue;
    const off = Math.abs(of(water(name, line[0])) - value);
    most = Math.max(most, relative ? off / value : off);
  }
  return most;
}

interface Fit { readonly to: number; readonly spread: number; readonly grade: string }
const fits = (rows: unknown): Record<string, Fit | undefined> => rows as Record<string, Fit | undefined>;
const mole = (name: string, w: number): number => {
  const each = (activity.constituents as Record<string, { g_per_mol: number }>)[name]!.g_per_mol;
  return w / each / (w / each + (1 - w) / activity.water_g_per_mol);
};

// CRC Handbook of Chemistry and Physics, 102nd ed., Concentrative properties of aqueous solutions
describe('the largest error stated beside a fit is the one found in the printed table', () => {
  test.each(names.filter((name) => fits(volumes.constituents)[name] && name !== 'sucrose'))('density of %s', (name) => {
    const { to, spread } = fits(volumes.constituents)[name]!;
    const found = worst(name, 1, (block) => densityOf(block, 0, 20), (pct) => pct <= 100 * to);
    expect(found).toBeLessThan(1.1 * spread + 0.00002);
    expect(found).toBeGreaterThan(spread / 1.25 - 0.00001);
  });
  test.each(names.filter((name) => fits(refraction.constituents)[name]))('refractive index of %s', (name) => {
    const { to, spread } = fits(refraction.constituents)[name]!;
    const last = name === 'ethanol' ? 52 : 100 * to;     // the sum with the density of the general formula is off above
    const found = worst(name, 2, (block) => refractiveIndex(block, 0), (pct) => pct <= last);
    expect(found).toBeLessThan(1.1 * spread + 0.00005);
    if (name !== 'ethanol') expect(found).toBeGreaterThan(spread / 1.25 - 0.00001);
  });
  // the whole-range ends: % by mass to which the depressions were printed and fitted
  test.each([['sucrose', 0.643, 2.2], ['ethanol', 0.6, 1.4], ['glucose', 0.3, 1.25], ['fructose', 0.28, 1.25], ['maltose', 0.44, 1.25], ['polyols', 0.4, 1.25], ['citric', 0.3, 1.25],
    ['lactic', 0.2, 1.25], ['acetic', 0.36, 1.25], ['phosphoric', 0.4, 1.25]] as const)('freezing point of %s, to %f of it by mass', (name, w, times) => {
    const row = (activity.constituents as Record<string, { to: number; spread_K: number }>)[name]!;
    expect(Math.abs(row.to / mole(name, w) - 1)).toBeLessThan(0.01);
    const found = worst(name, 3, (block) => -freezingPoint(block, 0), (pct) => pct <= 100 * w);
    expect(found).toBeLessThan(1.1 * row.spread_K + 0.005);
    expect(found).toBeGreaterThan(row.spread_K / times - 0.0005);
  });
  test.each([['glucose', 60], ['fructose', 48], ['lactose', 18], ['maltose', 60], ['acetic', 50], ['polyols', 60], ['phosphoric', 40], ['lactic', 80]] as const)('%s ends where its table does', (name, pct) => {
    for (const table of [volumes, refraction]) if (name !== 'polyols') expect(fits(table.constituents)[name]!.to).toBeCloseTo(pct / 100, 9);
  });
});

test('viscosity of sugars and acids at 20 °C to a quarter of their mass is within 10 % of print', () => {
  for (const name of ['sucrose', 'glucose', 'fructose', 'lactose', 'maltose', 'polyols', 'citric', 'lactic', 'acetic', 'phosphoric'] as const) {
    const like = viscosity.like_sucrose;
    expect(worst(name, 4, (block) => viscosityOf(block, 0, 20), (pct) => pct <= 25, true), name).toBeLessThan(like.spread * 0.5);
  }
});

// A. Melinder, Properties of secondary working fluids, 2010: ethanol and water
test('heat capacity of ethanol and water is within 2.5 % of the printed table', () => {
  for (const [celsius, pct, printed] of grid.cp) {
    const b = new Float64Array(BLOCK);
    b[at.water] = 100 - pct;
    b[at.ethanol] = pct;
    expect(Math.abs(heatCapacity(b, 0, celsius) / 100 / printed - 1), `${celsius} °C ${pct} %`).toBeLessThan(0.025);
  }
});
test('viscosity of ethanol and water: nineteen of twenty printed values within the 4 % stated, all within 4.5 %', () => {
  const off = grid.eta.map(([celsius, pct, printed]) => Math.abs(viscosityOfEthanolWater(pct / 100, celsius) / printed - 1)).sort((a, b) => a - b);
  expect(off[Math.floor(0.95 * off.length)]).toBeLessThan(viscosity.mixing.spread);
  expect(off.at(-1)).toBeLessThan(0.045);
});

describe('constituents of food', () => {
  // Choi & Okos 1986: density kg/m3 and specific heat kJ/(kg K) over t in °C; the quadratic term is left out, 0.2 % at 60 °C
  const GROUPS = [
    ['protein', ['casein', 'whey', 'egg_protein', 'other_protein', 'gelatin'], 1329.9, -0.5184, 2.0082, 1.2089e-3],
    ['fat', ['fat'], 925.59, -0.41757, 1.9842, 1.4733e-3],
    ['carbohydrate', ['pectin', 'tannin', 'agar', 'methylcellulose', 'xanthan', 'carrageenan', 'gellan', 'other_gum'], 1599.1, -0.31046, 1.5488, 1.9625e-3],
    ['fibre', ['fibre', 'insolubles'], 1311.5, -0.36589, 1.8459, 1.8306e-3],
  ] as const;
  test.each(GROUPS)('%s: volume and heat of a gram', (_group, members, density, perK, heat, heatPerK) => {
    for (const name of members) {
      const { phi } = (volumes.constituents as Record<string, { phi: number[] }>)[name]!;
      expect(Math.abs(phi[0]! - 1000 / (density + 20 * perK)), name).toBeLessThan(0.0008);
      expect(phi.slice(1)).toEqual([0, 0, 0]);
      const { cp } = (capacities.constituents as Record<string, { cp: number[] }>)[name]!;
      expect(Math.abs(cp[0]! - (heat + 25 * heatPerK)), name).toBeLessThan(0.001);
      expect(Math.abs(cp[1]! - 100 * heatPerK), name).toBeLessThan(0.001);
    }
  });
  test('minerals: heat of a gram', () => {
    for (const name of ['ash', 'salt']) {
      const { cp } = (capacities.constituents as Record<string, { cp: number[] }>)[name]!;
      expect(Math.abs(cp[0]! - (1.0926 + 25 * 1.8896e-3))).toBeLessThan(0.001);
      expect(Math.abs(cp[1]! - 0.18896)).toBeLessThan(0.001);
    }
  });
  // Llano Restrepo 2005 after Bubnik: 4184 - 2971 B + 460 B P + 7.5 B t J/(kg K), of the sugar alone at purity 1 (B = 1): 1673 + 7.5 t
  test('sugars: heat of a gram', () => {
    for (const name of ['sucrose', 'glucose', 'fructose', 'lactose', 'maltose', 'other_sugars']) {
      const { cp } = (capacities.constituents as Record<string, { cp: number[] }>)[name]!;
      expect(Math.abs(cp[0]! - (4184 - 2971 + 460 + 7.5 * 25) / 1000), name).toBeLessThan(0.001);
      expect(cp[1]!).toBeCloseTo(0.75, 9);
    }
  });
  test('a sugar or an acid without a table of its own goes like its nearest neighbour', () => {
    const same = (table: unknown, name: string, like: string, key: string): void => {
      const rows = table as Record<string, Record<string, unknown>>;
      expect([name, rows[name]![key], rows[name]!['to']]).toEqual([name, rows[like]![key], rows[like]!['to']]);
    };
    for (const [table, key] of [[volumes, 'phi'], [refraction, 'r'], [activity, 'coef']] as const) same(table.constituents, 'other_sugars', 'maltose', key);
    for (const name of ['malic', 'tartaric', 'ascorbic', 'quinic', 'succinic', 'other_acid']) same(refraction.constituents, name, 'citric', 'r');
    for (const [table, key] of [[volumes, 'phi'], [activity, 'coef']] as const) same(table.constituents, 'other_acid', 'citric', key);
    same(activity.constituents, 'lactose', 'maltose', 'coef');
    same(activity.constituents, 'other_sugars', 'maltose', 'g_per_mol');
    same(activity.constituents, 'other_acid', 'citric', 'g_per_mol');
    const like = viscosity.like_sucrose.of;
    for (const name of ['malic', 'tartaric', 'ascorbic', 'quinic', 'succinic', 'other_acid'] as const) expect([name, like[name]]).toEqual([name, like.citric]);
    expect([like.sucrose, like.other_solubles, like.other_sugars]).toEqual([1, 1, like.maltose]);
  });
});

test('sucrose is 1 of sweetness, by definition', () => expect(sweetness.rows.find((row) => row.name === 'sucrose')?.values).toEqual([1]));
// ICUMSA and OIV: the refractive index of water at 20 °C and 589.3 nm is 1.33299, at 30 °C 1.33194, at 10 °C 1.33369
test('water refracts as printed', () => {
  expect(refraction.water.n).toBe(1.33299);
  expect(indexOfSucrose(0)).toBeCloseTo(1.33299, 5);
  expect(Math.abs(indexOfSucrose(0, 30) - 1.33194)).toBeLessThan(0.00004);
  expect(Math.abs(indexOfSucrose(0, 10) - 1.33369)).toBeLessThan(0.00004);
});
