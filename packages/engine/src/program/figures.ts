import { ACIDS, molarInto, near, titratableAcidityInto } from '../acids/index.ts';
import { energyOf } from '../larder/index.ts';
import { refractometerBrix, rivalShare, strengthIn, volumeAt20 } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import { wholeMass } from '../matter/block.ts';
import type { Context } from './context.ts';
import { moneyOf } from './shelf.ts';
import { phProbe } from './ph.ts';

/** A figure is withheld where more than this share of the mass has no composition, or no acids. @source none - definition */
export const UNKNOWN_LIMIT = 0.05;

/** The figures that any liquid has, read off its block as the contract defines them; `known`: where its mL at 20 °C stand already, what is unknown in it counted. Gives back where volume and mass stand. @source none - definition */
export function figures(ctx: Context, of: string, block: number, options: { temperature?: number; known?: number } = {}): { readonly volume: number; readonly mass: number } {
  const mol = new Float64Array(ACIDS), start = near(), told = options.known ?? -1;
  // volume and mass once, for all the figures that divide by them
  const volume = ctx.layout.take(1), mass = ctx.layout.take(1), known = ctx.layout.take(1);
  // sweet and strong at once: no table was found, two published rules differ, and which is nearer is not known
  const rival = ctx.spread('model/sweet and strong', 'model/sweet and strong', 0, 'share', 'model', { bounds: { min: -3, max: 3 } });
  ctx.ops.push(({ s, x }) => {
    const mL = told >= 0 ? s[told]! - s[block + slot.unknown_g]! : volumeAt20(s, block), part = x[rival]!;
    s[known] = mL;
    s[volume] = (part === 0 ? mL : mL * (1 + part * rivalShare(s, block))) + s[block + slot.unknown_g]!;
    s[mass] = wholeMass(s, block);
  });
  const put = (name: string, unit: string, method: string, sources: string[], f: (s: Float64Array, mL: number) => number) =>
    ctx.probe(name, of, unit, method, sources, ({ s }, out, i) => {
      out[i] = s[volume]! > 0 && s[block + slot.unknown_g]! <= UNKNOWN_LIMIT * s[mass]! ? f(s, s[volume]!) : NaN;
    });
  ctx.probe('volume', of, 'mL', 'additive-solutes', ['oiml-r22', 'crc-solutions'], ({ s }, out, i) => { out[i] = s[volume]!; });
  ctx.probe('mass', of, 'g', 'sum', [], ({ s }, out, i) => { out[i] = s[mass]!; });
  put('strength', '% vol', 'ethanol-over-volume', ['oiml-r22'], (s, mL) => strengthIn(s[block + at.ethanol]!, mL));
  put('ethanol', 'g', 'sum', [], (s) => s[block + at.ethanol]!);
  put('sugar', 'g/L', 'sum-of-sugars', [], (s, mL) => {
    const b = block;
    return ((s[b + at.sucrose]! + s[b + at.glucose]! + s[b + at.fructose]! + s[b + at.lactose]! + s[b + at.maltose]! + s[b + at.other_sugars]!) / mL) * 1000;
  });
  put('density', 'kg/m3', 'additive-solutes', ['oiml-r22', 'crc-solutions'], (s, mL) => (s[mass]! / mL) * 1000);
  put('brix', '°Bx', 'molar-refraction', ['crc-solutions', 'oiv-refraction', 'lorenz1880'], (s) => refractometerBrix(s, block, s[known]));
  ctx.probe('acidity', of, 'g/L', 'charge-balance-to-8.2', ['goldberg-2002'], ({ s }, out, i) => {
    const mL = s[volume]!;
    if (!(mL > 0) || s[block + slot.acids_unknown_g]! + s[block + slot.unknown_g]! > UNKNOWN_LIMIT * s[mass]!) { out[i] = NaN; start.set = true; return; }
    molarInto(mol, s, block, mL);
    titratableAcidityInto(out, i, mol, 0, (s[block + slot.charge_mol]! / mL) * 1000, 0, start);
    if (out[i]! < 0) out[i] = 0;
  });
  phProbe(ctx, of, block, volume, mass);
  put('energy', 'kcal', 'label-factors', ['eu-1169-2011'], (s) => energyOf(s, block));
  const { currency, digits } = moneyOf(ctx), coins = 10 ** digits;
  ctx.probe('cost', of, currency, 'priced-lines', ['written'], ({ s }, out, i) => { out[i] = s[block + slot.price_minor]! > 0 ? s[block + slot.price_minor]! / coins : NaN; });
  if (options.temperature !== undefined) {
    const t = options.temperature;
    ctx.probe('temperature', of, '°C', 'heat-balance', ['melinder2010'], ({ s }, out, i) => { out[i] = s[mass]! > 0 ? s[t]! : NaN; });
  }
  return { volume, mass };
}
