import type { Measure } from '../document/types.ts';
import { ACIDS, chargeAt, constantsAt, molarInto, near } from '../acids/index.ts';
import type { Ingredient } from '../larder/types.ts';
import { alcoholic, balanceOf, spreadKey } from '../larder/index.ts';
import { ETHANOL_G_ML, strengthOf, volumeAt20 } from '../liquids/index.ts';
import { scaleMatter } from '../matter/block.ts';
import { CONSTITUENTS, at, slot, type Constituent } from '../matter/constituents.ts';
import type { Context } from './context.ts';
import type { Said } from './inputs.ts';
import { behindThing } from './words.ts';

/** Sugars in the order of the constituents. */
export const SUGARS = [at.sucrose, at.glucose, at.fructose, at.lactose, at.maltose, at.other_sugars];
const ALL_ACIDS = Array.from({ length: ACIDS }, (_, k) => at.citric + k);

/** What of a row is drawn together, by which column of the table of spreads, from how many grams per 100 g on. */
const GROUPS: readonly { readonly what: string; readonly column: string; readonly from: number; readonly parts: readonly Constituent[] }[] = [
  { what: 'fat', column: 'fat_g', from: 0.5, parts: ['fat'] },
  { what: 'protein', column: 'protein_g', from: 0.5, parts: ['casein', 'whey', 'egg_protein', 'other_protein'] },
  { what: 'other solubles', column: 'carb_g', from: 0.5, parts: ['other_solubles', 'polyols'] },
];

/** The input that says by weight or by volume, and what of the sugar there is at its value. */
export interface Basis { readonly input: number; readonly sugar: (by: number) => number }

/** Inputs that make a bottle, and what they do to its nominal grams per 100 g. */
export interface Drawn { readonly inputs: readonly number[]; readonly make: (s: Float64Array, x: Float64Array, block: number) => void }

/** The acid a row has most of. */
function mainAcid(grams: Float64Array): number {
  let most: number = at.citric;
  for (const i of ALL_ACIDS) if (grams[i]! > grams[most]!) most = i;
  return most;
}

/**
 * How a bottle may differ from its row: its strength as the label's tolerance has it, its sugar, acids, fat, protein and other solubles as its class varies.
 * `grams`: per 100 g at the nominal values; `basis`: where a ratio may be by weight or by volume.
 * @source none - definition
 */
export function drawnOf(ctx: Context, m: Measure, row: Ingredient | undefined, name: string, grams: Float64Array, strength: number | undefined, basis: Basis | null): Drawn {
  const path = { at: m.path };
  const label = row ? alcoholic(row) : { strength: strength ?? 40, tolerance: 'label/strength/spirits' };
  const q0 = strength ?? label?.strength;
  let iStrength = -1, iSugar = -1, iAcid = -1;
  if (label && q0 !== undefined) {
    const written = strength !== undefined;
    // a bottle whose strength is not said is any of its kind; one whose label is read is as true as the law has it
    const open = `label/strength not said/${row?.category ?? ''}`;
    iStrength = ctx.spread(`bottle/${name}/strength`, written || !ctx.tables.spread(open) ? label.tolerance : open, q0, '% vol', 'label',
      { ...path, bounds: { min: 0, max: 100 }, ...(written ? { grade: 'compiled' as const, from: 'written' } : row ? { from: `ingredients ${row.id} abv_pct`, assumed: strengthSaid(m, name, q0) } : {}) });
  } else if (row && /^(spirit|liqueur|fortified|wine|beer|bitters)$/.test(row.category) && !row.cells['alcohol_g']) {
    ctx.unknown.push({ measure: m, why: 'strength-unknown' });
  }
  const sugars = SUGARS.reduce((t, i) => t + grams[i]!, 0), acids = ALL_ACIDS.reduce((t, i) => t + grams[i]!, 0);
  const made = m.ratio !== undefined || row?.category === 'syrup';
  if (sugars > 0.2 && sugars < 95 && (row || m.ratio)) {
    iSugar = made ? ctx.share(`syrup/${name}/sugar`, 'syrup/strength made', sugars, 'nature', { ...path, bounds: { min: 0, max: 100 / sugars }, ...(row && !m.ratio ? { from: `ingredients ${row.id} sugars_g` } : { from: 'written' }) })
      : ctx.share(`larder/${row!.id}/sugars`, spreadKey(row!, 'sugars_g', ctx.tables), sugars, 'nature', { ...path, bounds: { min: 0, max: 95 / sugars }, from: `ingredients ${row!.id} sugars_g` });
  }
  if (row && acids > 0.05 && acids < 60) {
    // what is pressed from one lot of fruit is as sour in the juice as in the fruit
    const fruit = /^(lime|lemon|orange)-(juice|flesh)/.exec(row.id)?.[1];
    const main = mainAcid(grams), column = `${CONSTITUENTS[main]!}_g`;
    // the row is about the acid there is most of; the others go with it
    iAcid = ctx.share(fruit ? `fruit/${fruit}/citric` : `larder/${row.id}/acids`, fruit ? `fruit/${fruit}/citric` : spreadKey(row, column, ctx.tables), grams[main]!, 'nature', { ...path, from: `ingredients ${row.id} ${column}` });
  }
  const groups: { readonly input: number; readonly parts: readonly number[] }[] = [];
  if (row && !made && row.category !== 'fat') {
    for (const g of GROUPS) {
      const parts = g.parts.map((p) => at[p]), sum = parts.reduce((t, i) => t + grams[i]!, 0);
      if (sum < g.from || sum > 60) continue;
      groups.push({ input: ctx.share(`larder/${row.id}/${g.what}`, spreadKey(row, g.column, ctx.tables), sum, 'nature', { ...path, from: `ingredients ${row.id} ${g.column}` }), parts });
    }
  }
  const volume0 = volumeAt20(grams, 0), rate = waterPerVolume(grams, volume0);
  const inputs = [iStrength, iSugar, iAcid, basis?.input ?? -1, ...groups.map((g) => g.input)].filter((i) => i >= 0);
  const make = (s: Float64Array, x: Float64Array, block: number) => {
    if (iSugar >= 0 || basis) {
      const f = (iSugar >= 0 ? x[iSugar]! : 1) * (basis ? basis.sugar(x[basis.input]!) : 1);
      for (let i = 0; i < SUGARS.length; i++) s[block + SUGARS[i]!]! *= f;
    }
    if (iAcid >= 0) for (let i = 0; i < ACIDS; i++) s[block + at.citric + i]! *= x[iAcid]!;
    for (let k = 0; k < groups.length; k++) { const g = groups[k]!; for (let i = 0; i < g.parts.length; i++) s[block + g.parts[i]!]! *= x[g.input]!; }
    if (iStrength >= 0) fillToLabel(s, block, x[iStrength]!, volume0, rate);
    else {
      let others = 0;
      for (let i = 0; i < CONSTITUENTS.length; i++) others += i === at.water ? 0 : s[block + i]!;
      s[block + at.water] = Math.max(0, 100 - others - s[block + slot.unknown_g]!);
    }
  };
  return { inputs, make };
}

