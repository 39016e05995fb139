import { carbonDioxideFromSugar } from '../gas/index.ts';
import { enthalpy, strengthOf, volumeAt20 } from '../liquids/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { clearBlock } from '../matter/block.ts';
import type { Context, Vat } from '../program/context.ts';
import type { Step } from '../document/types.ts';

/** Sugar in g that a litre loses in a day at WARM °C, and by how many times that is less for TEN K colder. @source common-practice */
const A_DAY = 12, WARM = 24, TEN = 2, DAY = 86400;
/** Share of what stoichiometry allows that becomes ethanol; the rest feeds the yeast. @source common-practice 0.48 of 0.511 g per g */
const YIELD = 0.94;
/** No wild yeast works on above this, % vol; it slows down on the way. @source common-practice */
const STOPS = 14;
/** Hexose from a gram of a double sugar, which takes up water: 360.31 / 342.30. @source definition */
const SPLIT = 1.0526;
const SINGLE = [at.glucose, at.fructose], DOUBLE = [at.sucrose, at.maltose];

/**
 * Yeast eats sugar: a part of it goes each day, less the colder and the stronger the liquid is, never more than there is. Ethanol and CO2 by the equation
 * of alcoholic fermentation, C6H12O6 to 2 C2H5OH and 2 CO2; the gas is taken to leave. Acids that bacteria make beside it are not in it.
 * `celsius`, `seconds`: inputs.
 * @source common-practice how fast; definition what comes of it
 */
export function ferment(ctx: Context, v: Vat, step: Step, celsius: number, seconds: number): void {
  const rate = ctx.spread('ferment/sugar a day', 'ferment/sugar a day', 1, 'share', 'nature', { at: step.path });
  const change = ctx.layout.take(BLOCK);
  ctx.extras.push([change, 1]);
  ctx.ops.push(({ s, x }) => {
    const { liquid } = v;
    clearBlock(s, change);
    let hexose = 0;
    for (const i of SINGLE) hexose += s[liquid + i]!;
    for (const i of DOUBLE) hexose += s[liquid + i]! * SPLIT;
    if (!(hexose > 0)) return;
    const weak = Math.max(0, 1 - (strengthOf(s, liquid) || 0) / STOPS);
    const wanted = A_DAY * x[rate]! * weak * TEN ** ((Math.min(32, x[celsius]!) - WARM) / 10) * (Math.max(0, x[seconds]!) / DAY) * (volumeAt20(s, liquid) / 1000);
    // what is left grows scarce: never more than there is
    const share = 1 - Math.exp(-wanted / hexose), eaten = share * hexose;
    for (const i of SINGLE) s[change + i]! -= share * s[liquid + i]!;
    for (const i of DOUBLE) { const g = share * s[liquid + i]!; s[change + i]! -= g; s[change + at.water]! -= (SPLIT - 1) * g; }
    s[change + at.ethanol] = YIELD * (eaten - carbonDioxideFromSugar(eaten));
    // what yeast kept for itself lies on the floor with it
    s[change + at.insolubles] = (1 - YIELD) * (eaten - carbonDioxideFromSugar(eaten));
    for (let i = 0; i < slot.enthalpy_J; i++) s[liquid + i]! += s[change + i]!;
    s[liquid + slot.enthalpy_J] = enthalpy(s, liquid, s[v.celsius]!);
  });
}
