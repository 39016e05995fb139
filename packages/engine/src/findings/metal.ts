import { COPPER_PH } from '../keeping/index.ts';
import type { Facts } from './facts.ts';

/** Bare copper under anything sour. @source memory food code 4-101.14 */
export function metal({ ctx, build }: Facts): void {
  if (build?.glass.shape.key !== 'copper-mug') return;
  const ph = ctx.probed('drink', 'ph'), head = ctx.document.head.glass;
  if (!ph) return;
  ctx.margins.push({
    code: 'acid-in-metal', at: ['glass'], unit: 'pH', sources: ['memory'], words: { limit: COPPER_PH }, live: { pH: ph },
    op: (w, out, i) => { ph(w, out, i); out[i] = COPPER_PH - out[i]!; },
    ...(head ? { remedy: { key: 'other-glass', words: {}, splices: [{ from: head.span.from, to: head.span.to, key: 'highball' }] } } : {}),
  });
}
