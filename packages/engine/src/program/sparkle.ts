import type { Step } from '../document/types.ts';
import { gramsPerLitre, leftWhenShaken, lostOnPouring, molarMass } from '../gas/index.ts';
import { spreadKey } from '../larder/index.ts';
import type { Ingredient } from '../larder/types.ts';
import { volumeAt20 } from '../liquids/index.ts';
import { slot } from '../matter/constituents.ts';
import type { Context, Put, Vat } from './context.ts';
import { UNKNOWN_LIMIT } from './figures.ts';

/** g of CO2 in a mole. @source crc-co2 */
export const CO2_G_MOL = molarMass('CO2');
/** Verbs that shake the gas out, and those that only stir. */
const ROUGH = /shake|blend|throw|roll|whisk|muddle|boil/, GENTLE = /^(stir|swizzle)$/;

/** How much gas a bottle of the larder holds, as an input in volumes at 0 °C and 1 atm; -1 for what is still. */
export function volumesOf(ctx: Context, row: Ingredient | undefined, name: string): number {
  const cell = row?.cells['gas_volumes'];
  return row && cell && cell.value > 0 ? ctx.spread(`gas/${name}`, spreadKey(row, 'gas_volumes', ctx.tables), cell.value, 'volumes', 'nature', { from: `craft ${row.id} gas_volumes`, bounds: { min: 0 } }) : -1;
}
/** mol of CO2 in a mL that holds so many volumes. @source crc-co2 */
export const molarOf = (volumes: number): number => gramsPerLitre(volumes) / CO2_G_MOL / 1000;

/** What a thing with gas in it loses as it is poured to `block`, to which it was added before. */
export function poured(ctx: Context, p: Put, block: number): void {
  const { prep, ingredient, block: one, mL } = p.source, { start } = p;
  if (prep ? !ctx.sparkling.has(prep.content.phase('liquid')) : !ingredient?.cells['gas_volumes']) return;
  ctx.sparkling.add(block);
  const factor = ctx.spread('gas/lost on pouring', 'gas/lost on pouring', 1, 'share', 'model', { at: p.measure.path });
  ctx.ops.push(({ s, x }) => {
    const mol = s[one + slot.co2_mol]!, celsius = start.input >= 0 ? x[start.input]! : s[start.offset]!;
    s[block + slot.co2_mol]! -= s[p.g]! * mol * Math.min(0.95, x[factor]! * lostOnPouring((mol * CO2_G_MOL * 1000) / s[mL]!, celsius));
  });
}

/** What a step drives out of a vessel that holds something sparkling. */
export function driveOut(ctx: Context, v: Vat, step: Step): void {
  if (!ctx.sparkling.has(v.liquid)) return;
  if (ROUGH.test(step.verb)) {
    ctx.ops.push(({ s }) => {
      const most = (leftWhenShaken(Math.max(0, s[v.celsius]!)) * volumeAt20(s, v.liquid)) / 1000 / CO2_G_MOL;
      if (s[v.liquid + slot.co2_mol]! > most) s[v.liquid + slot.co2_mol] = most;
    });
  } else if (GENTLE.test(step.verb)) {
    const share = ctx.middle('gas/lost on stirring', 'gas/lost on stirring', 'share', 'model', { at: step.path });
    ctx.ops.push(({ s, x }) => { s[v.liquid + slot.co2_mol]! *= 1 - x[share]!; });
  }
}

/** CO2 of a drink in g/L: a figure of what has something sparkling in it. `block`: what it is made of, `volume`: offset of its mL. */
export function sparkleOf(ctx: Context, of: string, block: number, volume: number): void {
  ctx.probe('co2', of, 'g/L', 'poured-gas', ['champagne-serving-2010', 'pmc-beer-co2', 'common-practice'], ({ s }, out, i) => {
    out[i] = s[volume]! > 0 && s[block + slot.unknown_g]! <= UNKNOWN_LIMIT * s[volume]! ? (s[block + slot.co2_mol]! * CO2_G_MOL * 1000) / s[volume]! : NaN;
  });
}
