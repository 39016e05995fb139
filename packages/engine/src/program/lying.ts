import { enthalpyWithIce, heatCapacity, iceAt, temperatureOf } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import { depression } from './frozen.ts';
import type { Context, Vat } from './context.ts';

/**
 * Pieces that lie in a liquid - fruit, peel, herbs, leaves of tea - are as warm as it is: what goes in warmer or colder shares its heat out over both at once
 * (pieces of a centimetre take a minute or two), and pieces come along with a liquid that is warmed or cooled. Their matter stays their own: nothing is mixed for heat.
 */

/** Colder than this nothing is followed, °C; the temperature is found within CLOSE of a kelvin, in no more than so many steps. */
const LOWEST_C = -60, CLOSE = 1e-9, MOST_STEPS = 80;

/** Block of the pieces that lie in a liquid, -1 where none do. */
export function piecesIn(v: Vat): number { return v.content.has('solids') ? v.content.phase('solids') : -1; }

/** Before something goes in: what lay there already is as warm as the liquid has become, what was ice in it is ice only while nothing warmed it. */
export function followed(ctx: Context, v: Vat): void {
  const pieces = piecesIn(v);
  if (pieces < 0) return;
  ctx.ops.push(({ s }) => {
    const celsius = s[v.celsius]!, ice = celsius === s[v.pieces + 1] ? Math.min(s[v.pieces]!, s[pieces + at.water]!) : 0;
    s[pieces + slot.enthalpy_J] = enthalpyWithIce(s, pieces, celsius, ice);
  });
}

/**
 * Liquid and pieces come to one temperature. `frozen`: either may hold ice, which then stands in balance in each.
 * @source none - heat balance of two bodies
 */
export function settleWithPieces(ctx: Context, v: Vat, frozen: boolean): void {
  const pieces = piecesIn(v), factor = frozen ? depression(ctx) : -1;
  ctx.ops.push(({ s, x }) => {
    const heat = s[v.liquid + slot.enthalpy_J]! + s[pieces + slot.enthalpy_J]!, off = factor < 0 ? 1 : x[factor]!;
    let celsius = oneTemperature(s, v.liquid, pieces, heat, s[v.celsius]!), own = 0, theirs = 0;
    if (Number.isNaN(celsius)) return;                                   // an empty vessel keeps its own
    if (frozen && celsius < 0) {
      celsius = inBalance(s, v.liquid, pieces, heat, off);
      own = iceAt(s, v.liquid, celsius / off); theirs = iceAt(s, pieces, celsius / off);
    }
    s[v.celsius] = celsius;
    s[v.ownIce] = own;
    s[v.pieces] = theirs; s[v.pieces + 1] = celsius;
    s[v.liquid + slot.enthalpy_J] = enthalpyWithIce(s, v.liquid, celsius, own);
    s[pieces + slot.enthalpy_J] = heat - s[v.liquid + slot.enthalpy_J]!;
  });
}

/** J/K of the pieces beside a liquid, as if they were part of its vessel: added to it, at its mean temperature, or taken from it again. */
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

/** The same below 0 °C, with the ice that stands in balance in each: the false position between the lowest and 0 °C. */
function inBalance(s: Float64Array, one: number, other: number, heat: number, factor: number): number {
  const over = (t: number): number => enthalpyWithIce(s, one, t, iceAt(s, one, t / factor)) + enthalpyWithIce(s, other, t, iceAt(s, other, t / factor)) - heat;
  let low = LOWEST_C, high = 0, under = over(low), above = over(high), t = high, side = 0;
  if (under >= 0) return low;
  for (let i = 0; i < MOST_STEPS && high - low > CLOSE; i++) {
    t = low - (under * (high - low)) / (above - under);
    // where it creeps along one end it is halved
    if (i % 4 === 3) t = (low + high) / 2;
    const off = over(t);
    if (off > 0) { high = t; above = off; if (side === 1) under /= 2; side = 1; } else { low = t; under = off; if (side === -1) above /= 2; side = -1; }
  }
  return t;
}
