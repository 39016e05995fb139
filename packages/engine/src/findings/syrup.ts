import { sucroseSaturation } from '../liquids/index.ts';
import { at } from '../matter/constituents.ts';
import { strongestOf } from '../preps/setting.ts';
import type { Context, PrepBuilt, Put } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import { lineAfter } from '../program/edit.ts';
import type { Facts } from './facts.ts';

/** How warm a syrup is made, °C. @source common-practice */
const HOT = limit('will-not-dissolve', 'hot');
/** So far below saturation at 0 °C nothing crystallises in any fridge. @source none - definition */
const BELOW = limit('syrup-crystallises', 'below');
/** g of sucrose in 100 g of a thing that is sugar. @source common-practice */
const SUGAR = limit('syrup-crystallises', 'sugar');

/** Sucrose above what its water holds at the temperature it rests at. Other sugars and acid, which hinder crystals, are not counted. @source mohos table A2.3 */
export function syrup({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const block = prep.content.phase('liquid'), sugar = prep.puts.find((p) => (p.source.ingredient?.cells['sucrose_g']?.value ?? 0) > SUGAR);
    if (!sugar) continue;
    const brix = (s: Float64Array) => (100 * s[block + at.sucrose]!) / Math.max(1e-9, s[block + at.sucrose]! + s[block + at.water]!);
    const wanted: ProbeOp = ({ s }, out, i) => { const aim = sucroseSaturation(0) - BELOW; out[i] = (s[block + at.sucrose]! * (100 - aim)) / aim - s[block + at.water]!; };
    if (prep.section.method !== 'oleo saccharum') dissolves(ctx, prep, sugar);
    ctx.margins.push({
      code: 'syrup-crystallises', at: sugar.measure.path, unit: '°Bx', sources: ['mohos'], words: { prep: prep.name },
      op: ({ s }, out, i) => { out[i] = brix(s) - sucroseSaturation(s[prep.rest_C]!); },
      live: { brix: ({ s }, out, i) => { out[i] = brix(s); }, celsius: ({ s }, out, i) => { out[i] = s[prep.rest_C]!; }, water: wanted },
      under: 'will-not-dissolve', remedy: (n) => ((n['water'] ?? 0) > 0 ? { key: 'weaken', words: { mL: Math.ceil(n['water']! / 5 + 0.2) * 5 }, splices: lineAfter(ctx.sections, sugar.measure, { key: 'water' }) } : undefined),
    });
  }
}

/** Sugar that its water does not hold at the warmest it ever was. In spirit still less of it dissolves: that is not counted. */
function dissolves(ctx: Context, prep: PrepBuilt, sugar: Put): void {
  const block = prep.content.phase('liquid'), { hottest } = prep.vat, spirit = strongestOf(prep)?.measure.strength !== undefined;
  const held = (s: Float64Array, celsius: number): number => { const w = sucroseSaturation(celsius) / 100; return (s[block + at.water]! * w) / (1 - w); };
  const over: ProbeOp = ({ s }, out, i) => { out[i] = s[block + at.sucrose]! - held(s, s[hottest]!); };
  ctx.margins.push({
    code: 'will-not-dissolve', at: sugar.measure.path, unit: 'g', sources: ['mohos'], words: { thing: sugar.measure.thing.words }, op: over, live: {
      celsius: ({ s }, out, i) => { out[i] = s[hottest]!; },
      hot: ({ s }, out, i) => { out[i] = 1.15 * s[block + at.sucrose]! - held(s, HOT); },
      water: ({ s }, out, i) => { const w = sucroseSaturation(s[hottest]!) / 100; out[i] = (1.12 * s[block + at.sucrose]! * (1 - w)) / w - s[block + at.water]!; },
    },
    // warm it where that is enough, else there is too little water
    remedy: (n) => (!spirit && (n['hot'] ?? 1) < 0 ? { key: 'heat', words: { celsius: HOT }, splices: lineAfter(ctx.sections, prep.puts[prep.puts.length - 1]!.measure, { key: 'heat' }) }
      : (n['water'] ?? 0) > 0 ? { key: 'weaken', words: { mL: Math.ceil(n['water']! / 5 + 1) * 5 }, splices: lineAfter(ctx.sections, sugar.measure, { key: 'water' }) } : undefined),
  });
}
