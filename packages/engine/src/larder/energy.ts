import { at, CONSTITUENTS, type Constituent } from '../matter/constituents.ts';

/** kcal per g and kJ per g by group, Regulation (EU) 1169/2011 Annex XIV. Water, salts, tannin, caffeine, phosphoric acid and what is insoluble give none. */
const FACTORS: readonly { readonly kcal: number; readonly kJ: number; readonly of: readonly Constituent[] }[] = [
  { kcal: 4, kJ: 17, of: ['sucrose', 'glucose', 'fructose', 'lactose', 'maltose', 'other_sugars', 'other_solubles'] },
  { kcal: 2.4, kJ: 10, of: ['polyols'] },
  { kcal: 4, kJ: 17, of: ['casein', 'whey', 'egg_protein', 'other_protein', 'gelatin'] },
  { kcal: 9, kJ: 37, of: ['fat'] },
  { kcal: 7, kJ: 29, of: ['ethanol'] },
  { kcal: 3, kJ: 13, of: ['citric', 'malic', 'tartaric', 'lactic', 'acetic', 'ascorbic', 'quinic', 'succinic', 'other_acid'] },
  { kcal: 2, kJ: 8, of: ['fibre', 'pectin', 'agar', 'methylcellulose', 'xanthan', 'carrageenan', 'gellan', 'other_gum'] },
];

function weights(unit: 'kcal' | 'kJ'): Float64Array {
  const per_g = new Float64Array(CONSTITUENTS.length);
  for (const group of FACTORS) for (const constituent of group.of) per_g[at[constituent]] = group[unit];
  return per_g;
}
const PER_G = { kcal: weights('kcal'), kJ: weights('kJ') };

/**
 * Energy of a content by the factors for food labels. Erythritol, which counts 0, is not told apart from other polyols.
 * @param grams g by constituent from index `from`, at least as many as CONSTITUENTS; further slots are not read
 * @returns kcal
 * @source eu1169_xiv Annex XIV
 */
export function energyOf(grams: ArrayLike<number>, from = 0): number { return weigh(grams, PER_G.kcal, from); }

/**
 * Energy of a content by the factors for food labels, in kJ; not 4.184 times the kcal, the law rounds both.
 * @param grams g by constituent
 * @returns kJ
 * @source eu1169_xiv Annex XIV
 */
export function energyOf_kJ(grams: ArrayLike<number>, from = 0): number { return weigh(grams, PER_G.kJ, from); }

function weigh(grams: ArrayLike<number>, per_g: Float64Array, from: number): number {
  let energy = 0;
  for (let i = 0; i < per_g.length; i++) energy += (grams[from + i] ?? 0) * per_g[i]!;
  return energy;
}
