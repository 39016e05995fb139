import type { Step } from '../document/types.ts';
import { FUSION_J_PER_G, freezingPoint, heatCapacity, iceAt, volume, volumeAt20 } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context, Noted, Vat } from './context.ts';
import { depression, freeze } from './frozen.ts';
import { belowZero, inFreezer } from './temperature.ts';
import { rest, setTemperature } from './vat.ts';
import places from '../../../../data/physics/places.json' with { type: 'json' };

/** What formed: how cold it was (input), g of ice, its share of the water, and the room it had. */
export type IceFormed = Omit<Noted['frozen'][number], 'step'>;

/**
 * A step leaves a liquid in a place for a time, or as long as it takes to be as warm as that place: below 0 °C part of it may become ice.
 * `temperature`, `seconds`: inputs, the time -1 where it is long enough whatever it is. `thaws`: what comes after takes it as liquid.
 * @returns what ice formed, null where the place makes none
 */
export function stand(ctx: Context, v: Vat, step: Step, temperature: number, seconds: number, thaws = false): IceFormed | null {
  const medium = inFreezer(step) ? 'freezer' : 'air', formed = belowZero(step) ? iceFormed(ctx, v, medium, temperature, seconds) : null;
  if (seconds >= 0) rest(ctx, v, temperature, seconds, medium); else setTemperature(ctx, v, temperature);
  if (formed && !thaws) freeze(ctx, v, formed.ice_g, temperature, seconds >= 0);
  return formed;
}

/** Brings a liquid to a temperature, with the ice that stands in balance there. */
export function bringTo(ctx: Context, v: Vat, step: Step, temperature: number): void {
  if (belowZero(step)) bringBelow(ctx, v, temperature); else setTemperature(ctx, v, temperature);
}

/** The same where that temperature (input) is below 0 °C. @returns what ice stands there */
export function bringBelow(ctx: Context, v: Vat, temperature: number): IceFormed {
  const formed = iceFormed(ctx, v, 'freezer', temperature, -1);
  setTemperature(ctx, v, temperature);
  freeze(ctx, v, formed.ice_g, temperature, false);
  return formed;
}

/**
 * How much ice forms while a liquid stands in the cold, before the step is run. Down to its freezing point it cools as a lump in still air; then the
 * heat that air at this temperature takes up makes ice, no more of it than stands in balance with what stays liquid; with `seconds` -1 as much as that.
 * @source ross1975 balance of ice and liquid; crc-ice heat of fusion; none - lump in air
 */
function iceFormed(ctx: Context, v: Vat, medium: 'air' | 'freezer', temperature: number, seconds: number): IceFormed {
  const ice_g = ctx.layout.take(4), share = ice_g + 1, mL = ice_g + 2, shrinks = ice_g + 3;
  const h = seconds < 0 ? -1 : ctx.spread(`place/exchange/${medium}`, `place/exchange/${medium}`, places[medium].value, 'W/m2K', 'place');
  const factor = depression(ctx);
  ctx.ops.push(({ s, x }) => {
    const air = x[temperature]!, water = s[v.liquid + at.water]!, room_mL = volumeAt20(s, v.liquid);
    s[mL] = room_mL + s[v.liquid + slot.unknown_g]!;
    s[ice_g] = 0; s[share] = 0; s[shrinks] = 0;
    if (!(water > 0)) return;
    // the doubt of the depression: the same ice stands at a temperature so much higher or lower
    const rest = iceAt(s, v.liquid, air / x[factor]!), point = freezingPoint(s, v.liquid);
    s[shrinks] = room_mL - volume(s, v.liquid, Math.max(air, point));
    if (rest === 0) return;
    let ice = rest;
    if (seconds >= 0) {
      const freezes = point * x[factor]!, start = s[v.celsius]!;
      const carries = x[h]! * 6 * Math.cbrt((room_mL * 1e-6) ** 2);                  // W/K over the surface of a cube
      const cooling = start > freezes ? (heatCapacity(s, v.liquid, (start + freezes) / 2) / carries) * Math.log((start - air) / (freezes - air)) : 0;
      ice = Math.min(rest, (Math.max(0, x[seconds]! - cooling) * carries * (freezes - air)) / FUSION_J_PER_G);
    }
    s[ice_g] = ice;
    s[share] = (100 * ice) / water;
  });
  return { celsius: temperature, ice_g, share, mL, shrinks };
}
