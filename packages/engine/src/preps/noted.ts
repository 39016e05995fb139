import type { Step } from '../document/types.ts';
import { strengthOf } from '../liquids/index.ts';
import { limit } from '../program/limits.ts';
import type { Context, Noted, Vat } from '../program/context.ts';

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
