import { strengthIn } from '../liquids/index.ts';
import type { Measure, Step } from '../document/types.ts';
import { at } from '../matter/constituents.ts';
import { AGENTS, GENERAL_FOAM, NEEDED_DECADES, agentOf, decadesLost, treatedLeft, type Agent } from '../texture/index.ts';
import type { Context, MarginSeed, PrepBuilt, Put, RemedySeed } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import { behind, insteadOfNumber, lineAfter, written } from '../program/edit.ts';
import { assumeSeconds, assumeTime, secondsOf, usualTime } from '../program/times.ts';
import { beforeThing, insteadOf } from '../program/words.ts';

/** An agent as it came: by whom, its own or through a prep, how many grams. */
export interface Found { readonly put: Put; readonly agent: Agent; readonly own: boolean; readonly share: (s: Float64Array) => number }

/** Agents of a prep, its own and those that come through the preps it takes from. */
export function agentsOf(prep: PrepBuilt): Found[] {
  const out: Found[] = [];
  for (const put of prep.puts) {
    const sub = put.source.prep;
    if (sub) {
      for (const f of agentsOf(sub)) out.push({ ...f, own: false, share: (s) => (s[sub.yield_g]! > 0 ? (f.share(s) * s[put.g]!) / s[sub.yield_g]! : 0) });
      continue;
    }
    const agent = put.source.ingredient ? agentOf(put.source.ingredient.id) : undefined;
    if (agent) out.push({ put, agent, own: true, share: (s) => s[put.g]! });
  }
  return out;
}

/** What came through other preps is told by what went into them: places of earlier parts. */
function readsThrough(ctx: Context, prep: PrepBuilt): void {
  for (const { source: { prep: sub } } of prep.puts) {
    if (!sub) continue;
    ctx.parts.reads(sub.yield_g);
    for (const put of sub.puts) ctx.parts.reads(put.g);
    readsThrough(ctx, sub);
  }
}

export const nameOf = (p: Put) => p.measure.thing.words;
export const isSheet = (p: Put) => p.measure.amount?.unit === 'sheet' || p.measure.amount?.unit === 'leaf' && /gelatin/.test(p.source.ingredient?.id ?? '');

/**
 * Whether a foam or gel sets, as margins: does anything whip, is it weak enough, soaked, hydrated, and does fruit eat it. A foam of which
 * any is positive does not stand.
 * @source common-practice
 */
export function settingOf(ctx: Context, prep: PrepBuilt): MarginSeed[] {
  const out: MarginSeed[] = [];
  const agents = agentsOf(prep);
  readsThrough(ctx, prep);
  if (prep.foam) foam(out, prep, agents);
  for (const f of agents) {
    if (!f.own) continue;
    soaked(ctx, out, prep, f);
    hydrated(out, prep, f);
  }
  const eaten = agents.find((f) => f.agent.protease);
  if (eaten) digested(ctx, out, prep, nameOf(eaten.put));
  return out;
}

