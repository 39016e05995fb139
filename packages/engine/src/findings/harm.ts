import { wholeMass } from '../matter/block.ts';
import { at } from '../matter/constituents.ts';
import type { Ingredient } from '../larder/types.ts';
import type { Put } from '../program/vat.ts';
import type { Facts } from './seed.ts';
import { leaveOut } from '../program/edit.ts';
import table from '../../../../data/hazard-doses.json' with { type: 'json' };

const PLANTS = new Set(table.plants);

/** Raw egg, plants that are no food, doses as upper bounds, allergens nobody would guess. @source fda-eggs; us-21cfr172-575 */
export function harm({ ctx, build }: Facts): void {
  const all: Put[] = [...[...ctx.preps.values()].flatMap((p) => p.puts), ...(build?.puts ?? [])];
  for (const p of all) {
    const row = p.source.ingredient;
    if (!row) continue;
    if (row.hazards.includes('raw-egg') && row.category === 'egg' && !pasteurised(p, row)) {
      ctx.margins.push({
        code: 'egg-raw', at: p.measure.path, unit: 'g', sources: ['fda-eggs'], words: { thing: p.measure.thing.words }, op: ({ s }, out, i) => { out[i] = s[p.g]!; },
        ...(/white/.test(row.id) ? { remedy: { key: 'use-pasteurised', words: {}, splices: [{ from: p.measure.thing.span.from, to: p.measure.thing.span.to, key: 'pasteurised-white' }] } } : {}),
      });
    }
    if (PLANTS.has(row.id)) {
      ctx.margins.push({
        code: 'hazard-plant', at: p.measure.path, unit: 'g', sources: sourcesOf(ctx.tables, row), words: { thing: p.measure.thing.words, agent: ctx.tables.hazard(row.hazards[0] ?? '')?.agent ?? row.hazards[0] ?? '' }, op: ({ s }, out, i) => { out[i] = Math.max(s[p.g]!, 1e-6); },
        remedy: { key: 'leave-out', words: { thing: p.measure.thing.words }, splices: leaveOut(ctx.sections, p.measure) },
      });
    }
    const dose = table.rows.find((r) => r.id === row.id);
    if (dose) {
      // if all of it came out, into the whole of the liquid it went into
      const prep = [...ctx.preps.values()].find((q) => q.puts.includes(p));
      const into = prep ? prep.content.phase('liquid') : build!.total;
      const serves = ctx.document.serves;
      ctx.margins.push({
        code: 'hazard-dose', at: p.measure.path, unit: dose.unit, sources: [dose.source], words: { thing: p.measure.thing.words, limit: dose.limit, unit: dose.unit, agent: ctx.tables.hazard(dose.hazard)?.agent ?? dose.hazard },
        live: { dose: ({ s }, out, i) => { out[i] = bound(s, s[p.g]!, into); } },
        op: ({ s }, out, i) => { out[i] = bound(s, s[p.g]!, into) - dose.limit; },
        remedy: { key: 'leave-out', words: { thing: p.measure.thing.words }, splices: leaveOut(ctx.sections, p.measure) },
      });
      function bound(s: Float64Array, grams: number, block: number): number {
        if (dose!.unit === 'mg') return (grams * dose!.agent_mg_g) / serves;
        const kg = wholeMass(s, block) / 1000;
        return kg > 0 ? (grams * dose!.agent_mg_g) / kg : 0;
      }
    }
  }
  if (build) {
    const { total } = build;
    const bitter = all.filter((p) => (p.source.ingredient?.cells['quinine_mg_kg']?.value ?? 0) > 0);
    const last = build.puts.find((p) => bitter.includes(p)) ?? bitter[0];
    if (last) ctx.margins.push({ code: 'hazard-dose', at: last.measure.path, unit: 'mg/kg', sources: ['us-21cfr172-575'], words: { thing: last.measure.thing.words, limit: 83, unit: 'mg/kg', agent: 'quinine' }, live: { dose: ({ s }, out, i) => { out[i] = quinine(s); } }, op: ({ s }, out, i) => { out[i] = quinine(s) - 83; } });
    function quinine(s: Float64Array): number { const m = wholeMass(s, total); return m > 0 ? (s[total + at.quinine]! / m) * 1e6 : 0; }
  }
}

/** Pasteurised white: 57 °C for 3.5 minutes (21 CFR 590.575), or longer, or hotter as long. */
function pasteurised(p: Put, row: Ingredient): boolean {
  if (/pasteur|carton|powder/.test(row.id)) return true;
  const held = p.measure.held;
  return held !== undefined && held.celsius >= 57 && held.seconds >= 210 || p.measure.treatments.some((t) => t.key === 'pasteurised');
}
function sourcesOf(tables: Facts['ctx']['tables'], row: Ingredient): string[] {
  return [...new Set(row.hazards.flatMap((h) => tables.hazard(h)?.limits.map((l) => l.source) ?? []))].slice(0, 3);
}
