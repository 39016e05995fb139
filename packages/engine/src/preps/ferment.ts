import { carbonDioxideFromSugar } from '../gas/index.ts';
import { enthalpy, strengthOf, volumeAt20 } from '../liquids/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { clearBlock } from '../matter/block.ts';
import type { Context, Vat } from '../program/context.ts';
import { CO2_G_MOL } from '../program/sparkle.ts';
import type { Step } from '../document/types.ts';
import table from '../../../../data/physics/ferment.json' with { type: 'json' };

const { sugar_a_day: A_DAY, ten_K: TEN, warmest_C: WARMEST, coldest_C: COLDEST, full_C: FULL } = table, DAY = 86400;
/** Hotter than this no yeast lives on, °C. @source common-practice */
export const KILLED = table.killed_C.value;
/** Hexose from a gram of a double sugar, which takes up water: 360.31 / 342.30. @source definition */
const SPLIT = 1.0526;
const SINGLE = [at.glucose, at.fructose], DOUBLE = [at.sucrose, at.maltose];

/** Hexose in g that yeast can make of a block: glucose and fructose, cane sugar and maltose once they are split. @source definition */
export function hexoseOf(s: Float64Array, block: number): number {
  let hexose = 0;
  for (const i of SINGLE) hexose += s[block + i]!;
  for (const i of DOUBLE) hexose += s[block + i]! * SPLIT;
  return hexose;
}

/** g of sugar that a litre loses in a day at °C, before strength slows it. @source common-practice */
export function eatenADay(celsius: number): number {
  const awake = Math.min(1, Math.max(0, (celsius - COLDEST.value) / (FULL.value - COLDEST.value)));
  return A_DAY.value * awake * TEN.value ** ((Math.min(WARMEST.value, celsius) - A_DAY.at_C) / 10);
}

/** What yeast is like here, as inputs: the strength in % vol at which it stops, and the share of the alcohol that stoichiometry allows. @source common-practice */
export function yeastOf(ctx: Context, step: Step): { readonly stops: number; readonly gives: number } {
  return { stops: ctx.middle('ferment/stops at', 'ferment/stops at', '% vol', 'nature', { at: step.path }), gives: ctx.middle('ferment/share of alcohol', 'ferment/share of alcohol', 'share', 'nature', { at: step.path }) };
}

/**
 * Yeast eats sugar: a part of it goes each day, less the colder and the stronger the liquid is, never more than there is. Ethanol and CO2 by the equation
 * of alcoholic fermentation, C6H12O6 to 2 C2H5OH and 2 CO2; the gas is put to the liquid's, and the vessel says what of it stays. Acids that bacteria
 * make beside it are not in it. `celsius`, `seconds`: inputs, the time -1 where none is known: nothing goes on then.
 * @source common-practice how fast; definition what comes of it
 */
export function ferment(ctx: Context, v: Vat, step: Step, celsius: number, seconds: number): void {
  const rate = ctx.spread('ferment/sugar a day', 'ferment/sugar a day', 1, 'share', 'nature', { at: step.path }), { stops, gives } = yeastOf(ctx, step);
  const change = ctx.layout.take(BLOCK);
  ctx.extras.push([change, 1]);
  ctx.sparkling.add(v.liquid);
  ctx.ops.push(({ s, x }) => {
    const { liquid } = v;
    clearBlock(s, change);
    const hexose = hexoseOf(s, liquid);
    if (!(hexose > 0)) return;
    const days = seconds >= 0 ? Math.max(0, x[seconds]!) / DAY : 0, weak = Math.max(0, 1 - (strengthOf(s, liquid) || 0) / x[stops]!);
    const wanted = eatenADay(x[celsius]!) * x[rate]! * weak * days * (volumeAt20(s, liquid) / 1000);
    // what is left grows scarce: never more than there is
    const share = 1 - Math.exp(-wanted / hexose), eaten = share * hexose, gas = carbonDioxideFromSugar(eaten);
    for (const i of SINGLE) s[change + i]! -= share * s[liquid + i]!;
    for (const i of DOUBLE) { const g = share * s[liquid + i]!; s[change + i]! -= g; s[change + at.water]! -= (SPLIT - 1) * g; }
    s[change + at.ethanol] = x[gives]! * (eaten - gas);
    // what yeast kept for itself lies on the floor with it
    s[change + at.insolubles] = (1 - x[gives]!) * (eaten - gas);
    for (let i = 0; i < slot.enthalpy_J; i++) s[liquid + i]! += s[change + i]!;
    s[liquid + slot.co2_mol]! += gas / CO2_G_MOL;
    s[liquid + slot.enthalpy_J] = enthalpy(s, liquid, s[v.celsius]!);
  });
}
