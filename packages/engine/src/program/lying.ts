import { enthalpyWithIce, heatCapacity, iceAt, temperatureOf } from '../liquids/index.ts';
import { slot } from '../matter/constituents.ts';
import { rootBetween } from '../numeric/index.ts';
import type { Context, Vat } from './context.ts';
import { depression, mayHoldIce } from './frozen.ts';

/**
 * Pieces that lie in a liquid - fruit, peel, herbs, leaves of tea - are as warm as it is: what goes in warmer or colder shares its heat out over both at once
 * (pieces of a centimetre take a minute or two), and pieces come along with a liquid that is warmed or cooled. Their matter stays their own: nothing is mixed for heat.
 */

/** Colder than this nothing is followed, °C; the temperature is found within CLOSE of a kelvin, in no more than so many steps. */
const LOWEST_C = -60, CLOSE = 1e-9, MOST_STEPS = 80;

/** Block of the pieces that lie in a liquid, -1 where none do. */
export function piecesIn(v: Vat): number { return v.content.has('solids') ? v.content.phase('solids') : -1; }

/** Before something goes in: what lay there already is as warm as the liquid has become, with the ice that stands in balance at that where the mix may hold any. */
export function followed(ctx: Context, v: Vat): void {
  const pieces = piecesIn(v);
  if (pieces < 0) return;
  const factor = mayHoldIce(ctx, v) ? depression(ctx) : -1;
  ctx.ops.push(({ s, x }) => {
    const celsius = s[v.celsius]!;
    s[pieces + slot.enthalpy_J] = enthalpyWithIce(s, pieces, celsius, factor < 0 ? 0 : iceAt(s, pieces, celsius / x[factor]!));
  });
}

/**
 * Liquid and pieces come to one temperature; where either may hold ice, that stands in balance in each.
 * @source none - heat balance of two bodies
 */
export function settleWithPieces(ctx: Context, v: Vat, pieces: number): void {
  const factor = mayHoldIce(ctx, v) ? depression(ctx) : -1;
  ctx.ops.push(({ s, x }) => {
    const heat = s[v.liquid + slot.enthalpy_J]! + s[pieces + slot.enthalpy_J]!;
    let celsius = oneTemperature(s, v.liquid, pieces, heat, s[v.celsius]!), own = 0;
    if (Number.isNaN(celsius)) return;                                   // an empty vessel keeps its own
    if (factor >= 0 && celsius < 0) {
      celsius = inBalance(s, v.liquid, pieces, heat, x[factor]!);
      own = iceAt(s, v.liquid, celsius / x[factor]!);
    }
    s[v.celsius] = celsius;
    s[v.ownIce] = own;
    s[v.liquid + slot.enthalpy_J] = enthalpyWithIce(s, v.liquid, celsius, own);
    s[pieces + slot.enthalpy_J] = heat - s[v.liquid + slot.enthalpy_J]!;
  });
}

/** Pieces beside a liquid are part of its vessel for a time: their heat capacity is added to its, at the mean temperature of both. @returns J/K, to be taken from it again */
export function lendPieces(s: Float64Array, v: Vat, pieces: number): number {
  const heat = heatCapacity(s, pieces, s[v.celsius]!), { vessel } = v.content, own = s[vessel + 1]!;
  if (!(heat > 0)) return 0;
  s[vessel] = (own * s[vessel]! + heat * s[v.celsius]!) / (own + heat);
  s[vessel + 1] = own + heat;
  return heat;
}

/** Temperature of two blocks that hold this heat together, no ice in either; NaN where both are empty. */
function oneTemperature(s: Float64Array, one: number, other: number, heat: number, near: number): number {
  let t = temperatureOf(s, one, s[one + slot.enthalpy_J]!, near);
  if (Number.isNaN(t)) return temperatureOf(s, other, s[other + slot.enthalpy_J]!, near);
  for (let i = 0; i < MOST_STEPS; i++) {
    const step = (enthalpyWithIce(s, one, t, 0) + enthalpyWithIce(s, other, t, 0) - heat) / (heatCapacity(s, one, t) + heatCapacity(s, other, t));
    t -= step;
    if (Math.abs(step) < CLOSE) break;
  }
  return t;
}

/** The same below 0 °C, with the ice that stands in balance in each. */
function inBalance(s: Float64Array, one: number, other: number, heat: number, factor: number): number {
  const t = rootBetween((c) => enthalpyWithIce(s, one, c, iceAt(s, one, c / factor)) + enthalpyWithIce(s, other, c, iceAt(s, other, c / factor)) - heat, LOWEST_C, 0, CLOSE);
  return Number.isNaN(t) ? LOWEST_C : t;
}