function foam(out: MarginSeed[], prep: PrepBuilt, agents: readonly Found[]): void {
  const whippers = agents.filter((f) => f.agent.whips !== 'no');
  const holders = agents.filter((f) => f.agent.whips === 'no');
  const path = prep.section.lines[0]?.path ?? ['preps', prep.section.key];
  const dose = (s: Float64Array): number => {
    const kg = s[prep.yield_g]! / 1000;
    let sum = 0;
    for (const f of whippers) {
      const low = f.agent.dose.foam?.[0] ?? f.agent.dose.airs?.[0] ?? USUAL;
      sum += ((f.share(s) / Math.max(kg, 1e-9)) / Math.max(low, 0.1)) * (f.agent.whips === 'weak' ? WEAK : 1);
    }
    return sum;
  };
  const at0 = holders.find((f) => f.own)?.put.measure.path ?? path;
  const first = prep.puts[0]?.measure;
  out.push({
    code: 'foam-no-whipper', at: at0, unit: 'share of a dose', sources: ['common-practice'], words: { prep: prep.name, agents: holders.map((f) => nameOf(f.put)).join(', '), ...(holders.length === 0 ? { degree: 'nothing' } : {}) },
    op: ({ s }, to, i) => { to[i] = LEAST - dose(s); }, live: { g: ({ s }, to, i) => { to[i] = (s[prep.yield_g]! / 1000) * (AGENTS['methylcellulose']!.dose.foam?.[0] ?? 10) * 1.2; } },
    remedy: (n) => (first ? { key: 'add-whipper', words: { g: written(n['g'] ?? 3) }, splices: lineAfter(prep.sections, first, { key: 'whipper' }) } : undefined),
  });
  const main = whippers.find((f) => f.agent.whips === 'yes') ?? whippers[0];
  const limits = main?.agent.alcohol.foam ?? { ...GENERAL_FOAM, source: 'common-practice' };
  const strength = strengthOfPrep(prep);
  const strong = strongestOf(prep);
  out.push({
    code: 'foam-too-strong', at: strong?.measure.path ?? path, unit: '% vol', sources: [limits.source], words: { agent: main ? nameOf(main.put) : prep.name, limit: limits.stop },
    op: ({ s }, to, i) => { to[i] = strength(s) - limits.stop; }, warnFrom: limits.warn - limits.stop,
    live: { strength: ({ s }, to, i) => { to[i] = strength(s); }, ...tooMuch(prep, strong, limits) },
    remedy: (n) => weaken(prep, first, strong, n),
  });
}
/** % vol of a prep in the end, 0 for an empty one. */
export function strengthOfPrep(prep: PrepBuilt): (s: Float64Array) => number {
  const ethanol = prep.content.phase('liquid') + at.ethanol;
  return (s) => { const mL = s[prep.mL]!; return mL > 0 ? strengthIn(s[ethanol]!, mL) : 0; };
}

/** The thing a prep has most of its alcohol from by what the lines say: the first with a strength written. */
export function strongestOf(prep: PrepBuilt): Put | undefined {
  return [...prep.puts].sort((a, b) => Number(!!b.measure.strength) - Number(!!a.measure.strength))[0];
}

/** Words for `weaken`: mL of water to be put to a mix, or in place of its strongest, that bring it a little below where it is doubtful. */
export function tooMuch(prep: PrepBuilt, strong: Put | undefined, limits: { readonly warn: number; readonly stop: number }): Readonly<Record<string, ProbeOp>> {
  const strength = strengthOfPrep(prep), aim = Math.min(limits.warn, limits.stop - 2) * 0.93;
  return {
    add: ({ s }, to, i) => { to[i] = Math.max(0, s[prep.mL]! * (strength(s) / aim - 1)); },
    swap: ({ s }, to, i) => {
      const own = strong ? strengthIn(s[strong.source.block + at.ethanol]!, s[strong.source.mL]!) : 0;
      to[i] = own > 0 ? Math.max(0, (s[prep.mL]! * (strength(s) - aim)) / own) : 0;
    },
  };
}

/** Water in place of so much of the strongest, to the next 5 mL; where it is not measured in ml, water to what is there. */
export function weaken(prep: PrepBuilt, first: Measure | undefined, strong: Put | undefined, n: Readonly<Record<string, number>>): RemedySeed | undefined {
  const swap = Math.ceil((n['swap'] ?? 0) / 5) * 5, add = Math.ceil((n['add'] ?? 0) / 5) * 5, m = strong?.measure;
  if (m?.amount?.unit === 'ml' && m.amount.low === m.amount.high && swap > 0 && m.amount.low - swap >= 5) {
    return { key: 'less-spirit', words: { mL: swap }, splices: [{ from: m.amount.number.from, to: m.amount.number.to, literal: written(m.amount.low - swap) }, ...lineAfter(prep.sections, prep.puts.find((p) => p.source.form === 'liquid' && p !== strong)?.measure ?? m, { key: 'water' })].sort((a, b) => a.from - b.from) };
  }
  return first && add > 0 ? { key: 'weaken', words: { mL: add }, splices: lineAfter(prep.sections, first, { key: 'water' }) } : undefined;
}
/** Of the least dose: less than LEAST is taken for nothing, what whips weakly counts for WEAK; USUAL, in g/kg, is that of what has none of its own. @source common-practice */
const LEAST = limit('foam-no-whipper', 'least'), WEAK = limit('foam-no-whipper', 'weak'), USUAL = limit('foam-no-whipper', 'usual');

