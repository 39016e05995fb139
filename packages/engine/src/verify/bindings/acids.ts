import type { Bindings, Inputs } from '../types.ts';
import {
  acidToAdd, ACIDS, adjustDose, constantsAt, constantsOf, equivalentMass, ethanolShiftBound, MOLAR_MASS, pH, phthalatePH, pK, pKByHeat, protonsReleased, sumAsCitric,
} from '../../acids/index.ts';
import { citricForProtons } from '../../clarity/index.ts';
import { celsiusOf } from './quantities.ts';

/** pKs of an acid at a temperature, as many as it has. */
function stepsOf(acid: string, celsius: number): number[] {
  return [1, 2, 3].map((step) => pK(acid, step, celsius)).filter((value) => !Number.isNaN(value));
}

/** One acid of given pKs, mol/L, with strong ions. */
function phOfOne(pKs: readonly number[], mol: number, strong: number, celsius: number): number {
  const acids = new Float64Array(ACIDS);
  acids[0] = mol;
  return pH(acids, 0, strong, constantsOf(pKs, celsius));
}

function pureAcid(i: Inputs): number {
  const mol = i.maybe('c_mol_L') ?? i.number('g_per_L') / i.number('M');
  const given = i.raw('pKa');
  const celsius = celsiusOf(i, 25);
  if (given === 'strong') return phOfOne([], 0, -mol, celsius);
  return phOfOne(Array.isArray(given) ? given.filter((value): value is number => typeof value === 'number') : stepsOf(i.text('acid') ?? '', celsius), mol, 0, celsius);
}

/** Salts of the standard buffers: acid, and strong cations to one of it. */
const SALTS: readonly (readonly [RegExp, string, number])[] = [
  [/KH2 ?citrate/i, 'citric', 1], [/KH ?tartrate/i, 'tartaric', 1], [/KH ?phthalate/i, 'phthalic', 1],
  [/KH2PO4/i, 'phosphoric', 1], [/Na2HPO4/i, 'phosphoric', 2], [/NaHCO3/i, 'carbonic', 1], [/Na2CO3/i, 'carbonic', 2],
];

/** `KH2PO4 0.025 + Na2HPO4 0.025`, or one salt with `m` mol/kg; mol/kg is read as mol/L. */
function buffer(i: Inputs): number | undefined {
  let mol = 0, strong = 0, acid: string | undefined;
  for (const term of (i.text('salts', 'salt', 'buffer') ?? '').split('+')) {
    const row = SALTS.find(([name]) => name.test(term));
    const amount = i.maybe('m') ?? Number(/([\d.]+)\s*(mol\/kg)?\s*$/.exec(term.trim())?.[1]);
    if (!row || !(amount > 0) || (acid !== undefined && acid !== row[1])) return undefined;
    acid = row[1]; mol += amount; strong += row[2] * amount;
  }
  if (acid === undefined) return undefined;
  const celsius = celsiusOf(i, 25);
  const pKs = stepsOf(acid, celsius);
  for (const step of [1, 2, 3]) pKs[step - 1] = i.maybe(`pK${step}`) ?? pKs[step - 1]!;
  return phOfOne(pKs.filter((value) => value !== undefined), mol, strong, celsius);
}

/** `{"tartaric_g": 1, "as_": "sulfuric"}`. */
function asAnother(i: Inputs): number | undefined {
  const [key, grams] = Object.entries(i.all).find(([name, value]) => name.endsWith('_g') && typeof value === 'number') ?? [];
  const to = i.text('as_', 'as')?.replaceAll(' ', '_');
  if (key === undefined || to === undefined) return undefined;
  const plain = (name: string) => (name === 'citric_anhydrous' ? 'citric' : name);
  return equivalentMass(grams as number, plain(key.slice(0, -2)), plain(to));
}

const step = (i: Inputs) => i.maybe('k', 'step') ?? 1;
const added = (i: Inputs) => acidToAdd(i.number('L'), i.number('native_citric', 'native_malic'), i.number('target'));

/** Acids, buffers, doses of acid. */
export const acids: Bindings = {
  ph_of_a_pure_acid_solution: pureAcid,
  ph_b: (i) => phOfOne(stepsOf('citric', celsiusOf(i, 25)), i.number('citric_g_L') / MOLAR_MASS[0]!, i.number('K_mol_L'), celsiusOf(i, 25)),
  standard_buffer: buffer,
  neutral_phosphate_at_0_c: buffer,
  kh_phthalate_ph_s_equation: (i) => phthalatePH(celsiusOf(i, 25)),
  citric_pk1_from_ln_k_equation: (i) => pK(i.text('acid') ?? 'citric', step(i), celsiusOf(i, 25)),
  lactic_pk_at_temperature: (i) => pK(i.text('acid') ?? 'lactic', step(i), celsiusOf(i, 25)),
  pk_t_acetic_from_dh: (i) => pKByHeat(i.text('acid') ?? 'acetic', step(i), celsiusOf(i, 25)),
  acid_equivalents: asAnother,
  ta_of_4_citric_2_malic_as_citric: (i) => sumAsCitric([i.maybe('citric_g') ?? 0, i.maybe('malic_g') ?? 0, i.maybe('tartaric_g') ?? 0, 0, 0, 0, 0, 0, 0, 0], 0),
  benzoic_pk_apparent_at_25_2_wt_ethanol: (i) => i.number('water') + ethanolShiftBound(i.number('wt_pct')),
  protons_released_per_citric_at_ph_4_6: (i) => protonsReleased(0, i.number('pH'), i.number('I'), constantsAt(25)),
  citric_to_take_1_l_milk_from_6_7_to_4_6: (i) => citricForProtons(i.number('milk_L') * i.number('demand_mmol'), i.maybe('pH') ?? 4.6),
  orange_to_lime: added,
  orange_to_lime_b: added,
  grapefruit_to_lime: (i) => (adjustDose('grapefruit', 'lime') ?? []).map((perLitre) => perLitre * i.number('L')),
  lime_acid_strength: (i) => {
    const acid = ['citric_g', 'malic_g', 'succinic_g', 'tartaric_g'].reduce((sum, name) => sum + (i.maybe(name) ?? 0), 0);
    return (100 * acid) / (acid + i.number('water_g'));
  },
};
