import { expect, test } from 'vitest';
import acids from '../../data/physics/acids.json' with { type: 'json' };
import activity from '../../data/physics/activity.json' with { type: 'json' };
import gas from '../../data/physics/gas.json' with { type: 'json' };

/** Some tables cut the last digit where others round it, so that nine tenths of it are let pass. Standard atomic weights, IUPAC 2005 (Wieser, Pure Appl. Chem. 78, 2051): those the handbook tables of the larder were printed with. */
const WEIGHT: Readonly<Record<string, number>> = { H: 1.00794, C: 12.0107, N: 14.0067, O: 15.9994, P: 30.973762, S: 32.065 };
const mass = (formula: string): number => [...formula.matchAll(/([A-Z][a-z]?)(\d*)/g)].reduce((sum, [, element = '', many]) => sum + (WEIGHT[element] ?? NaN) * Number(many || 1), 0);
const near = (held: number, formula: string, shares = 1): number => Math.abs(held - mass(formula) / shares);
const FORMULAS = {
  citric: 'C6H8O7', malic: 'C4H6O5', tartaric: 'C4H6O6', lactic: 'C3H6O3', acetic: 'C2H4O2', phosphoric: 'H3PO4', ascorbic: 'C6H8O6', quinic: 'C7H12O6', succinic: 'C4H6O4',
} as const;
/** Protons that count in titration, as the equivalent weights are printed: phosphoric to pH 8 gives two, ascorbic and quinic one. */
const PROTONS: Readonly<Record<string, number>> = { citric: 3, malic: 2, tartaric: 2, lactic: 1, acetic: 1, phosphoric: 2, ascorbic: 1, quinic: 1, succinic: 2 };

test.each(Object.entries(FORMULAS))('%s acid weighs what %s does', (id, formula) => {
  const row = acids.acids.find((one) => one.id === id);
  expect(near(row?.molar_mass ?? NaN, formula)).toBeLessThan(0.0009);
  expect(near(row?.equivalent ?? NaN, formula, PROTONS[id])).toBeLessThan(0.0009);
});

test('carbonic acid, citric acid with its water, sulfuric acid', () => {
  expect(near(acids.carbonic.molar_mass, 'CH2O3')).toBeLessThan(0.0009);
  expect(near(acids.equivalents.citric_monohydrate.molar_mass, 'C6H10O8')).toBeLessThan(0.0009);
  expect(near(acids.equivalents.citric_monohydrate.equivalent, 'C6H10O8', 3)).toBeLessThan(0.0009);
  expect(near(acids.equivalents.sulfuric.molar_mass, 'H2SO4')).toBeLessThan(0.0009);
  expect(near(acids.equivalents.sulfuric.equivalent, 'H2SO4', 2)).toBeLessThan(0.0009);
});

test.each([['ethanol', 'C2H6O'], ['sucrose', 'C12H22O11'], ['glucose', 'C6H12O6'], ['fructose', 'C6H12O6'], ['lactose', 'C12H22O11'], ['maltose', 'C12H22O11'],
  ['polyols', 'C3H8O3'], ['quinine', 'C20H24N2O2'], ['caffeine', 'C8H10N4O2'], ...Object.entries(FORMULAS).map(([id, formula]) => [id, formula] as const)] as const)(
  '%s dissolves as moles of %s', (name, formula) => {
    const row = (activity.constituents as Record<string, { g_per_mol: number }>)[name];
    // of these two the weight was printed with two decimals
    expect(near(row?.g_per_mol ?? NaN, formula)).toBeLessThan(name === 'quinine' || name === 'caffeine' ? 0.009 : 0.0009);
  });

test('water and gases', () => {
  expect(near(activity.water_g_per_mol, 'H2O')).toBeLessThan(0.0004);
  for (const [name, formula] of [['CO2', 'CO2'], ['N2O', 'N2O'], ['N2', 'N2'], ['O2', 'O2']] as const) expect(near(gas.molar_mass[name], formula), name).toBeLessThan(0.0009);
});

test('of a hexose two thirds of its carbon go as ethanol, one as carbon dioxide: C6H12O6 = 2 C2H6O + 2 CO2', () => {
  expect(Math.abs(gas.fermentation.co2_per_g_hexose - (2 * mass('CO2')) / mass('C6H12O6'))).toBeLessThan(0.00006);
});
