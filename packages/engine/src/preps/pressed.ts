import type { Context } from '../program/context.ts';
import type { ProbeOp } from '../program/program.ts';

/** bar of one atmosphere. @source definition */
const ATMOSPHERE_BAR = 1.01325;
type Given = (x: Float64Array) => number;

/**
 * A charged siphon as it is told: gas in g, chargers, what it holds to the brim, how full it was filled and what is free above it in mL;
 * bar as charged and at which temperature. `filled`, `celsius`: offsets; `gross`: input, mL.
 * @source none - definition
 */
export function tellSiphon(ctx: Context, key: string, o: { readonly chargers: Given; readonly gas: Given; readonly gross: number; readonly filled: number; readonly celsius: number; readonly charged: ProbeOp }): void {
  const of = `gas:${key}`;
  const tell = (name: string, unit: string, op: ProbeOp): void => ctx.probe(name, of, unit, name === 'charged' ? 'henry-and-headspace' : 'sum', name === 'charged' ? ['sander-n2o'] : ['common-practice'], op, true);
  tell('chargers', '', ({ x }, out, i) => { out[i] = o.chargers(x); });
  tell('gas', 'g', ({ x }, out, i) => { out[i] = o.gas(x); });
  tell('gross', 'mL', ({ x }, out, i) => { out[i] = x[o.gross]!; });
  tell('fill', 'mL', ({ s }, out, i) => { out[i] = s[o.filled]!; });
  tell('headspace', 'mL', ({ s, x }, out, i) => { out[i] = Math.max(0, x[o.gross]! - s[o.filled]!); });
  tell('charged', 'bar', o.charged);
  tell('charged_at', '°C', ({ s }, out, i) => { out[i] = s[o.celsius]!; });
}

/**
 * A carbonated liquid as it is told: bar on the gauge while it takes up its gas, and at which temperature. `kPa`: the pressure as written or assumed.
 * @source none - definition
 */
export function tellCarbonated(ctx: Context, key: string, o: { readonly kPa: Given; readonly absolute: boolean; readonly celsius: number }): void {
  const of = `gas:${key}`;
  ctx.probe('pressure', of, 'bar', 'sum', ['common-practice'], ({ x }, out, i) => { out[i] = o.kPa(x) / 100 - (o.absolute ? ATMOSPHERE_BAR : 0); }, true);
  ctx.probe('at', of, '°C', 'sum', ['common-practice'], ({ x }, out, i) => { out[i] = x[o.celsius]!; }, true);
}
