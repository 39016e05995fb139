import { wholeMass } from '../matter/block.ts';
import { slot } from '../matter/constituents.ts';
import type { Facts } from './facts.ts';
import { written } from '../program/edit.ts';

/** What the spec names and what there is: unknown things, missing, unused and short preps. @source none - definition */
export function names({ ctx, build, ordered }: Facts): void {
  const puts = [...(build?.puts ?? []), ...[...ctx.preps.values()].flatMap((p) => p.puts)];
  for (const u of ctx.unknown) {
    const m = u.measure;
    const link = m.thing.link;
    const nearest = link.kind === 'unknown' ? link.nearest : [];
    const first = nearest[0];
    // a bottle of the shelf is known by name: only its strength is missing
    const why = u.why === 'ingredient-unknown' && link.kind === 'shelf' ? 'strength-unknown' : u.why;
    const put = puts.find((p) => p.measure === m);
    ctx.margins.push({
      code: why, at: m.path, unit: 'g',
      op: ({ s }, out, i) => { out[i] = Math.max(put ? s[put.g]! : 0, 1e-6); },
      words: { thing: m.thing.words, ...Object.fromEntries([0, 1, 2].map((k) => [`near${k + 1}`, nearest[k]?.name ?? ''])), near: nearest.map((n) => n.name).join(', '), ...(u.why === 'ingredient-unknown' && nearest.length === 0 ? { degree: 'alone' } : {}) },
      sources: ['none'],
      ...(first && why === 'ingredient-unknown' ? { remedy: { key: 'use-name', words: { name: first.name }, splices: [{ from: m.thing.span.from, to: m.thing.span.to, literal: first.name }] } } : {}),
      ...(why === 'strength-unknown' ? { remedy: { key: 'write-strength', words: {}, splices: [{ from: m.thing.span.to, to: m.thing.span.to, literal: ' 40 %' }] } } : {}),
    });
  }
  for (const section of ordered.unused) {
    const prep = ctx.preps.get(section.key);
    if (!prep) continue;
    const block = prep.content.phase('liquid');
    ctx.margins.push({ code: 'prep-unused', at: ['preps', section.key], unit: 'g', op: ({ s }, out, i) => { out[i] = Math.max(wholeMass(s, block), 1e-3); }, words: { prep: section.name }, sources: ['none'] });
  }
  for (const prep of ctx.preps.values()) {
    const { used_g, yield_g } = prep, block = prep.content.phase('liquid');
    const source = ctx.sources.get(`prep ${prep.name}`);
    if (!source) continue;
    const takers = puts.filter((p) => p.source.prep === prep);
    if (takers.length === 0 || takers.some((p) => p.measure.portion !== undefined) && takers.length === 1) continue;
    const last = [...takers].reverse().find((p) => p.measure.amount);
    ctx.margins.push({
      code: 'prep-short', at: last?.measure.path ?? ['preps', prep.section.key], unit: 'mL',
      op: ({ s }, out, i) => { out[i] = (s[used_g]! - s[yield_g]!) * s[source.mL]!; },
      words: { prep: prep.name }, live: { made: ({ s }, out, i) => { out[i] = s[yield_g]! * s[source.mL]!; }, wanted: ({ s }, out, i) => { out[i] = s[used_g]! * s[source.mL]!; }, share: ({ s }, out, i) => { out[i] = s[yield_g]! / Math.max(1e-9, s[used_g]!); }, unknown: ({ s }, out, i) => { out[i] = s[block + slot.unknown_g]!; } },
      sources: ['none'],
      remedy: (n) => {
        // as much as there is: every line that takes from it by the same share, with a twentieth for the cloth
        const splices = takers.flatMap((p) => (p.measure.amount ? [{ from: p.measure.amount.number.from, to: p.measure.amount.number.to, literal: written(((p.measure.amount.low + p.measure.amount.high) / 2) * (n['share'] ?? 1) * Math.max(0.3, 0.97 - Math.max(0.12, 1.15 * ((n['high'] ?? 0) - (n['margin'] ?? 0)) / Math.max(1e-9, n['made'] ?? 1)))) }] : []));
        return splices.length > 0 ? { key: 'take-less', words: { made: n['made'] ?? 0 }, splices } : undefined;
      },
    });
  }
}
