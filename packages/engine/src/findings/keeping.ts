import type { Step } from '../document/types.ts';
import { BOTULISM, HOLDING, keepsDays, needsAssessment, STANDS_H } from '../keeping/index.ts';
import { waterActivity } from '../liquids/index.ts';
import { wholeMass } from '../matter/block.ts';
import { at } from '../matter/constituents.ts';
import { stepRow } from '../preps/prep.ts';
import { strengthOfPrep } from '../preps/setting.ts';
import type { Context, PrepBuilt, Put, RemedySeed } from '../program/context.ts';
import { insteadOfNumber } from '../program/edit.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import type { Facts } from './facts.ts';
import { standsAt, timeOf } from './steps.ts';

/** From this strength on nothing grows that these rules are about; the codes count no alcohol at all. % vol @source common-practice */
const SPIRITED = limit('cold-chain', 'spirited');
/** Hours without air from which on growth is to be feared in the fridge as well. @source common-practice two days */
const AIRLESS_H = limit('botulism-risk', 'airless');
/** What a pH that is not known is taken for: not knowing makes nothing safe. */
const NOT_KNOWN = limit('cold-chain', 'not_known');
/** Of a prep: with more oil than this what lies in it is shut off from air. */
const OILY = limit('botulism-risk', 'oily');
/** Warmer than this a place is out of the cold, for what a fridge differs. °C @source food-code-holding; common-practice */
const OUT_C = HOLDING.cold_C + limit('cold-chain', 'out');
/** Colder than this nothing loses its taste in days. °C @source common-practice */
const FROZEN = limit('keeps-short', 'frozen');

const SPOILS = /^(dairy|egg|juice|juice-citrus|fruit|vegetable|herb|coffee-tea|nut|plant-drink|plant-cream)$/;
const AT_ONCE = /^(dairy|egg)$/;
const FROM_SOIL = /^(vegetable|herb|fruit|spice)$/;

/** Food left warm, and food shut off from air. A screening aid: law and qualified people decide. @source food-code tables A and B; food-code-holding */
export function keeping({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    if (prep.section.method === 'ferment') continue;
    warm(ctx, prep);
    short(ctx, prep);
    airless(ctx, prep);
  }
}

const waits = (x: Step): boolean => stepRow(x.verb).does === 'rest';
const categoryOf = (p: Put): string => p.source.ingredient?.category ?? '';

/** The step that is written to last longest. */
const longestOf = (steps: readonly Step[]): Step | undefined => [...steps].sort((a, b) => (b.seconds?.high ?? 0) - (a.seconds?.high ?? 0))[0];
const HOUR = 3600;

/** pH, water activity without what ethanol does to it, and strength of what a prep is in the end. */
function stateOf(ctx: Context, prep: PrepBuilt) {
  const ph = ctx.probed(`prep:${prep.section.key}`, 'ph'), block = prep.content.phase('liquid'), dry = new Float64Array(at.insolubles + 1), one = new Float64Array(1);
  return {
    pH: (w: Parameters<ProbeOp>[0]) => { if (!ph) return NOT_KNOWN; ph(w, one, 0); return Number.isNaN(one[0]!) ? NOT_KNOWN : one[0]!; },
    aw: (s: Float64Array) => { for (let k = 0; k < dry.length; k++) dry[k] = s[block + k]!; dry[at.ethanol] = 0; return waterActivity(dry, 0); },
    pct: strengthOfPrep(prep),
    oil: (s: Float64Array) => { const m = wholeMass(s, block); return m > 0 ? s[block + at.fat]! / m : 0; },
  };
}

