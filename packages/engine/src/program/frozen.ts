import { advance, areaOfPieces, iceArea, type Bodies } from '../ice/index.ts';
import { balanceWithIce, enthalpyOfIce, enthalpyWithIce, restWithIce, temperatureOfIce } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context, Put, Vat } from './context.ts';

/**
 * A liquid that went into a freezer may come out partly as ice. The block of such a liquid stays that of the whole, thawed; how much of its water is ice
 * stands beside it, and its heat is counted with that ice. So nothing is diluted twice, and where the ice melts it takes its heat of fusion up.
 */

/** How far across the crystals of a slush are, mm: fine enough to be in balance at any time. @source common-practice */
const GRAIN_MM = 1;
const rested = new Float64Array(2);

/** The doubt of the freezing point, as an input. */
export const depression = (ctx: Context): number => ctx.spread('model/freezing', 'model/freezing', 1, 'share', 'model');

/** Has this liquid, or may it have, ice of its own? */
export const mayHoldIce = (ctx: Context, v: Vat): boolean => ctx.frozen.has(v.liquid);

/**
 * Makes so much of a liquid's water ice (offset of g; never less than there is), as cold as it stands in balance with it, `air` (input, °C) at the coldest.
 * `soon`: it may have been taken out before it came to rest.
 */
export function freeze(ctx: Context, v: Vat, ice_g: number, air: number, soon: boolean): void {
  ctx.frozen.add(v.liquid);
  const factor = depression(ctx);
  ctx.ops.push(({ s, x }) => {
    const ice = Math.max(s[ice_g]!, s[v.ownIce]!);
    if (!(ice > 0)) {
      // too short for any to be counted, and yet colder than it freezes: what it is short of heat becomes ice
      if (soon && s[v.celsius]! < 0) toBalance(s, v, x[factor]!);
      return;
    }
    const t = Math.max(Math.min(0, x[air]!), balanceWithIce(s, v.liquid, ice, x[factor]));
    s[v.ownIce] = ice;
    s[v.celsius] = t;
    s[v.liquid + slot.enthalpy_J] = enthalpyWithIce(s, v.liquid, t, ice);
  });
}

/** A liquid that may hold ice comes to one temperature after something was put to it: some melts, or more freezes. */
export function restFrozen(ctx: Context, v: Pick<Vat, 'liquid' | 'celsius' | 'ownIce'>): void {
  const factor = depression(ctx);
  ctx.ops.push(({ s, x }) => toBalance(s, v, x[factor]!));
}
function toBalance(s: Float64Array, v: Pick<Vat, 'liquid' | 'celsius' | 'ownIce'>, factor: number): void {
  restWithIce(s, v.liquid, s[v.liquid + slot.enthalpy_J]!, factor, s[v.celsius]!, rested);
  if (Number.isNaN(rested[0]!)) return;                                  // an empty vessel keeps its own
  s[v.celsius] = rested[0]!;
  s[v.ownIce] = rested[1]!;
}

/** Heat of one gram of what is put in, in J, with the ice it brings. */
export function broughtHeat(s: Float64Array, p: Put, celsius: number): number {
  return enthalpyWithIce(s, p.source.block, celsius, p.start.ice === undefined ? 0 : s[p.start.ice]!);
}

/**
 * `advance` for a liquid with ice of its own (offset of g): for that time it is one body with the ice it lies in, and melts in step with it. To the account
 * goes what melted of the other ice alone; of its own the liquid has the water already.
 */
export function advanceFrozen(s: Float64Array, b: Bodies, own: number, surroundings: number, seconds: number, account: number): void {
  const held = s[own]!;
  if (!(held > 0)) { advance(s, b, surroundings, seconds, account); return; }
  const water = b.liquid + at.water, celsius = s[b.celsius]!, put = s[b.ice]!, mass0 = s[b.ice + 2]!, area0 = s[b.ice + 3]!, all = put + held, melted = s[account + 1]!;
  const heat = held * enthalpyOfIce(celsius);
  s[water]! -= held;
  s[b.enthalpy]! -= heat;
  s[b.ice + 1] = temperatureOfIce(((put > 0 ? put * enthalpyOfIce(s[b.ice + 1]!) : 0) + heat) / all);
  s[b.ice] = all;
  s[b.ice + 2] = all;
  s[b.ice + 3] = iceArea(put, mass0, area0) + areaOfPieces(held, GRAIN_MM);
  advance(s, b, surroundings, seconds, account);
  const left = s[b.ice]! / all;
  s[own] = held * left;
  s[b.ice] = put * left;
  s[b.ice + 2] = mass0;
  s[b.ice + 3] = area0;
  s[account + 1] = melted + (s[account + 1]! - melted) * (put / all);
  s[water]! += s[own];
  s[b.enthalpy]! += s[own] * enthalpyOfIce(s[b.ice + 1]!);
}

/** Of a liquid's water so much is ice, %; what rounding adds to all of it is not told. */
export const frozenShare = (s: Float64Array, liquid: number, ice_g: number): number => (s[liquid + at.water]! > 0 ? Math.min(100, (100 * ice_g) / s[liquid + at.water]!) : 0);

/** Names what `frozenShare` gave (offset). */
export function tellFrozen(ctx: Context, of: string, share: number): void {
  ctx.probe('frozen', of, '%', 'ice-in-balance', ['ross1975', 'crc-ice'], ({ s }, out, i) => { out[i] = s[share]!; });
}
