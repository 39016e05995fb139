import { strengthIn, volumeAt20 } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { BuildResult } from '../program/build.ts';
import type { Put } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import { OVER } from '../glass/index.ts';
import type { Facts } from './facts.ts';

/** What was made clear with care. */
const CLEARED = /^(clarify with|milk wash)/;
/** A drink looks clear up to this class of turbidity, of 3 for what is opaque. @source common-practice */
const CLEAR = limit('clear-turns-cloudy', 'clear');
/** A thing of this class clouds what was cleared, and so does anise oil that fell out. @source common-practice */
const CLOUDY = limit('clear-turns-cloudy', 'cloudy');
/** Anise oil falls out of what is weaker than this, % vol. @source common-practice */
const LOUCHE = limit('clear-turns-cloudy', 'louche');
/** Less of a glass than this looks forgotten. @source common-practice */
const FULL = limit('glass-underfilled', 'full');
/** Glasses that are meant to stay empty above the drink. */
const ROOMY = /^(snifter|tasting|wine|goblet|claret|tulip-sparkling|shot)$/;

/** What was cleared and is clouded again in the glass; a glass with hardly anything in it. @source common-practice */
export function clear({ ctx, build }: Facts): void {
  if (!build) return;
  cloudy(ctx, build);
  const { levels, brim_mL, shape, assumed } = build.glass, head = ctx.document.head.glass;
  if (assumed || !head || ROOMY.test(shape.key)) return;
  ctx.margins.push({
    code: 'glass-underfilled', at: ['glass'], unit: '%', sources: ['common-practice'], words: { glass: shape.name }, live: { percent: ({ s }, out, i) => { out[i] = 100 * (1 + s[levels + OVER]! / brim_mL); } },
    op: ({ s }, out, i) => { out[i] = 100 * (FULL - 1 - s[levels + OVER]! / brim_mL); },
  });
}

function cloudy(ctx: Facts['ctx'], build: BuildResult): void {
  const cleared = build.puts.find((p) => CLEARED.test(p.source.prep?.section.method ?? ''));
  if (!cleared) return;
  const clouds = build.puts.filter((p) => (p.source.ingredient?.cells['turbidity_class']?.value ?? 0) >= CLOUDY || anise(p)), first = clouds[0];
  if (!first) return;
  const block = build.base.liquid, oil = clouds.some(anise);
  ctx.margins.push({
    code: 'clear-turns-cloudy', at: first.measure.path, unit: 'class', sources: ['common-practice'], words: { thing: clouds.map((p) => p.measure.thing.words).join(', '), clear: cleared.measure.thing.words },
    op: ({ s }, out, i) => {
      const mL = volumeAt20(s, block), turbid = mL > 0 ? s[block + slot.turbid]! / mL : 0;
      const louche = oil && mL > 0 && strengthIn(s[block + at.ethanol]!, mL) < LOUCHE ? CLOUDY : 0;
      out[i] = Math.max(turbid, louche) - CLEAR;
    },
  });
}
const anise = (p: Put): boolean => p.source.ingredient?.text['anise_oil'] === 'yes';