/** What spoils, out of the cold for longer than the codes let it. */
function warm(ctx: Context, prep: PrepBuilt): void {
  const foods = prep.puts.filter((p) => SPOILS.test(categoryOf(p)));
  const steps = prep.steps.filter((x) => waits(x) && x.verb !== 'soak' && standsAt(ctx, x) > OUT_C && standsAt(ctx, x) < HOLDING.hot_C && foods.some((p) => p.from < x.span.from));
  const hours = timeOf(ctx, prep, steps, HOUR), longest = longestOf(steps);
  if (!longest || !hours) return;
  const state = stateOf(ctx, prep), worst = foods.find((p) => AT_ONCE.test(categoryOf(p))) ?? foods[0]!;
  const cold = (x: Step): RemedySeed['splices'] => {
    if (x.temperature) return [insteadOfNumber(ctx.document.text, x.temperature.span, '4 °C')];
    const end = (x.seconds?.span ?? x.span).to;
    return [{ from: end, to: end, key: 'cold' }];
  };
  ctx.margins.push({
    code: 'cold-chain', at: longest.path, unit: 'h', sources: ['food-code', 'food-code-holding'], words: { thing: worst.measure.thing.words, limit: STANDS_H }, live: { hours }, ...(AT_ONCE.test(categoryOf(worst)) ? {} : { cap: 'warn' as const }),
    op: (w, out, i) => {
      hours(w, out, i);
      out[i] = state.pct(w.s) >= SPIRITED || !needsAssessment('B', state.aw(w.s), state.pH(w)) ? -STANDS_H : out[i]! - STANDS_H;
    },
    remedy: { key: 'in-the-cold', words: {}, splices: steps.flatMap(cold) },
  });
}

/** A syrup of nothing but these has only its sugar to keep it. */
const PLAIN = /^(sugar|sweetener|water|mineral|acid)$/;
/** From so much sugar on a plain syrup keeps for months. °Bx @source syrup-trial; common-practice */
const RICH = limit('keeps-short', 'rich');

/** How a prep is named in the house rules of keeping: what in it spoils first. */
function kindOf(prep: PrepBuilt): string | undefined {
  const has = (what: RegExp) => prep.puts.some((p) => what.test(categoryOf(p)));
  const { method } = prep.section, foam = method === 'siphon foam';
  if (foam) return has(/^dairy$/) ? 'siphon dairy' : has(/^egg$/) ? 'siphon egg' : 'siphon gelatin';
  if (method === 'milk wash' || method === 'clarify with milk') return 'milk wash';
  if (method === 'fat wash') return method;
  if (has(/^dairy$/)) return 'siphon dairy';
  if (has(/^juice-citrus$/) && !has(/^sugar$/)) return 'fresh citrus';
  if (has(/^fortified$/) && !has(/^(spirit|juice|fruit)$/)) return 'fortified wine';
  if ((method === 'syrup' || method === 'cordial') && has(/^(fruit|juice|juice-citrus)$/)) return 'fruit syrup';
  if (method === 'cordial' && has(/^(garnish|vegetable|spice|coffee-tea)$/)) return 'herb syrup';
  if (method !== 'syrup' && method !== 'cordial') return undefined;
  return has(/^herb$/) ? 'herb syrup' : method === 'syrup' && prep.puts.every((p) => PLAIN.test(categoryOf(p))) ? 'syrup 50 brix' : undefined;
}

/** Sugars of a mix in g. */
const SUGARS = [at.sucrose, at.glucose, at.fructose, at.lactose, at.maltose, at.other_sugars];
/** The two plain syrups of the house rules, g of sugar in 100 g of it and water. */
const THIN = 50, THICK = 65;
const PLAIN_DAYS = [keepsDays('syrup 50 brix')!, keepsDays('syrup 65 brix')!] as const;

/** By how many times the days of a syrup of fruit or herb grow with its sugar, as those of a plain syrup do: 1 up to 50 °Bx, least and most at 65 and more. @source common-practice */
function sweeter(s: Float64Array, block: number, which: 0 | 1): number {
  let sugar = 0;
  for (let i = 0; i < SUGARS.length; i++) sugar += s[block + SUGARS[i]!]!;
  const brix = (100 * sugar) / Math.max(1e-9, sugar + s[block + at.water]!);
  return (PLAIN_DAYS[1][which] / PLAIN_DAYS[0][which]) ** Math.min(1, Math.max(0, (brix - THIN) / (THICK - THIN)));
}

