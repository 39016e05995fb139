import { densityOf, volumeAt20 } from '../liquids/index.ts';
import { slot } from '../matter/constituents.ts';
import type { BuildResult, LayerBuilt } from '../program/build.ts';
import { actionAt } from '../program/words.ts';
import type { Context } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import type { Facts } from './facts.ts';

/** A layer lighter than what is under it by less than this does not stay, kg/m³. @source common-practice judged */
const STAYS = limit('layer-weak', 'stays');
/** Colours nearer than this, of 1 from black to white through a centimetre, look as one. @source common-practice judged */
const TELLS = limit('layer-invisible', 'tells');
/** Classes of turbidity further apart than this are told as clear and cloudy. @source common-practice judged */
const CLOUDS = limit('layer-invisible', 'clouds');
const TINTS = [slot.tint_r, slot.tint_g, slot.tint_b] as const;

/** Liquids floated on others: does each stay up, and can one tell it. @source none - densities at their own temperatures */
export function layers({ ctx, build }: Facts): void {
  if (!build) return;
  const wet = build.layers.filter((l) => l.kind === 'liquid');
  wet.forEach((upper, k) => {
    const action = actionAt(ctx.document, upper.at);
    if (action?.kind === 'fill' && action.verb === 'sink') return;
    between(ctx, build, upper, k === 0 ? null : wet[k - 1]!);
  });
}

/** One layer over another, or over the drink itself. */
function between(ctx: Context, build: BuildResult, upper: LayerBuilt, lower: LayerBuilt | null): void {
  const celsius = (l: LayerBuilt | null): ((s: Float64Array, x: Float64Array) => number) => {
    const put = l ? build.puts.find((p) => p.measure.path === l.at) : undefined;
    return put ? (s, x) => (put.start.input >= 0 ? x[put.start.input]! : s[put.start.offset]!) : (s) => s[build.temperature]!;
  };
  const block = lower?.block ?? build.base.liquid, above = celsius(upper), below = celsius(lower);
  const heavier: ProbeOp = ({ s, x }, out, i) => { out[i] = volumeAt20(s, block) > 0 ? 1000 * (densityOf(s, upper.block, above(s, x)) - densityOf(s, block, below(s, x))) : NaN; };
  const words = { thing: upper.name }, live = { heavier };
  ctx.margins.push(
    { code: 'layer-will-sink', at: upper.at, unit: 'kg/m3', sources: ['oiml-r22', 'crc-solutions'], words, live, op: heavier },
    {
      code: 'layer-weak', at: upper.at, unit: 'kg/m3', sources: ['common-practice'], words, live: { lighter: (w, out, i) => { heavier(w, out, i); out[i] = -out[i]!; } },
      // what sinks is not weak
      under: 'layer-will-sink', op: (w, out, i) => { heavier(w, out, i); out[i] = out[i]! > 0 ? -STAYS : STAYS + out[i]!; },
    },
    {
      under: 'layer-will-sink', code: 'layer-invisible', at: upper.at, unit: 'share', sources: ['common-practice'], words,
      op: ({ s }, out, i) => {
        const a = volumeAt20(s, upper.block), b = volumeAt20(s, block);
        if (!(a > 0) || !(b > 0)) { out[i] = NaN; return; }
        let far = 0;
        for (const t of TINTS) far = Math.max(far, Math.abs(10 ** -Math.max(0, s[upper.block + t]! / a) - 10 ** -Math.max(0, s[block + t]! / b)));
        // one clear, one cloudy: told by that
        if (Math.abs(s[upper.block + slot.turbid]! / a - s[block + slot.turbid]! / b) > CLOUDS) far = 1;
        out[i] = TELLS - far;
      },
    },
  );
}
