import { LEVEL, LIQUID } from '../glass/index.ts';
import { wholeMass } from '../matter/block.ts';
import { agentsOf } from '../preps/setting.ts';
import type { BuildResult } from './build.ts';
import type { Context, PrepBuilt } from './context.ts';
import siphon from '../../../../data/physics/siphon.json' with { type: 'json' };

const HALF = siphon.half_life_min;

/** Minutes in which half of a foam's liquid drains, by what holds it best. @source common-practice */
export function halfLife(prep: PrepBuilt): number {
  const held = agentsOf(prep).map(({ agent }) => (agent.holds === 'yes' && (agent.set || agent.key === 'cream') ? HALF.sets.value : HALF[agent.holds].value));
  return Math.max(HALF.no.value, ...held);
}

/** Offsets of one glass's foam at a moment: mL and g that stand, mL and g that have run out of it. */
export interface FoamThen { readonly stands: number; readonly stands_g: number; readonly drained: number; readonly drained_g: number }

/**
 * The foam on a drink left alone: what stands of it in mL and mm, and what of its liquid has run out below. Its liquid drains by halves, its gas goes by halves in three times as long.
 * `of`: name of the moment, so many minutes after pouring.
 * @source common-practice; no half-life in print was found, its spread is a factor of three
 */
export function foamLater(ctx: Context, b: BuildResult, of: string, minutes: number): FoamThen | null {
  const foams = b.layers.filter((l) => l.kind === 'foam').flatMap((l) => {
    const prep = b.puts.find((p) => p.measure.path === l.at)?.source.prep;
    return l.head ? [{ ...l, half: HALF[l.head.holds].value, overrun: l.head.overrun }] : prep?.foam ? [{ ...l, half: halfLife(prep), overrun: prep.foam.overrun }] : [];
  });
  if (foams.length === 0) return null;
  const factor = ctx.spread('model/foam half-life', 'model/foam half-life', 1, 'share', 'model', { at: foams[0]!.at });
  const { levels } = b.glass, serves = ctx.document.serves;
  const stands = ctx.layout.take(5), drained = stands + 1, share = stands + 2, stands_g = stands + 3, drained_g = stands + 4;
  ctx.ops.push(({ s, x }) => {
    let served = 0, left = 0, out = 0, weighs = 0, ran = 0;
    for (let k = 0; k < foams.length; k++) {
      const f = foams[k]!;
      if (!(s[f.stands]! > 0)) continue;
      const liquid = s[f.mL]! / (1 + s[f.overrun]! / 100), gas = s[f.mL]! - liquid, halves = minutes / (f.half * x[factor]!), stays = liquid * 2 ** -halves;
      const g = wholeMass(s, f.block), share_g = liquid > 0 ? stays / liquid : 0;
      weighs += g * share_g; ran += g * (1 - share_g);
      served += s[f.mL]!; left += stays + gas * 2 ** (-halves / HALF.gas.value); out += liquid - stays;
    }
    s[stands] = left / serves; s[drained] = out / serves; s[share] = served > 0 ? left / served : 0;
    s[stands_g] = weighs / serves; s[drained_g] = ran / serves;
  });
  ctx.probe('foam_volume', of, 'mL', 'foam-by-halves', ['common-practice'], ({ s }, out, i) => { out[i] = s[stands]!; });
  ctx.probe('foam_mm', of, 'mm', 'foam-by-halves', ['common-practice'], ({ s }, out, i) => { out[i] = Math.max(0, s[levels + LEVEL]! - s[levels + LIQUID]!) * s[share]!; });
  ctx.probe('drained', of, 'mL', 'foam-by-halves', ['common-practice'], ({ s }, out, i) => { out[i] = s[drained]!; });
  return { stands, stands_g, drained, drained_g };
}