function soaked(ctx: Context, out: MarginSeed[], prep: PrepBuilt, f: Found): void {
  const soak = f.agent.soak;
  if (!soak || !isSheet(f.put)) return;
  const m = f.put.measure;
  const treated = m.treatments.find((t) => t.key === 'soaked');
  const step = prep.steps.find((x) => x.verb === 'soak');
  const seconds = treated ? treated.seconds : step ? step.seconds?.low : 0, usual = 'time/gelatin soak';
  const input = seconds !== undefined ? ctx.spread(`soak/${f.put.occurrence}`, 'time/soak', seconds, 's', 'time', { at: m.path })
    : step && !treated ? assumeTime(ctx, step, usual) : assumeSeconds(ctx, usual, m.path, insteadOf({ from: treated!.span.to, to: treated!.span.to }, ` ${ctx.tables.assumption(usual)!.say}`));
  out.push({
    code: 'gel-not-soaked', at: m.path, unit: 's', sources: [soak.source], words: { thing: nameOf(f.put) }, op: ({ x }, to, i) => { to[i] = soak.seconds - x[input]!; },
    remedy: { key: 'soak', words: {}, splices: treated ? [{ from: treated.span.from, to: treated.span.to + (/^ (in|mit) \S+ (water|wasser)\b/i.exec(ctx.document.text.slice(treated.span.to))?.[0].length ?? 0), key: 'soaked-again' }] : behind(m, 'soaked') },
  });
}

function hydrated(out: MarginSeed[], prep: PrepBuilt, f: Found): void {
  const { hydrate } = f.agent;
  if (hydrate.cold || f.put.source.form !== 'agent') return;
  const { hottest } = prep.vat;
  const m = f.put.measure;
  const needs = hydrate.celsius;
  const last = [...prep.puts].reverse()[0]?.measure ?? m;
  out.push({
    code: 'gel-not-hydrated', at: m.path, unit: 'K', sources: [hydrate.source], words: { agent: nameOf(f.put), needs },
    op: ({ s }, to, i) => { to[i] = needs - s[hottest]!; }, live: { hottest: ({ s }, to, i) => { to[i] = s[hottest]!; } },
    remedy: needs >= 85 ? boiled(prep, f) : { key: 'heat', words: { celsius: Math.ceil((needs + 10) / 5) * 5 }, splices: lineAfter(prep.sections, last, { key: 'heat' }) },
  });
}

/**
 * Boiled in its own water, or where it has none in the first liquid that is no spirit; what is put in after that is warm enough to meet it.
 */
function boiled(prep: PrepBuilt, f: Found): RemedySeed {
  const m = f.put.measure, wet = (p: Put) => p !== f.put && p.source.form === 'liquid' && !p.measure.strength;
  const in_ = m.carrier ? m : prep.puts.find((p) => wet(p) && p.measure.span.from < m.span.from) ? m : prep.puts.find(wet)?.measure ?? m;
  const late = prep.puts.filter((p) => p !== f.put && p.measure.span.from > in_.span.to).map((p) => p.measure);
  return { key: 'boil', words: {}, splices: [...lineAfter(prep.sections, in_, { key: 'boil' }), ...meetWarm(f.agent, late, '')] };
}

/** What meets a hot gel warm enough for any agent that sets hot enough to matter, °C. */
const WARM = 45;
/** How warm a thing is to be when it meets an agent, °C: ten kelvins above where that sets. */
export function meetAt(agent: Agent): number { return Math.max(WARM, Math.ceil(((agent.combineAbove ?? agent.setsBelow ?? 0) + 10) / 5) * 5); }

