import type { Step } from '../document/types.ts';
import { at } from '../matter/constituents.ts';
import { AGENTS, GENERAL_FOAM, NEEDED_DECADES, agentOf, decadesLost, treatedLeft, type Agent } from '../texture/index.ts';
import type { Context, MarginSeed, PrepBuilt, Put } from '../program/context.ts';
import { behind, lineAfter, written } from '../program/edit.ts';

interface Found { readonly put: Put; readonly agent: Agent; readonly own: boolean; readonly share: (s: Float64Array) => number }

/** Agents of a prep, its own and those that come through the preps it takes from. */
function agentsOf(prep: PrepBuilt): Found[] {
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

const nameOf = (p: Put) => p.measure.thing.words;
const isSheet = (p: Put) => p.measure.amount?.unit === 'sheet' || p.measure.amount?.unit === 'leaf' && /gelatin/.test(p.source.ingredient?.id ?? '');

/**
 * Whether a foam or gel sets, as margins: does anything whip, is it weak enough, soaked, hydrated, and does fruit eat it. A foam of which
 * any is positive does not stand.
 * @source common-practice
 */
export function settingOf(ctx: Context, prep: PrepBuilt): MarginSeed[] {
  const out: MarginSeed[] = [];
  const agents = agentsOf(prep);
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
  const block = prep.content.phase('liquid');
  const whippers = agents.filter((f) => f.agent.whips !== 'no');
  const holders = agents.filter((f) => f.agent.whips === 'no');
  const path = prep.section.lines[0]?.path ?? ['preps', prep.section.key];
  const dose = (s: Float64Array): number => {
    const kg = s[prep.yield_g]! / 1000;
    let sum = 0;
    for (const f of whippers) {
      const low = f.agent.dose.foam?.[0] ?? f.agent.dose.airs?.[0] ?? 10;
      sum += ((f.share(s) / Math.max(kg, 1e-9)) / Math.max(low, 0.1)) * (f.agent.whips === 'weak' ? 0.3 : 1);
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
  const strength = (s: Float64Array) => { const v = s[prep.mL]!; return v > 0 ? (s[block + at.ethanol]! / 0.789239 / v) * 100 : 0; };
  const strong = [...prep.puts].sort((a, b) => Number(!!b.measure.strength) - Number(!!a.measure.strength))[0]?.measure;
  out.push({
    code: 'foam-too-strong', at: strong?.path ?? path, unit: '% vol', sources: [limits.source], words: { agent: main ? nameOf(main.put) : prep.name, limit: limits.stop },
    op: ({ s }, to, i) => { to[i] = strength(s) - limits.stop; }, warnFrom: limits.warn - limits.stop,
    live: { strength: ({ s }, to, i) => { to[i] = strength(s); }, mL: ({ s }, to, i) => { to[i] = Math.max(0, s[prep.mL]! * (strength(s) / (Math.min(limits.warn, limits.stop - 2) * 0.93) - 1)); } },
    remedy: (n) => (first && (n['mL'] ?? 0) > 0 ? { key: 'weaken', words: { mL: Math.ceil(n['mL']! / 5) * 5 }, splices: lineAfter(prep.sections, first, { key: 'water' }) } : undefined),
  });
}
/** A quarter of the least dose is taken for nothing. @source common-practice */
const LEAST = 0.25;

function soaked(ctx: Context, out: MarginSeed[], prep: PrepBuilt, f: Found): void {
  const soak = f.agent.soak;
  if (!soak || !isSheet(f.put)) return;
  const m = f.put.measure;
  const treated = m.treatments.find((t) => t.key === 'soaked');
  const step = prep.steps.find((x) => x.verb === 'soak');
  const seconds = treated ? treated.seconds ?? 600 : step?.seconds?.low ?? (step ? 600 : 0);
  const input = ctx.book.add({ key: `soak/${f.put.occurrence}`, value: seconds, unit: 's', spread: seconds > 0 ? { kind: 'lognormal', cv: 0.2 } : { kind: 'exact' }, grade: 'trade', source: 'common-practice', role: 'time', at: m.path });
  out.push({
    code: 'gel-not-soaked', at: m.path, unit: 's', sources: [soak.source], words: { thing: nameOf(f.put) }, op: ({ x }, to, i) => { to[i] = soak.seconds - x[input]!; },
    remedy: { key: 'soak', words: {}, splices: treated ? [{ from: treated.span.from, to: treated.span.to, key: 'soaked-again' }] : behind(m, 'soaked') },
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
    remedy: needs >= 85 ? { key: 'boil', words: {}, splices: lineAfter(prep.sections, m, { key: 'boil' }) } : { key: 'heat', words: { celsius: Math.ceil((needs + 10) / 5) * 5 }, splices: lineAfter(prep.sections, last, { key: 'heat' }) },
  });
}

/** Decades of protease lost before it meets gelatin: by what was written, else by how the juice is usually sold. */
function digested(ctx: Context, out: MarginSeed[], prep: PrepBuilt, agent: string): void {
  const heated = (steps: readonly Step[], enzyme: string) => steps.reduce((t, x) => {
    const celsius = x.verb === 'boil' ? 100 : x.temperature?.celsius ?? 0;
    return celsius > 45 ? t + (decadesLost(enzyme, celsius, x.seconds?.low ?? 60) || 0) : t;
  }, 0);
  const visit = (p: PrepBuilt) => {
    for (const put of p.puts) {
      if (put.source.prep) { visit(put.source.prep); continue; }
      const row = put.source.ingredient;
      const enzyme = row?.text['protease'];
      if (!row || !enzyme || enzyme.startsWith('(')) continue;
      const m = put.measure;
      const fresh = m.treatments.some((t) => t.key === 'fresh' || t.key === 'squeezed') || (row.cells['protease_class']?.value ?? 0) >= 2;
      const canned = m.treatments.some((t) => t.key === 'canned') || /^(canned|tinned)/i.test(nameOf(put));
      const hold = m.held ? decadesLost(enzyme, m.held.celsius, m.held.seconds) || 0 : 0;
      const steps = heated(p.steps, enzyme) + (p === prep ? 0 : heated(prep.steps, enzyme));
      const known = hold + steps;
      // sold in a carton or can: heated once, how well is not said
      const sold = canned ? -Math.log10(Math.max(treatedLeft(enzyme, 'canned'), 1e-4)) : fresh ? 0 : 2.6;
      const lost = ctx.book.add({
        key: `protease/${row.id}${fresh ? '/fresh' : canned ? '/canned' : ''}/decades lost before`, value: sold, unit: 'decades',
        spread: fresh || canned ? { kind: 'exact' } : { kind: 'range', low: 0.77, high: 4 }, grade: 'trade', source: 'common-practice', role: 'nature', at: m.path,
        ...(fresh || canned || known > 2 ? {} : { assumed: { say: `fresh-pressed ${nameOf(put)}` } }),
      });
      const doubt = ctx.book.add({ key: `model/protease ${enzyme}`, value: 1, unit: 'share', spread: { kind: 'lognormal', cv: 0.3 }, grade: 'compiled', source: 'bromelain-juice-2000', role: 'model' });
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
