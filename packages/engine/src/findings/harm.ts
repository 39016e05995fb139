import type { Context, Put } from '../program/context.ts';
import type { BuildResult } from '../program/build.ts';
import type { Step } from '../document/types.ts';
import { wholeMass } from '../matter/block.ts';
import { at } from '../matter/constituents.ts';
import { eggMinutesMissing, type EggPart } from '../keeping/index.ts';
import type { Ingredient } from '../larder/types.ts';
import type { Facts } from './facts.ts';
import { limit } from '../program/limits.ts';
import { leaveOut, written } from '../program/edit.ts';
import table from '../../../../data/hazard-doses.json' with { type: 'json' };
import { ofPart } from '../document/actions.ts';

const PLANTS = new Set(table.plants);
/** Is a thing no food, or one of which a dose is known to be too much? No remedy asks for more of it. @source us-21cfr172-575; common-practice */
export function harmful(id: string): boolean { return PLANTS.has(id) || table.rows.some((r) => r.id === id); }
/** mg of quinine in a kg of a carbonated drink: the row of the bark it comes from. @source us-21cfr172-575 */
const QUININE = table.rows.find((r) => r.hazard === 'quinine')!.limit;
/** An amount that is not known still counts: there is some of it. g */
const SOME = 1e-6;

/** Raw egg, plants that are no food, doses as upper bounds. @source fda-eggs; us-21cfr172-575 */
export function harm({ ctx, build }: Facts): void {
  const all: Put[] = [...[...ctx.preps.values()].flatMap((p) => p.puts), ...(build?.puts ?? [])];
  for (const p of all) {
    const { link } = p.measure.thing;
    const row = p.source.ingredient ?? (link.kind === 'larder' ? ctx.tables.ingredient(link.id) : undefined);   // of no known amount, still there
    if (!row) continue;
    const thing = p.measure.thing.words;
    const leave = { key: 'leave-out', words: { thing }, splices: leaveOut(ctx.sections, p.measure) };
    if (row.hazards.includes('raw-egg') && row.category === 'egg' && !pasteurised(ctx, p, row)) {
      ctx.margins.push({
        code: 'egg-raw', at: p.measure.path, unit: 'g', sources: ['fda-eggs'], words: { thing }, op: ({ s }, out, i) => { out[i] = Math.max(s[p.g]!, SOME); },
        ...(/white/.test(row.id) ? { remedy: { key: 'use-pasteurised', words: {}, splices: [{ from: p.measure.thing.span.from, to: p.measure.thing.span.to, key: 'pasteurised-white' }] } } : {}),
      });
    }
    if (PLANTS.has(row.id)) {
      ctx.margins.push({
        code: 'hazard-plant', at: p.measure.path, unit: 'g', sources: sourcesOf(ctx.tables, row), words: { thing, agent: ctx.tables.hazard(row.hazards[0] ?? '')?.agent ?? row.hazards[0] ?? '' },
        op: ({ s }, out, i) => { out[i] = Math.max(s[p.g]!, SOME); }, remedy: leave,
      });
    }
    const dose = table.rows.find((r) => r.id === row.id);
    if (dose) {
      const served = servedOf(ctx, build, p);
      ctx.margins.push({
        code: 'hazard-dose', at: p.measure.path, unit: dose.unit, sources: [dose.source], words: { thing, limit: dose.limit, unit: dose.unit, agent: dose.agent ?? ctx.tables.hazard(dose.hazard)?.agent ?? dose.hazard },
        live: { dose: ({ s }, out, i) => { out[i] = bound(s); } }, op: ({ s }, out, i) => { out[i] = bound(s) - dose.limit; }, remedy: leave,
      });
      // if all of it came out, as far as it is poured into the drink
      function bound(s: Float64Array): number {
        const mg = s[p.g]! * dose!.agent_mg_g * served.share(s);
        if (dose!.unit === 'mg') return mg / ctx.document.serves;
        const kg = wholeMass(s, served.block) / 1000;
        return kg > 0 ? mg / kg : 0;
      }
    }
  }
  if (build) quinine(ctx, build, all);
}