/** The words that make things as warm as that: a temperature behind each that has none, or in place of a colder one. `text`: of the spec, for the word before a number. */
export function meetWarm(agent: Agent, late: readonly Measure[], text: string): RemedySeed['splices'] {
  if (agent.combineAbove === undefined && agent.setsBelow === undefined) return [];
  const celsius = meetAt(agent);
  return late.filter((m) => m.held === undefined && !(m.temperature && m.temperature.celsius >= celsius)).flatMap((m) => {
    if (m.temperature) return [insteadOfNumber(text, m.temperature.span, `${celsius} °C`)];
    const end = m.span.to;
    return [...(m.treatments.length > 0 ? [{ from: end, to: end, literal: ',' }] : []), { from: end, to: end, literal: ` ${celsius} °C` }];
  });
}

/** Heat in which an enzyme is lost, °C; the class from which on a thing is fresh; decades lost in a juice as it is sold. @source common-practice */
const MATTERS = limit('gel-digested', 'matters'), FRESH = limit('gel-digested', 'fresh'), SOLD = limit('gel-digested', 'sold');

/** Decades of protease lost before it meets gelatin: by what was written, else by how the juice is usually sold. */
function digested(ctx: Context, out: MarginSeed[], prep: PrepBuilt, agent: string): void {
  const usualSeconds = (x: Step) => secondsOf(ctx, usualTime(ctx, x, prep.section.method) ?? 'time/active step');
  const heated = (steps: readonly Step[], enzyme: string) => steps.reduce((t, x) => {
    const celsius = x.verb === 'boil' ? 100 : x.temperature?.celsius ?? 0;
    return celsius > MATTERS ? t + (decadesLost(enzyme, celsius, x.seconds?.low ?? usualSeconds(x)) || 0) : t;
  }, 0);
  const visit = (p: PrepBuilt) => {
    for (const put of p.puts) {
      if (put.source.prep) { visit(put.source.prep); continue; }
      const row = put.source.ingredient;
      const enzyme = row?.text['protease'];
      if (!row || !enzyme || enzyme.startsWith('(')) continue;
      const m = put.measure;
      const fresh = m.treatments.some((t) => t.key === 'fresh' || t.key === 'squeezed') || (row.cells['protease_class']?.value ?? 0) >= FRESH;
      const canned = m.treatments.some((t) => t.key === 'canned') || /^(canned|tinned)/i.test(nameOf(put));
      const hold = m.held ? decadesLost(enzyme, m.held.celsius, m.held.seconds) || 0 : 0;
      const steps = heated(p.steps, enzyme) + (p === prep ? 0 : heated(prep.steps, enzyme));
      const known = hold + steps;
      // sold in a carton or can: heated once, how well is not said
      const sold = canned ? -Math.log10(Math.max(treatedLeft(enzyme, 'canned'), 1e-4)) : fresh ? 0 : SOLD;
      const name = `protease/${row.id}${fresh ? '/fresh' : canned ? '/canned' : ''}/decades lost before`;
      const lost = fresh || canned ? ctx.exact(name, sold, 'decades', 'nature', { at: m.path, grade: 'trade', source: 'common-practice' })
        : ctx.spread(name, 'protease/lost in a sold juice', sold, 'decades', 'nature', { at: m.path, ...(known > 2 ? {} : { assumed: { say: 'canned', splices: beforeThing(m, 'canned') } }) });
      const doubt = ctx.spread(`model/protease ${enzyme}`, 'model/protease', 1, 'share', 'model');
      out.push({
        code: 'gel-digested', at: m.path, unit: 'decades', sources: ['bromelain-juice-2000', 'common-practice'], words: { agent, fruit: fresh && !/fresh/i.test(nameOf(put)) ? `Fresh ${nameOf(put)}` : capital(nameOf(put)) },
        op: ({ x }, to, i) => { to[i] = NEEDED_DECADES - x[lost]! - known * x[doubt]!; },
        ...(enzyme === 'papain' ? {} : { remedy: { key: 'hold-hot', words: {}, splices: m.held ? [{ from: m.held.span.from, to: m.held.span.to, key: 'held-instead' }] : m.temperature ? [{ from: m.temperature.span.from, to: m.temperature.span.to, key: 'held-instead' }] : behind(m, 'held') } }),
      });
    }
  };
  visit(prep);
}
const capital = (t: string) => t.charAt(0).toUpperCase() + t.slice(1);
