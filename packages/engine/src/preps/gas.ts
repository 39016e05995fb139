import type { Section, Step } from '../document/types.ts';
import { carbonDioxideHeld, nitrousFactor, overrunBound, siphonOf, siphonPressure } from '../gas/index.ts';
import { strengthIn, volumeAt20 } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context, Noted, Vat } from '../program/context.ts';
import type { ProbeOp } from '../program/program.ts';
import { givenFor } from '../program/given.ts';
import { CO2_G_MOL } from '../program/sparkle.ts';
import { writtenTemperature } from '../program/temperature.ts';
import { behindStep, plain } from '../program/words.ts';
import { tellCarbonated, tellSiphon } from './pressed.ts';

const N2O_G_MOL = 44.0128;

/** Strength in % vol and sugar in g/L of a block, as gas laws ask for them. */
export function solvent(s: Float64Array, block: number): { pct: number; sugar: number; mL: number } {
  const mL = volumeAt20(s, block);
  if (!(mL > 0)) return { pct: 0, sugar: 0, mL: 0 };
  const sugar = s[block + at.sucrose]! + s[block + at.glucose]! + s[block + at.fructose]! + s[block + at.lactose]! + s[block + at.maltose]! + s[block + at.other_sugars]!;
  return { pct: strengthIn(s[block + at.ethanol]!, mL), sugar: (sugar / mL) * 1000, mL };
}

/**
 * A siphon charged with N2O: the gas goes in, and the pressure at which it rests is a figure of the prep. `opened`: it is vented or strained later.
 * @source sander-n2o; common-practice gross volumes
 */
export function chargeNitrous(ctx: Context, section: Section, v: Vat, step: Step, rest_C: number, noted: Noted, opened = false): void {
  const { tables, document } = ctx, behind = (key: string) => behindStep(step, tables.assumption(key)!.say, document.text);
  const size = step.vessel_mL?.value ?? Number(tables.assumption('siphon/size')!.value);
  if (!step.vessel_mL) ctx.assume('siphon/size', step.path, 'tool', 'siphon/size', behind('siphon/size'));
  const known = `siphon/gross volume/${size}`, usual = siphonOf(size).gross_mL;
  const gross = tables.assumption(known) || givenFor(document, known) ? ctx.assume(tables.assumption(known) ? known : 'siphon/gross volume/500', step.path, 'tool', known)
    : ctx.spread(known, 'siphon/gross volume', usual, 'mL', 'tool', { at: step.path, assumed: { say: `siphon holds: ${plain(usual)} ml` } });
  const gas = ctx.assume('siphon/charger gas', step.path, 'tool');
  // so many for each half litre the siphon is sold as
  const many = step.gas?.chargers === undefined ? ctx.assume('siphon/chargers per 500 ml foam', step.path, 'tool', 'siphon/chargers per 500 ml foam', behindStep(step, `with ${Math.max(1, Math.round(Number(tables.assumption('siphon/chargers per 500 ml foam')!.value) * (size / 500)))} N2O`, document.text)) : -1;
  const count = (x: Float64Array) => (many >= 0 ? Math.max(1, x[many]! * (size / 500)) : step.gas!.chargers!);
  const grams = (x: Float64Array) => count(x) * x[gas]!;
  const celsius = ctx.layout.take(2), filled = celsius + 1;
  ctx.ops.push(({ s, x }) => {
    s[v.liquid + slot.n2o_mol] = grams(x) / N2O_G_MOL;
    s[celsius] = s[v.celsius]!;
    s[filled] = volumeAt20(s, v.liquid) + s[v.liquid + slot.unknown_g]!;
  });
  const pressureAt = (warmth: number): ProbeOp => ({ s, x }, out, i) => {
    const { pct, sugar, mL } = solvent(s, v.liquid);
    out[i] = mL > 0 && mL < x[gross]! ? siphonPressure(grams(x), mL / 1000, x[gross]! / 1000, s[warmth]!, nitrousFactor(pct, sugar / 10)) : NaN;
  };
  const bound: ProbeOp = ({ s, x }, out, i) => {
    const { pct, sugar, mL } = solvent(s, v.liquid);
    out[i] = overrunBound(grams(x), mL / 1000, x[gross]! / 1000, s[rest_C]!, nitrousFactor(pct, sugar / 10));
  };
  noted.charge = { step, nominal_mL: size, gas: grams, celsius, mL: filled, pressure: pressureAt(celsius), bound };
  // what is open again has no pressure of its own
  if (opened) return;
  tellSiphon(ctx, section.key, { chargers: count, gas: grams, gross, filled, celsius, charged: noted.charge.pressure });
  ctx.probe('pressure', `prep:${section.key}`, 'bar', 'henry-and-headspace', ['sander-n2o'], pressureAt(rest_C), true);
}

