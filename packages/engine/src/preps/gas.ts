import type { Section, Step } from '../document/types.ts';
import { carbonDioxideHeld, nitrousFactor, siphonOf, siphonPressure } from '../gas/index.ts';
import { volumeAt20 } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context, Vat } from '../program/context.ts';
import { writtenTemperature } from '../program/temperature.ts';

const CO2_G_MOL = 44.0095, N2O_G_MOL = 44.0128;

/** Strength in % vol and sugar in g/L of a block, as gas laws ask for them. */
function solvent(s: Float64Array, block: number): { pct: number; sugar: number; mL: number } {
  const mL = volumeAt20(s, block);
  if (!(mL > 0)) return { pct: 0, sugar: 0, mL: 0 };
  const sugar = s[block + at.sucrose]! + s[block + at.glucose]! + s[block + at.fructose]! + s[block + at.lactose]! + s[block + at.maltose]! + s[block + at.other_sugars]!;
  return { pct: (s[block + at.ethanol]! / 0.789239 / mL) * 100, sugar: (sugar / mL) * 1000, mL };
}

/**
 * A siphon charged with N2O: the gas goes in, and the pressure at which it rests is a figure of the prep.
 * @source sander-n2o; common-practice gross volumes
 */
export function chargeNitrous(ctx: Context, section: Section, v: Vat, step: Step, rest_C: number): void {
  const size = step.vessel_mL?.value ?? Number(ctx.tables.assumption('siphon/size')?.value ?? 500);
  if (!step.vessel_mL) ctx.assume('siphon/size', step.path, 'tool');
  const known = `siphon/gross volume/${size}`;
  const gross = ctx.tables.assumption(known) ? ctx.assume(known, step.path, 'tool')
    : ctx.book.add({ key: known, value: siphonOf(size).gross_mL, unit: 'mL', spread: { kind: 'lognormal', cv: 0.08 }, grade: 'trade', source: 'common-practice', role: 'tool', at: step.path });
  const gas = ctx.assume('siphon/charger gas', step.path, 'tool');
  const count = step.gas?.chargers ?? siphonOf(size).foam;
  if (step.gas?.chargers === undefined) ctx.assume('siphon/chargers per 500 ml foam', step.path, 'tool');
  ctx.ops.push(({ s, x }) => { s[v.liquid + slot.n2o_mol] = (count * x[gas]!) / N2O_G_MOL; });
  ctx.probe('pressure', `prep:${section.key}`, 'bar', 'henry-and-headspace', ['sander-n2o'], ({ s, x }, out, i) => {
    const { pct, sugar, mL } = solvent(s, v.liquid);
    out[i] = mL > 0 && mL < x[gross]! ? siphonPressure(count * x[gas]!, mL / 1000, x[gross]! / 1000, s[rest_C]!, nitrousFactor(pct, sugar / 10)) : NaN;
  }, true);
}

/**
 * A liquid carbonated under a gauge pressure at a temperature, to rest: what CO2 it then holds.
 * @source carroll-1991; eu-wine
 */
export function carbonate(ctx: Context, section: Section, v: Vat, step: Step): void {
  const written = step.pressure_kPa;
  const pressure = written
    ? ctx.spread(`carbonate/pressure/${step.path.join('/')}`, 'tool/pressure gauge', written.value, 'kPa', 'tool', { at: step.path })
    : ctx.assume('carbonate/pressure', step.path, 'tool');
  const celsius = step.temperature ? writtenTemperature(ctx, step.temperature.celsius, step.path, `carbonate/temperature/${step.path.join('/')}`) : ctx.assume('carbonate/temperature', step.path, 'place');
  const ambient = 101.325, bar = written ? 1 : 100;
  ctx.ops.push(({ s, x }) => {
    const { pct, sugar, mL } = solvent(s, v.liquid);
    const kPa = x[pressure]! * bar + (written?.absolute ? 0 : ambient);
    s[v.liquid + slot.co2_mol] = mL > 0 ? (carbonDioxideHeld(kPa, x[celsius]!, pct, sugar) * mL) / 1000 / CO2_G_MOL : 0;
  });
  ctx.probe('co2', `prep:${section.key}`, 'g/L', 'henry-in-ethanol-and-sugar', ['carroll-1991', 'eu-wine'], ({ s }, out, i) => {
    const mL = volumeAt20(s, v.liquid);
    out[i] = mL > 0 ? ((s[v.liquid + slot.co2_mol]! * CO2_G_MOL) / mL) * 1000 : NaN;
  }, true);
}
