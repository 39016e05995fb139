import { OVER, brim } from '../glass/index.ts';
import type { Facts } from './seed.ts';

/** Does the glass hold it? Counted to the brim, ice and foam included. @source none - geometry */
export function overfull({ ctx, build }: Facts): void {
  if (!build) return;
  const at = build.glass.levels;
  const head = ctx.document.head.glass;
  ctx.margins.push({
    code: 'glass-overfull', at: ['glass'], unit: 'mL', op: ({ s }, out, i) => { out[i] = s[at + OVER]!; },
    words: { glass: build.glass.shape.name }, sources: ['geometry'], ...(build.glass.assumed ? { cap: 'warn' as const } : {}),
    remedy: (n) => {
      const wanted = (n['high'] ?? 0) * 1.05 + build.glass.brim_mL * 1.02;
      const larger = ctx.tables.glasses.map((key) => ctx.tables.glass(key)!).filter((g) => !NO_GLASS.has(g.key) && brim(g.profile) > wanted).sort((a, b) => brim(a.profile) - brim(b.profile))[0];
      if (!larger) return undefined;
      const first = ctx.document.text.indexOf('\n') + 1;
      return { key: 'larger-glass', words: { glass: larger.name }, splices: [head ? { from: head.span.from, to: head.span.to, literal: larger.name } : { from: first, to: first, literal: `glass: ${larger.name}\n` }] };
    },
  });
}

/** Vessels nobody drinks from. */
const NO_GLASS = new Set(['mixing-vessel', 'shaker', 'siphon', 'jar', 'carafe', 'punch-bowl', 'bar-glass']);
