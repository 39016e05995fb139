import { diet } from '../reading/diet.ts';
import type { Facts } from './facts.ts';

/** Allergens that the build's own words do not show, one note a group. @source eu-1169-2011-annex2 */
export function hidden({ ctx, build }: Facts): void {
  const told = new Set<string>();
  for (const a of diet(ctx, build).allergens) {
    if (!a.hidden || told.has(a.group)) continue;
    told.add(a.group);
    const put = [...[...ctx.preps.values()].flatMap((p) => p.puts), ...(build?.puts ?? [])].find((p) => p.measure.path.join('/') === a.from.join('/'));
    ctx.margins.push({ code: 'allergen-hidden', at: a.from, unit: 'g', sources: ['eu-1169-2011-annex2'], words: { group: a.group, thing: put?.measure.thing.words ?? a.group, ...(a.certain ? {} : { degree: 'may' }) }, op: ({ s }, out, i) => { out[i] = put ? Math.max(s[put.g]!, 1e-9) : 1; } });
  }
}
