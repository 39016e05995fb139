import type { Step } from '../document/types.ts';
import { bottlePressure, carbonDioxideFromSugar, carbonDioxideHeld } from '../gas/index.ts';
import { ETHANOL_G_ML, strengthIn, volumeAt20 } from '../liquids/index.ts';
import { slot } from '../matter/constituents.ts';
import type { Context, Noted, Vat } from '../program/context.ts';
import { CO2_G_MOL } from '../program/sparkle.ts';
import { behindStep } from '../program/words.ts';
import { hexoseOf, yeastOf } from './ferment.ts';
import { solvent } from './gas.ts';

/** One atmosphere, kPa. @source definition */
const ATMOSPHERE = 101.325;
/** Does this step close the vessel, or is it done in one that is closed? @source none - definition */
export const closes = (step: Step): boolean => /^(bottle|vacuum)$/.test(step.verb) || step.flags.includes('closed');
/** Is it open from here on? @source none - definition */
export const opens = (step: Step): boolean => /strain$|^(pour|boil|reduce|serve)$/.test(step.verb) && !step.flags.includes('closed');

/** An open liquid keeps no more CO2 than stands in balance with an atmosphere of it. @source carroll-1991; eu-wine */
export function breathes(ctx: Context, v: Vat): void {
  ctx.ops.push(({ s }) => {
    const { pct, sugar, mL } = solvent(s, v.liquid), most = (carbonDioxideHeld(ATMOSPHERE, Math.max(0, s[v.celsius]!), pct, sugar) * mL) / 1000 / CO2_G_MOL;
    if (s[v.liquid + slot.co2_mol]! > most) s[v.liquid + slot.co2_mol] = most;
  });
}

/**
 * What the gas presses in a closed bottle at the end of a step, in bar on the gauge, and what it would come to in the room if yeast went on until its sugar
 * or its strength stops it. CO2 is shared between liquid and headspace; the air shut in with it adds up to an atmosphere. `shut`: the step that closed it.
 * @source carroll-1991; eu-wine; common-practice how full a bottle is and how much air is in it
 */
export function presses(ctx: Context, noted: Noted, v: Vat, step: Step, shut: Step, celsius: number): void {
  const { tables, document } = ctx, key = 'bottle/headspace', sized = step.vessel_mL ?? shut.vessel_mL, size = sized?.value;
  const room = size === undefined ? ctx.assume(key, shut.path, 'tool', key, behindStep(shut, tables.assumption(key)!.say, document.text)) : -1;
  const air = ctx.middle('bottle/air left', 'bottle/air left', 'share', 'tool', { at: shut.path });
  const { stops, gives } = yeastOf(ctx, step), warm = ctx.assume('place/room', shut.path, 'place');
  const { live } = noted, bar = ctx.layout.take(4), full = bar + 1, at_C = bar + 2, dissolved = bar + 3;
  ctx.ops.push(({ s, x }) => {
    const { liquid } = v, mL = volumeAt20(s, liquid), { pct, sugar } = solvent(s, liquid);
    s[at_C] = x[celsius]!;
    const head = size === undefined ? (mL * x[room]!) / (1 - x[room]!) : Math.max(0, Math.max(1, Math.round(mL / size)) * size - mL);
    const gauge = (kPa: number): number => Math.max(0, kPa + (x[air]! - 1) * ATMOSPHERE) / 100, cold = Math.max(0, x[celsius]!);
    const grams = s[liquid + slot.co2_mol]! * CO2_G_MOL, kPa = mL > 0 ? bottlePressure(grams, mL / 1000, head / 1000, cold, pct, sugar) : 0;
    s[bar] = gauge(kPa);
    s[dissolved] = grams > 0 ? Math.min(1, (carbonDioxideHeld(100, cold, pct, sugar) * kPa * mL) / 1e5 / grams) : 1;
    s[full] = s[bar]!;
    if (!live || !(mL > 0)) return;
    // as much of the sugar as yeast can eat before its own alcohol stops it
    const most = (Math.max(0, x[stops]! - pct) * mL * ETHANOL_G_ML) / 100 / (x[gives]! * (1 - carbonDioxideFromSugar(1)));
    const eaten = Math.min(hexoseOf(s, liquid), most), strong = pct + strengthIn(eaten * x[gives]! * (1 - carbonDioxideFromSugar(1)), mL);
    s[full] = Math.max(s[bar], gauge(bottlePressure(grams + carbonDioxideFromSugar(eaten), mL / 1000, head / 1000, x[warm]!, strong, Math.max(0, sugar - (1000 * eaten) / mL))));
  });
  noted.closed.push({ step, shut, bar, full, celsius: at_C, dissolved });
}

/** What a bottle that stayed closed tells: how its gas presses and at which temperature; opened, what was dissolved is what is left. @source none - definition */
export function tellClosed(ctx: Context, key: string, v: Vat, noted: Noted): void {
  const last = noted.closed[noted.closed.length - 1], of = `gas:${key}`;
  if (!last) return;
  ctx.ops.push(({ s }) => { s[v.liquid + slot.co2_mol]! *= s[last.dissolved]!; });
  if (ctx.probed(of, 'pressure')) return;
  ctx.probe('pressure', of, 'bar', 'closed-bottle', ['carroll-1991', 'eu-wine'], ({ s }, out, i) => { out[i] = s[last.bar]!; }, true);
  ctx.probe('at', of, '°C', 'sum', ['common-practice'], ({ s }, out, i) => { out[i] = s[last.celsius]!; }, true);
  ctx.probe('closed', of, '', 'sum', ['common-practice'], (_w, out, i) => { out[i] = 1; }, true);
}