/** Longer in the fridge than house rules let it, by what spoils first in it: its taste goes before it is a danger. */
function short(ctx: Context, prep: PrepBuilt): void {
  const kind = kindOf(prep), days = kind === undefined ? undefined : keepsDays(kind);
  const steps = prep.steps.filter((x) => waits(x) && standsAt(ctx, x) > FROZEN), hours = timeOf(ctx, prep, steps, HOUR), longest = longestOf(steps);
  if (!days || !hours || !longest) return;
  const state = stateOf(ctx, prep), brix = kind === 'syrup 50 brix' ? ctx.probed(`prep:${prep.section.key}`, 'brix') : undefined, rich = keepsDays('syrup 65 brix')!, one = new Float64Array(1);
  const block = prep.content.phase('liquid'), sweet = kind === 'fruit syrup' || kind === 'herb syrup';
  const keeps = (w: Parameters<ProbeOp>[0], which: 0 | 1): number => {
    if (sweet) return days[which] * sweeter(w.s, block, which);
    brix?.(w, one, 0);
    return (brix && one[0]! >= RICH ? rich : days)[which];
  };
  const safe = (w: Parameters<ProbeOp>[0]) => (kind === 'siphon dairy' && !needsAssessment('B', state.aw(w.s), state.pH(w))) || (kind !== 'milk wash' && kind !== 'fat wash' && state.pct(w.s) >= SPIRITED);
  ctx.margins.push({
    code: 'keeps-short', at: longest.path, unit: 'days', sources: kind === 'siphon dairy' ? ['date-marking', 'common-practice'] : brix ? ['syrup-trial', 'common-practice'] : ['common-practice'], words: { prep: prep.name },
    live: { days: (w, out, i) => { hours(w, out, i); out[i]! /= 24; }, least: (w, out, i) => { out[i] = keeps(w, 0); }, most: (w, out, i) => { out[i] = keeps(w, 1); } },
    op: (w, out, i) => { hours(w, out, i); out[i] = safe(w) ? -keeps(w, 1) : out[i]! / 24 - keeps(w, 1); },
    remedy: ({ least = 1 }) => { const span = longest.seconds?.span, whole = Math.max(1, Math.floor(least)) * 24; return span && { key: 'keep-shorter', words: { hours: whole }, splices: [{ from: span.from, to: span.to, literal: `${whole} h` }] }; },
  });
}

/** What grew in or near soil, shut off from air by oil, a bag or a closed vessel, wet and hardly sour. */
function airless(ctx: Context, prep: PrepBuilt): void {
  const plants = prep.puts.filter((p) => FROM_SOIL.test(categoryOf(p))), oils = prep.puts.some((p) => p.source.form === 'fat');
  const shut = prep.steps.find((x) => x.verb === 'vacuum' || x.flags.includes('closed'));
  const steps = prep.steps.filter((x) => waits(x) && standsAt(ctx, x) > BOTULISM.celsius && (oils || (shut !== undefined && x.span.from >= shut.span.from)));
  const hours = timeOf(ctx, prep, steps, HOUR), first = plants[0];
  if (!first || steps.length === 0 || !hours) return;
  const state = stateOf(ctx, prep), roomy = steps.some((x) => standsAt(ctx, x) > OUT_C);
  const one = new Float64Array(1);
  ctx.margins.push({
    code: 'botulism-risk', at: first.measure.path, unit: 'pH', sources: ['food-code', 'bad-bug-book'], words: { thing: first.measure.thing.words },
    op: (w, out, i) => {
      hours(w, one, 0);
      const oily = oils && state.oil(w.s) > OILY, long = one[0]! > (roomy ? STANDS_H : AIRLESS_H);
      // in oil each piece keeps its own water and its own pH, whatever the oil around it
      out[i] = !long || state.pct(w.s) >= SPIRITED || !(oily || (shut !== undefined && state.aw(w.s) > BOTULISM.aw)) ? -BOTULISM.pH : (oily ? NOT_KNOWN : state.pH(w)) - BOTULISM.pH;
    },
  });
}
