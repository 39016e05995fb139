import type { Facts } from './seed.ts';
import { stepRow } from '../preps/prep.ts';
import { lineOf } from '../program/edit.ts';

/** A fat that is set while it should wash. @source belitz-fats melting ranges */
export function fat({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    if (prep.section.method !== 'fat wash') continue;
    const fats = prep.puts.filter((p) => p.source.form === 'fat' && p.source.ingredient?.cells['fat_melt_high_c']);
    if (fats.length === 0) continue;
    const melts = Math.max(...fats.map((p) => p.source.ingredient!.cells['fat_melt_high_c']!.value));
    const rests = prep.steps.filter((x) => stepRow(x.verb).does === 'rest' && (x.temperature?.celsius ?? (x.verb === 'freeze' || x.verb === 'chill' ? -1 : 20)) > 8);
    const warmest = [...rests].sort((a, b) => (b.temperature?.celsius ?? 20) - (a.temperature?.celsius ?? 20))[0];
    const key = warmest ? (warmest.temperature ? warmest.temperature.celsius < 30 ? `place/room/${warmest.temperature.celsius}` : `temperature/${warmest.path.join('/')}` : 'place/room') : null;
    const index = key ? ctx.book.list.findIndex((i) => i.key === key) : -1;
    const { celsius: mixed } = prep.vat;
    const contact = warmest?.temperature?.celsius ?? 20;
    const where = warmest ? lineOf(ctx.sections, warmest) : undefined;
    const target = Math.ceil((melts + 7) / 5) * 5;
    ctx.margins.push({
      code: 'fat-set-hard', at: warmest?.path ?? fats[0]!.measure.path, unit: 'K', sources: ['belitz-fats'], words: { melts, celsius: contact },
      op: ({ s, x }, out, i) => { out[i] = melts - (index >= 0 ? x[index]! : warmest ? contact : s[mixed]!); },
      ...(warmest && where ? { remedy: { key: 'rest-warm', words: { celsius: target }, splices: warmest.temperature
        ? [{ from: warmest.temperature.span.from, to: warmest.temperature.span.to, literal: `at ${target} °C`.slice(/^at/.test(ctx.document.text.slice(warmest.temperature.span.from)) ? 0 : 3) }]
        : [{ from: where.line.span.to, to: where.line.span.to, key: 'at' }] } } : {}),
    });
  }
}
