import type { Step } from '../document/types.ts';
import type { Purpose } from '../texture/index.ts';
import { agentsOf, isSheet, meetAt, meetWarm, nameOf, strengthOfPrep, strongestOf, tooMuch, weaken, type Found } from '../preps/setting.ts';
import { stepRow } from '../preps/prep.ts';
import type { Context, MarginSeed, PrepBuilt } from '../program/context.ts';
import { lineAfter } from '../program/edit.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import type { Facts } from './facts.ts';
import { gramsOf, lasting, standsAt, timeOf } from './steps.ts';

/** What an agent is to do, by method: its window runs from the low end of the first to the high end of the last. */
const PURPOSES: Readonly<Record<string, readonly Purpose[]>> = {
  gel: ['soft', 'firm'], 'siphon foam': ['foam', 'airs'], foam: ['foam', 'airs'], 'clarify with agar': ['clarify'], 'clarify with gelatin': ['clarify'],
};
/** Of the least dose: below FAILS it does not hold, below SHORT it is doubtful. Of the greatest: above MUCH it is rubber. @source common-practice */
const FAILS = limit('gel-dose-low', 'fails'), SHORT = limit('gel-dose-low', 'short'), MUCH = limit('gel-dose-high', 'much');
/** A foam with less than NOTHING of a dose has a finding of its own; what whips weakly counts for so much. @source common-practice */
const NOTHING = limit('foam-no-whipper', 'least'), WEAK = limit('foam-no-whipper', 'weak');
/** Of its time to set: below SETS of it nothing holds, below HARDLY it is doubtful. @source common-practice */
const SETS = limit('gel-not-set', 'sets'), HARDLY = limit('gel-not-set', 'short');
/** Minutes a charged foam of gelatin or cream rests at least, and usually, and how cold, °C. @source common-practice */
const REST_LEAST = limit('foam-short-rest', 'least'), REST_USUAL = limit('foam-short-rest', 'usual'), REST_COLD = limit('foam-short-rest', 'cold');
/** Warmer than this a mix is hot, °C. @source common-practice */
const HOT = limit('gel-sets-early', 'hot');

const HOUR = 3600, MINUTE = 60;

/** Whether a gel or foam is dosed, weak and cold enough and has the time to set. @source common-practice; hydrocolloids-overview */
export function gel({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const purposes = PURPOSES[prep.section.method];
    const agents = agentsOf(prep), own = agents.filter((f) => f.own && f.put.source.form === 'agent');
    if (!purposes) { ctx.margins.push(...own.flatMap((f) => strong(prep, f, 'alcohol-throws-out'))); continue; }
    dose(ctx, prep, agents, purposes);
    for (const f of own) grade(ctx, f);
    // to clear with agar it is boiled in water, and what is sour comes to it after that
    if (prep.section.method !== 'clarify with agar') for (const f of own) sour(ctx, prep, f);
    for (const f of own.slice(0, 1)) {
      if (!prep.foam) ctx.margins.push(...strong(prep, f, 'gel-too-strong'));
      early(ctx, prep, f);
      if (!prep.foam && f.agent.set) set(ctx, prep, f, f.agent.set);
    }
    if (prep.section.method === 'siphon foam' && agents.some((f) => /gelatin|cream/.test(f.agent.key))) rests(ctx, prep);
  }
}