/** Gas comes off a siphon: what was dissolved bubbles out, in minutes. @source common-practice */
export function vent(ctx: Context, v: Vat): void { ctx.ops.push(({ s }) => { s[v.liquid + slot.n2o_mol] = 0; }); }

/** g/L of CO2 that a block would hold at 3.5 bar gauge and 2 °C: as much as a good home rig gives. @source carroll-1991; eu-wine */
export function colderHeld(s: Float64Array, block: number): number {
  const { pct, sugar, mL } = solvent(s, block);
  return mL > 0 ? carbonDioxideHeld(450, 2, pct, sugar) : 0;
}

/**
 * A liquid carbonated under a gauge pressure at a temperature, to rest: what CO2 it then holds.
 * @returns the input of its temperature
 * @source carroll-1991; eu-wine
 */
export function carbonate(ctx: Context, section: Section, v: Vat, step: Step): number {
  const written = step.pressure_kPa;
  const pressure = written
    ? ctx.spread(`carbonate/pressure/${step.path.join('/')}`, 'tool/pressure gauge', written.value, 'kPa', 'tool', { at: step.path })
    : ctx.assume('carbonate/pressure', step.path, 'tool', 'carbonate/pressure', behindStep(step, ctx.tables.assumption('carbonate/pressure')!.say, ctx.document.text));
  const celsius = step.temperature && !step.temperature.word ? writtenTemperature(ctx, step.temperature.celsius, step.path, `carbonate/temperature/${step.path.join('/')}`)
    : ctx.assume('carbonate/temperature', step.path, 'place', 'carbonate/temperature', behindStep(step, ctx.tables.assumption('carbonate/temperature')!.say, ctx.document.text));
  ctx.sparkling.add(v.liquid);
  const air = written?.absolute ? -1 : ctx.assume('place/pressure', step.path, 'place'), bar = written ? 1 : 100;
  tellCarbonated(ctx, section.key, { kPa: (x) => x[pressure]! * bar, absolute: air < 0, celsius });
  ctx.ops.push(({ s, x }) => {
    const { pct, sugar, mL } = solvent(s, v.liquid);
    const kPa = x[pressure]! * bar + (air >= 0 ? x[air]! / 10 : 0);
    s[v.liquid + slot.co2_mol] = mL > 0 ? (carbonDioxideHeld(kPa, x[celsius]!, pct, sugar) * mL) / 1000 / CO2_G_MOL : 0;
  });
  tellDissolved(ctx, section.key, v);
  return celsius;
}

/** CO2 of a prep in g/L, told once. @source carroll-1991; eu-wine */
export function tellDissolved(ctx: Context, key: string, v: Vat): void {
  if (ctx.probed(`prep:${key}`, 'co2')) return;
  ctx.probe('co2', `prep:${key}`, 'g/L', 'henry-in-ethanol-and-sugar', ['carroll-1991', 'eu-wine'], ({ s }, out, i) => {
    const mL = volumeAt20(s, v.liquid);
    out[i] = mL > 0 ? ((s[v.liquid + slot.co2_mol]! * CO2_G_MOL) / mL) * 1000 : NaN;
  }, true);
}