/** Where a thing of a prep ends: the drink it is poured into with the share that reaches it, or where nothing is poured, the prep itself. */
function servedOf(ctx: Context, build: BuildResult | null, p: Put): { share: (s: Float64Array) => number; block: number } {
  const prepOf = (q: Put) => [...ctx.preps.values()].find((r) => r.puts.includes(q));
  const own = prepOf(p);
  if (!own) return { share: () => 1, block: build!.total };
  const reached = (prep: NonNullable<typeof own>, depth: number): ((s: Float64Array) => number) => {
    const takers = [...(build?.puts ?? []), ...[...ctx.preps.values()].flatMap((q) => q.puts)].filter((q) => q.source.prep === prep);
    const parts = takers.map((q) => { const next = prepOf(q); return { q, share: next ? (depth < 8 ? reached(next, depth + 1) : () => 0) : () => 1 }; });
    return (s) => { let sum = 0; for (const { q, share } of parts) sum += s[q.g]! * share(s); return s[prep.yield_g]! > 0 ? Math.min(1, sum / s[prep.yield_g]!) : 0; };
  };
  const used = build !== null && feeds(ctx, build, own);
  return used ? { share: reached(own, 0), block: build.total } : { share: () => 1, block: own.content.phase('liquid') };
}
function feeds(ctx: Context, build: BuildResult, prep: Put['source']['prep'], depth = 0): boolean {
  if (build.puts.some((q) => q.source.prep === prep)) return true;
  return depth < 8 && [...ctx.preps.values()].some((r) => r.puts.some((q) => q.source.prep === prep) && feeds(ctx, build, r, depth + 1));
}

/** Quinine of tonic in the drink as served, with what of it may stay. */
function quinine(ctx: Context, build: BuildResult, all: readonly Put[]): void {
  const { total } = build;
  const bitter = (p: Put): boolean => p.measure.quinine !== undefined || (p.source.ingredient?.cells['quinine_mg_kg']?.value ?? 0) > 0 || (p.source.prep?.puts.some(bitter) ?? false);
  const lines = build.puts.filter(bitter), last = lines[lines.length - 1] ?? all.find(bitter);
  if (!last) return;
  const dose = (s: Float64Array) => { const m = wholeMass(s, total); return m > 0 ? (s[total + at.quinine]! / m) * 1e6 : 0; };
  ctx.margins.push({
    code: 'hazard-dose', at: last.measure.path, unit: 'mg/kg', sources: ['us-21cfr172-575'], words: { thing: last.measure.thing.words, limit: QUININE, unit: 'mg/kg', agent: 'quinine', degree: 'stated' },
    live: {
      dose: ({ s }, out, i) => { out[i] = dose(s); },
      // the share of those lines that leaves the rest of the drink at four fifths of the limit
      keep: ({ s }, out, i) => { let g = 0; for (const p of lines) g += s[p.g]!; const aim = 0.8e-6 * QUININE; out[i] = (aim * (wholeMass(s, total) - g)) / Math.max(1e-12, s[total + at.quinine]! - aim * g); },
    },
    op: ({ s }, out, i) => { out[i] = dose(s) - QUININE; },
    remedy: (n) => {
      const keep = n['keep'] ?? 0;
      const splices = lines.flatMap((p) => (p.measure.amount ? [{ from: p.measure.amount.number.from, to: p.measure.amount.number.to, literal: written(((p.measure.amount.low + p.measure.amount.high) / 2) * keep) }] : []));
      return keep > 0 && keep < 1 && splices.length === lines.length ? { key: 'pour-less', words: {}, splices } : undefined;
    },
  });
}

/** Cooked through in a moment, any part of an egg (160 °F). °C @source fda-eggs */
const COOKED = limit('egg-raw', 'cooked');

/** Bought pasteurised, or held hot for as long as the rule asks: on its line, or by the steps of its prep. @source cfr-9-590; fda-eggs */
function pasteurised(ctx: Context, p: Put, row: Ingredient): boolean {
  if (/pasteur|carton|powder/.test(row.id) || p.measure.treatments.some((t) => t.key === 'pasteurised')) return true;
  const part: EggPart = /white/.test(row.id) ? 'white' : /yolk/.test(row.id) ? 'yolk' : 'whole';
  const enough = (celsius: number, seconds: number) => celsius >= COOKED || eggMinutesMissing(part, celsius, seconds / 60) <= 0;
  if (p.measure.held && enough(p.measure.held.celsius, p.measure.held.seconds)) return true;
  const prep = [...ctx.preps.values()].find((q) => q.puts.includes(p));
  return prep?.steps.some((x: Step) => x.span.from > p.from && !ofPart(x) && (x.verb === 'boil' || x.temperature !== undefined && enough(x.temperature.celsius, x.seconds?.low ?? 0))) ?? false;
}
function sourcesOf(tables: Facts['ctx']['tables'], row: Ingredient): string[] {
  return [...new Set(row.hazards.flatMap((h) => tables.hazard(h)?.limits.map((l) => l.source) ?? []))].slice(0, 3);
}
