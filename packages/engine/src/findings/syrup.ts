import { ETHANOL_G_ML, strengthIn, sucroseHeld, sucroseInSpirit, sucroseSaturation } from '../liquids/index.ts';
import { at } from '../matter/constituents.ts';
import { strongestOf } from '../preps/setting.ts';
import type { Context, PrepBuilt, Put } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp, Workspace } from '../program/program.ts';
import { lineAfter } from '../program/edit.ts';
import type { Facts } from './facts.ts';

/** How warm a syrup is made, °C. @source common-practice */
const HOT = limit('will-not-dissolve', 'hot');
/** So far below saturation at 0 °C nothing crystallises in any fridge. @source none - definition */
const BELOW = limit('syrup-crystallises', 'below');
/** g of sucrose in 100 g of a thing that is sugar. @source common-practice */
const SUGAR = limit('syrup-crystallises', 'sugar');

/** Sugars beside sucrose. */
const OTHERS = [at.glucose, at.fructose, at.lactose, at.maltose, at.other_sugars];
/** Sucrose in g that a liquid holds with so much water put to it, where water alone holds `saturation` g in 100. */
type Held = (w: Workspace, saturation: number, more?: number) => number;

/** Sucrose in g that the liquid of a prep holds, less of it in spirit and beside other sugars. */
function heldBy(ctx: Context, prep: PrepBuilt, sugar: Put): Held {
  const block = prep.content.phase('liquid'), path = sugar.measure.path;
  const spirit = ctx.spread('model/sucrose in spirit', 'model/sucrose in spirit', 1, 'share', 'model', { at: path }), beside = ctx.middle('model/sucrose beside others', 'model/sucrose beside others', 'share', 'model', { at: path });
  return ({ s, x }, saturation, more = 0) => {
    let others = 0;
    for (const i of OTHERS) others += s[block + i]!;
    const water = s[block + at.water]! + more, ethanol = s[block + at.ethanol]!, held = sucroseHeld(water, ethanol, others, saturation, x[beside]);
    // the doubt of the table of spirit grows with how much it takes away
    return ethanol > 0 ? held * sucroseInSpirit(strengthIn(ethanol, water + ethanol / ETHANOL_G_ML)) ** (x[spirit]! - 1) : held;
  };
}

/** g of water to be put to a liquid so that it holds so much sucrose; 0 where it does already. */
function toHold(held: Held, w: Workspace, saturation: number, sucrose: number): number {
  if (held(w, saturation) >= sucrose) return 0;
  let low = 0, high = 2 * sucrose;
  for (let i = 0; i < 40; i++) { const more = (low + high) / 2; if (held(w, saturation, more) >= sucrose) high = more; else low = more; }
  return high;
}

/** Sucrose above what its liquid holds at the temperature it rests at. Acid, which splits it in time, is not counted. @source mohos table A2.3; scheibler-sucrose */
export function syrup({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const block = prep.content.phase('liquid'), sugar = prep.puts.find((p) => (p.source.ingredient?.cells['sucrose_g']?.value ?? 0) > SUGAR);
    if (!sugar) continue;
    const brix = (s: Float64Array) => (100 * s[block + at.sucrose]!) / Math.max(1e-9, s[block + at.sucrose]! + s[block + at.water]!);
    const held = heldBy(ctx, prep, sugar), wanted: ProbeOp = (w, out, i) => { out[i] = toHold(held, w, sucroseSaturation(0) - BELOW, w.s[block + at.sucrose]!); };
    if (prep.section.method !== 'oleo saccharum') dissolves(ctx, prep, sugar, held);
    ctx.margins.push({
      code: 'syrup-crystallises', at: sugar.measure.path, unit: '°Bx', sources: ['mohos', 'scheibler-sucrose'], words: { prep: prep.name },
      op: (w, out, i) => { const { s } = w, most = held(w, sucroseSaturation(s[prep.rest_C]!)); out[i] = brix(s) - (100 * most) / Math.max(1e-9, most + s[block + at.water]!); },
      live: { brix: ({ s }, out, i) => { out[i] = brix(s); }, celsius: ({ s }, out, i) => { out[i] = s[prep.rest_C]!; }, water: wanted },
      under: 'will-not-dissolve', remedy: (n) => ((n['water'] ?? 0) > 0 ? { key: 'weaken', words: { mL: Math.ceil(n['water']! / 5 + 0.2) * 5 }, splices: lineAfter(ctx.sections, sugar.measure, { key: 'water' }) } : undefined),
    });
  }
}

/** Sugar that its liquid does not hold at the warmest it ever was. */
function dissolves(ctx: Context, prep: PrepBuilt, sugar: Put, held: Held): void {
  const block = prep.content.phase('liquid'), { hottest } = prep.vat, spirit = strongestOf(prep)?.measure.strength !== undefined;
  const over: ProbeOp = (w, out, i) => { out[i] = w.s[block + at.sucrose]! - held(w, sucroseSaturation(w.s[hottest]!)); };
  ctx.margins.push({
    code: 'will-not-dissolve', at: sugar.measure.path, unit: 'g', sources: ['mohos', 'scheibler-sucrose'], words: { thing: sugar.measure.thing.words }, op: over, live: {
      celsius: ({ s }, out, i) => { out[i] = s[hottest]!; },
      hot: (w, out, i) => { out[i] = 1.15 * w.s[block + at.sucrose]! - held(w, sucroseSaturation(HOT)); },
      water: (w, out, i) => { out[i] = toHold(held, w, sucroseSaturation(w.s[hottest]!), 1.12 * w.s[block + at.sucrose]!); },
    },
    // warm it where that is enough, else there is too little water
    remedy: (n) => (!spirit && (n['hot'] ?? 1) < 0 ? { key: 'heat', words: { celsius: HOT }, splices: lineAfter(ctx.sections, prep.puts[prep.puts.length - 1]!.measure, { key: 'heat' }) }
      : (n['water'] ?? 0) > 0 ? { key: 'weaken', words: { mL: Math.ceil(n['water']! / 5 + 1) * 5 }, splices: lineAfter(ctx.sections, sugar.measure, { key: 'water' }) } : undefined),
  });
}
