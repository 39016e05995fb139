import type { Step } from '../document/types.ts';
import { FUSION_J_PER_G, freezingPoint, heatCapacity, iceAt, strengthOf, volume, volumeAt20 } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import { limit } from '../program/limits.ts';
import type { Context, Noted, Vat } from '../program/context.ts';
import places from '../../../../data/physics/places.json' with { type: 'json' };

/** Warmer than this a mix is hot: what is put to it then meets it. °C */
const HOT = limit('gel-sets-early', 'hot');
/** Coldest of a mix to which nothing was put. °C */
const NEVER = 1000;

/** A prep that has noted nothing yet. */
export function nothingNoted(ctx: Context): Noted {
  const coolest = ctx.layout.take(1), warmest = ctx.layout.take(1);
  ctx.ops.push(({ s }) => { s[coolest] = NEVER; s[warmest] = -NEVER; });
  return { charge: null, frozen: [], fires: [], coolest, warmest, live: false, closed: [] };
}

/** Notes how warm a mix is that everything has been put to. */
export function noteWarmth(ctx: Context, noted: Noted, v: Vat): void {
  ctx.ops.push(({ s }) => { if (s[v.celsius]! > s[noted.warmest]!) s[noted.warmest] = s[v.celsius]!; });
}

/** Notes how cold a mix is once something was put to it after it was hot. */
export function noteMeeting(ctx: Context, noted: Noted, v: Vat): void {
  ctx.ops.push(({ s }) => { if (s[v.hottest]! > HOT && s[v.celsius]! < s[noted.coolest]!) s[noted.coolest] = s[v.celsius]!; });
}

/** Notes how strong a liquid is as it comes on a fire. */
export function noteFire(ctx: Context, noted: Noted, v: Vat, step: Step): void {
  const strength = ctx.layout.take(1);
  ctx.ops.push(({ s }) => { s[strength] = strengthOf(s, v.liquid) || 0; });
  noted.fires.push({ step, strength });
}

/**
 * How much ice forms while a liquid stands in a freezer, before the step is run. Down to its freezing point it cools as a lump in still air; then the
 * heat that air at this temperature takes up makes ice, no more of it than stands in balance with what stays liquid.
 * `temperature`, `seconds`: inputs, the time -1 where it is long enough whatever it is.
 * @source ross1975 balance of ice and liquid; crc-ice heat of fusion; none - lump in air
 */
export function iceFormed(ctx: Context, v: Vat, temperature: number, seconds: number): Omit<Noted['frozen'][number], 'step'> {
  const ice_g = ctx.layout.take(4), share = ice_g + 1, mL = ice_g + 2, shrinks = ice_g + 3;
  const h = ctx.spread('place/exchange/freezer', 'place/exchange/freezer', places.freezer.value, 'W/m2K', 'place');
  const factor = ctx.spread('model/freezing', 'model/freezing', 1, 'share', 'model');
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
  return { ice_g, share, mL, shrinks };
}

/** Notes it, before the step is run. */
export function noteFreezing(ctx: Context, noted: Noted, v: Vat, step: Step, temperature: number, seconds: number): void {
  noted.frozen.push({ step, ...iceFormed(ctx, v, temperature, seconds) });
}