/** The words that give a bottle its strength, behind its name. @source none - definition */
export function strengthSaid(m: Measure, name: string, pct: number): Said {
  return { say: `${name} ${pct} %`, key: `strength/${name}`, splices: behindThing(m, `${pct} %`) };
}

/** The label speaks of a volume: solutes per litre stay, ethanol follows the label, water fills up to the litre. */
function fillToLabel(s: Float64Array, block: number, strength: number, volume0: number, usualRate: number): void {
  scaleMatter(s, block, block, 1 / volume0);
  s[block + at.ethanol] = (strength / 100) * ETHANOL_G_ML;
  let before = 0, waterBefore = 0;
  for (let i = 0; i < 8; i++) {
    const water = s[block + at.water]!;
    const off = 1 - volumeAt20(s, block);
    if (Math.abs(off) < 1e-11) return;
    // a secant after the first step: how much water a mL more takes
    const rate = i === 0 ? usualRate : (water - waterBefore) / (before - off);
    before = off; waterBefore = water;
    s[block + at.water] = Math.max(0, water + off * (Number.isFinite(rate) && rate > 0.5 && rate < 1.5 ? rate : usualRate));
    if (s[block + at.water] === water) return;
  }
}

/** Grams of water that a mL more of a bottle takes, as it usually is. */
function waterPerVolume(grams: Float64Array, volume0: number): number {
  const more = Float64Array.from(grams);
  more[at.water]! += 1;
  const rate = 1 / (volumeAt20(more, 0) - volume0);
  return rate > 0.5 && rate < 1.5 ? rate : 0.98;
}

/** The salts of a bottle: the charge its strong ions bring per gram, from its own pH where it has one. */
export interface Salts { readonly inputs: readonly number[]; readonly charge: (s: Float64Array, x: Float64Array, block: number, mL: number, total: number) => number }

/** Scratch of `charge`, written before it is read. */
const perLitre = new Float64Array(ACIDS);

/**
 * Charge of the strong ions of a bottle. A row with a pH of its own is balanced in the run: its acids as drawn stand at its pH as drawn. Sets the
 * nominal grams' share without a known pH.
 * @source goldberg-2002 constants; spana-davies activities
 */
export function saltsOf(ctx: Context, m: Measure, row: Ingredient | undefined, grams: Float64Array, stretch: number): Salts {
  const nothing: Salts = { inputs: [], charge: () => 0 };
  if (!row || m.ratio) return nothing;
  const b = balanceOf(row);
  if (b.kind === 'none') return nothing;
  if (b.kind === 'unknown') { grams[slot.ph_unknown_g] = 100; return nothing; }
  if (b.kind !== 'own') {
    const input = b.kind === 'ions' ? ctx.spread(`larder/${row.id}/salts`, 'model/charge from potassium', 1, 'share', 'nature', { at: m.path, from: `ingredients ${row.id} potassium_mg` }) : -1;
    const each = b.charge_mol * stretch;
    return { inputs: input >= 0 ? [input] : [], charge: (_s, x, _block, _mL, total) => (each * (input >= 0 ? x[input]! : 1)) / total };
  }
  const input = ctx.band(`larder/${row.id}/ph`, b.low, b.high, row, { at: m.path });
  const k = constantsAt(20, strengthOf(grams, 0)), start = near();
  return {
    inputs: [input],
    charge: (s, x, block, mL) => {
      molarInto(perLitre, s, block, mL);
      return (chargeAt(perLitre, 0, x[input]!, k, 0, (s[block + at.casein]! / mL) * 1000, start) * mL) / 1000;
    },
  };
}