/** Dose against the window of what it is for, by the mass of everything put in. */
function dose(ctx: Context, prep: PrepBuilt, agents: readonly Found[], purposes: readonly Purpose[]): void {
  const window = (f: Found): readonly [number, number] | undefined => {
    const all = purposes.flatMap((p) => (f.agent.dose[p] ? [f.agent.dose[p]] : []));
    return all.length > 0 ? [all[0]![0], all[all.length - 1]![1]] : undefined;
  };
  const counted = agents.filter((f) => window(f) !== undefined && (!prep.foam || f.agent.whips !== 'no'));
  const main = counted.find((f) => f.own) ?? counted[0];
  if (!main) return;
  const g_per_kg = (f: Found, s: Float64Array): number => { const g = gramsOf(prep.puts, s); return g > 0 ? (1000 * f.share(s)) / g : 0; };
  const strengthOf = (f: Found): number => {
    const { cells } = f.put.source.ingredient!, low = cells['bloom_low']?.value, high = cells['bloom_high']?.value;
    return f.agent.doseAtBloom !== undefined && low !== undefined && high !== undefined ? Math.sqrt((low + high) / 2 / f.agent.doseAtBloom) : 1;
  };
  // what a g/kg of each is of its least dose
  const each = counted.map((f) => ({ f, of: (strengthOf(f) / window(f)![0]) * (f.agent.whips === 'weak' && prep.foam ? WEAK : 1) })), most = strengthOf(main) / window(main)![1];
  const least: ProbeOp = ({ s }, out, i) => {
    let sum = 0;
    for (let k = 0; k < each.length; k++) sum += g_per_kg(each[k]!.f, s) * each[k]!.of;
    out[i] = sum;
  };
  const amount = main.put.measure.amount, whole = main.put.measure;
  const words = { agent: nameOf(main.put), prep: prep.name, low: window(main)![0], high: window(main)![1] };
  const live: Record<string, ProbeOp> = { dose: ({ s }, out, i) => { out[i] = g_per_kg(main, s) * strengthOf(main); }, share: least };
  const scaled = (by: number, round: (x: number) => number) => {
    if (!amount || amount.low !== amount.high) return undefined;
    const digits = isSheet(main.put) ? 2 : amount.low >= 10 ? 0 : 1, step = isSheet(main.put) ? 0.5 : 10 ** -digits;
    const to = round((amount.low * by) / step) * step;
    return to > 0 ? String(Number(to.toFixed(digits))) : undefined;
  };
  const remedy = (by: number, round: (x: number) => number) => { const literal = by > 0 && Number.isFinite(by) ? scaled(by, round) : undefined; return literal && amount ? { key: 'dose', words: { amount: `${literal}${ctx.document.text.slice(amount.number.to, Math.max(whole.thing.span.to, amount.unitSpan?.to ?? 0))}` }, splices: [{ from: amount.number.from, to: amount.number.to, literal }] } : undefined; };
  ctx.margins.push({
    code: 'gel-dose-low', at: whole.path, unit: 'share of a dose', sources: ['common-practice'], words, live, warnFrom: FAILS - SHORT,
    // a foam with next to nothing in it has a finding of its own
    op: (w, out, i) => { least(w, out, i); out[i] = prep.foam && out[i]! < NOTHING ? -FAILS : FAILS - out[i]!; },
    remedy: (n) => remedy(1.25 / (n['share'] ?? 0), Math.ceil),
  });
  // of egg white, cream and their like there may be as much as one wants
  if (main.put.source.form !== 'agent') return;
  ctx.margins.push({
    code: 'gel-dose-high', at: whole.path, unit: 'share of a dose', sources: ['common-practice'], words, live,
    op: ({ s }, out, i) => { out[i] = g_per_kg(main, s) * most - MUCH; },
    remedy: (n) => remedy(Math.max(0, (0.9 * words.high) / (n['dose'] ?? 0)), Math.floor),
  });
}

/** A mix too sour for an agent: gums come apart, gelatin is only weaker and asks for a little more of it. */
function sour(ctx: Context, prep: PrepBuilt, f: Found): void {
  const ph = ctx.probed(`prep:${prep.section.key}`, 'ph'), limit = f.agent.pH[0], weaker = f.agent.key.includes('gelatin');
  const least = f.agent.dose['foam']?.[0] ?? f.agent.dose['soft']?.[0] ?? 0;
  if (!ph) return;
  ctx.margins.push({
    code: 'gel-too-acid', at: f.put.measure.path, unit: 'pH', sources: ['hydrocolloids-overview'], words: { agent: nameOf(f.put), limit, ...(weaker ? { degree: 'weaker' } : {}) }, live: { pH: ph }, ...(weaker ? { cap: 'note' as const } : {}),
    op: (w, out, i) => {
      // with enough of it there is nothing to say
      if (weaker && (1000 * f.share(w.s)) / gramsOf(prep.puts, w.s) > least * AMPLE) { out[i] = -limit; return; }
      ph(w, out, i);
      out[i] = limit - out[i]!;
    },
  });
}
/** Of the least dose of gelatin: with so much of it acid does not matter. @source common-practice */
const AMPLE = limit('gel-too-acid', 'ample');

/** Sheets of no grade: they differ by a half in strength. */
function grade(ctx: Context, f: Found): void {
  const m = f.put.measure;
  if (!isSheet(f.put) || m.thing.link.kind !== 'larder' || !m.thing.link.assumed) return;
  ctx.margins.push({
    code: 'gel-grade-missing', at: m.path, unit: 'g', sources: ['gelatin-sheets'], words: { thing: m.thing.words }, op: ({ s }, out, i) => { out[i] = s[f.put.g]!; },
    remedy: { key: 'say-grade', words: {}, splices: [{ from: m.thing.span.from, to: m.thing.span.from, key: 'gold' }] },
  });
}

