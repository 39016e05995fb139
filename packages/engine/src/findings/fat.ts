import type { Step } from '../document/types.ts';
import type { Context, PrepBuilt } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import type { Facts } from './facts.ts';
import { usualAt } from './steps.ts';
import { stepRow } from '../preps/prep.ts';
import { lineAfter, lineOf } from '../program/edit.ts';

/** A place this cold is there to set the fat, not to wash with it. °C */
const SETTING = limit('fat-set-hard', 'setting');

/** A fat that is set while it should wash. @source belitz-fats melting ranges */
export function fat({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    if (prep.section.method !== 'fat wash') continue;
    const fats = prep.puts.filter((p) => p.source.form === 'fat' && p.source.ingredient?.cells['fat_melt_high_c']);
    if (fats.length === 0) continue;
    const melts = Math.max(...fats.map((p) => p.source.ingredient!.cells['fat_melt_high_c']!.value));
    const target = Math.ceil((melts + 7) / 5) * 5;
    const rest = warmestRest(ctx, prep);
    const line = rest && lineOf(ctx.sections, rest), last = prep.puts[prep.puts.length - 1]!.measure;
    const met = rest ? restTemperature(ctx, rest) : asMixed(ctx, prep);
    ctx.margins.push({
      code: 'fat-set-hard', at: rest?.path ?? fats[0]!.measure.path, unit: 'K', sources: ['belitz-fats'], words: { melts },
      live: { celsius: met }, op: (w, out, i) => { met(w, out, i); out[i] = melts - out[i]!; },
      remedy: !rest || !line ? { key: 'rest-first', words: { celsius: target }, splices: lineAfter(ctx.sections, last, { key: 'rest' }) }
        : { key: 'rest-warm', words: { celsius: target }, splices: rest.temperature
          ? [{ from: rest.temperature.span.from, to: rest.temperature.span.to, literal: `${/^at/i.test(ctx.document.text.slice(rest.temperature.span.from)) ? 'at ' : ''}${target} °C` }]
          : [{ from: line.line.span.to, to: line.line.span.to, key: 'at' }] },
    });
  }
}

/** The step in which fat and spirit stand together at their warmest: a rest, or a bath that keeps them warm. */
function warmestRest(ctx: Context, prep: PrepBuilt): Step | undefined {
  const room = usualAt(ctx, 'room'), warm = (x: Step) => x.temperature?.celsius ?? (x.verb === 'freeze' || x.verb === 'chill' || x.verb === 'store' ? -1 : room);
  const stands = (x: Step) => { const { does } = stepRow(x.verb); return does === 'rest' || does === 'set' && x.temperature !== undefined && x.verb !== 'cool'; };
  return prep.steps.filter((x) => stands(x) && warm(x) > SETTING).sort((a, b) => warm(b) - warm(a))[0];
}

function restTemperature(ctx: Context, rest: Step): ProbeOp {
  const t = rest.temperature;
  const key = !t ? 'place/room' : t.celsius < 30 && !t.word ? `place/room/${t.celsius}` : t.word ? `word/${t.word}` : `temperature/${rest.path.join('/')}`;
  const index = ctx.book.list.findIndex((i) => i.key === key), otherwise = t?.celsius ?? usualAt(ctx, 'room');
  return ({ x }, out, i) => { out[i] = index >= 0 ? x[index]! : otherwise; };
}

/** With no rest in between: as they are after the last step before the cold. */
function asMixed(ctx: Context, prep: PrepBuilt): ProbeOp {
  const usual = usualAt(ctx, 'room'), cold = prep.steps.findIndex((x) => stepRow(x.verb).does === 'rest' || (x.temperature?.celsius ?? usual) <= SETTING);
  const before = cold < 0 ? prep.stages.length - 1 : cold - 1;
  const probe = before < 0 ? undefined : ctx.probed(prep.stages[before]!.of, 'temperature');
  const room = ctx.book.list.findIndex((i) => i.key === 'place/room');
  return probe ?? (({ x }, out, i) => { out[i] = room >= 0 ? x[room]! : usual; });
}