/** Alcohol above what an agent bears: a gel does not set, and what was to thicken falls out in threads and flakes. */
function strong(prep: PrepBuilt, f: Found, code: 'gel-too-strong' | 'alcohol-throws-out'): MarginSeed[] {
  const limits = f.agent.alcohol.gel;
  if (!limits) return [];
  const first = prep.puts[0]?.measure, spirit = strongestOf(prep), strength = strengthOfPrep(prep), own = f.put.measure.path;
  return [{
    code, at: code === 'gel-too-strong' ? spirit?.measure.path ?? own : own, unit: '% vol', sources: [limits.source], words: { agent: nameOf(f.put), limit: limits.stop }, warnFrom: limits.warn - limits.stop,
    op: ({ s }, out, i) => { out[i] = strength(s) - limits.stop; }, live: { strength: ({ s }, out, i) => { out[i] = strength(s); }, ...tooMuch(prep, spirit, limits) },
    remedy: (n) => weaken(prep, first, spirit, n),
  }];
}

/** What is put to a hot gel so cold that it sets in lumps before it is stirred in. */
function early(ctx: Context, prep: PrepBuilt, f: Found): void {
  const limit = f.agent.combineAbove ?? f.agent.setsBelow;
  if (limit === undefined) return;
  const { coolest } = prep.noted;
  const hot = prep.steps.find((x) => stepRow(x.verb).does === 'boil' || (x.temperature?.celsius ?? 0) > HOT);
  const late = prep.puts.filter((p) => p !== f.put && (!hot || p.measure.span.from > hot.span.to)).map((p) => p.measure), splices = meetWarm(f.agent, late, ctx.document.text);
  const met = late[0] ?? f.put.measure;
  ctx.margins.push({
    code: 'gel-sets-early', at: met.path, unit: 'K', sources: [f.agent.combineAbove !== undefined ? 'agar-spin' : 'hydrocolloids-compared'], words: { agent: nameOf(f.put), limit, thing: met.thing.words },
    op: ({ s }, out, i) => { out[i] = limit - s[coolest]!; }, live: { coolest: ({ s }, out, i) => { out[i] = s[coolest]!; } },
    ...(splices.length > 0 ? { remedy: { key: 'meet-warm', words: { celsius: meetAt(f.agent) }, splices } } : {}),
  });
}

/** Time in a place that is cold enough. */
function set(ctx: Context, prep: PrepBuilt, f: Found, sets: NonNullable<Found['agent']['set']>): void {
  const cold = prep.steps.filter((x) => waits(x) && standsAt(ctx, x) <= sets.celsius && x.span.from > f.put.from);
  const time = timeOf(ctx, prep, cold, HOUR), last = prep.puts[prep.puts.length - 1]!.measure;
  if (!time) return;
  ctx.margins.push({
    code: 'gel-not-set', at: cold[0]?.path ?? f.put.measure.path, unit: 'h', sources: [sets.source], words: { agent: nameOf(f.put), hours: sets.seconds / 3600, celsius: sets.celsius, ...(cold.length === 0 ? { degree: 'never' } : {}) },
    op: (w, out, i) => { time(w, out, i); out[i] = (SETS * sets.seconds) / 3600 - out[i]!; }, live: { time }, warnFrom: ((SETS - HARDLY) * sets.seconds) / 3600, ...(cold.length === 0 ? { cap: 'warn' as const } : {}),
    remedy: { key: 'chill-long', words: { hours: longer(sets.seconds) }, splices: lasting(cold, `${longer(sets.seconds)} h`, lineAfter(prep.sections, last, { key: 'chill' })) },
  });
}
const longer = (seconds: number): number => Math.ceil((seconds / 3600) * 1.5);
const waits = (x: Step): boolean => /^(chill|store|rest|settle|freeze|thaw|age)$/.test(x.verb);

/** How long a charged foam rests in the cold. */
function rests(ctx: Context, prep: PrepBuilt): void {
  const { charge } = prep.noted;
  if (!charge) return;
  const after = prep.steps.filter((x) => waits(x) && x.span.from > charge.step.span.to && standsAt(ctx, x) <= REST_COLD);
  const time = timeOf(ctx, prep, after, MINUTE);
  if (!time) return;
  ctx.margins.push({
    code: 'foam-short-rest', at: after[0]?.path ?? charge.step.path, unit: 'min', sources: ['common-practice'], words: { prep: prep.name, ...(after.length === 0 ? { degree: 'never' } : {}) },
    op: (w, out, i) => { time(w, out, i); out[i] = REST_LEAST - out[i]!; }, live: { time }, warnFrom: REST_LEAST - REST_USUAL, ...(after.length === 0 ? { cap: 'warn' as const } : {}),
    remedy: { key: 'chill-long', words: { hours: 2 }, splices: lasting(after, '2 h', lineAfter(prep.sections, charge.step, { key: 'chill' })) },
  });
}
