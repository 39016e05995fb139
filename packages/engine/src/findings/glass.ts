import { OVER, brim } from '../glass/index.ts';
import type { GlassShape } from '../larder/types.ts';
import { limit } from '../program/limits.ts';
import type { MarginSeed } from '../program/context.ts';
import type { Facts } from './facts.ts';
import table from '../../../../data/glass-families.json' with { type: 'json' };

/** Does the glass hold it? Counted to the brim, ice and foam included. @source none - geometry */
export function overfull({ ctx, build }: Facts): void {
  if (!build) return;
  const at = build.glass.levels;
  const head = ctx.document.head.glass, written = ctx.document.glass;
  const last = build.puts[build.puts.length - 1]?.measure.path;
  // a head that was shaken up can stay in the shaker: what is beyond by it alone is never a stop
  const heads = build.layers.filter((l) => l.head).map((l) => l.mL);
  const own = { code: 'glass-overfull', at: head || !last ? ['glass'] : last, unit: 'mL' };
  const rest: Pick<MarginSeed, 'words' | 'sources' | 'cap' | 'remedy'> = {
    words: { glass: build.glass.shape.name, ...(written?.brim_mL !== undefined && !('key' in written) ? { brim: written.brim_mL, degree: 'brim' } : {}) }, sources: ['common-practice'], ...(written || !build.glass.assumed ? {} : { cap: 'warn' as const }),
    remedy: (n) => {
      const shapes = ctx.tables.glasses.map((key) => ctx.tables.glass(key)!);
      const larger = nextGlass(shapes, build.glass.shape.key, (build.glass.brim_mL + Math.max(n['margin'] ?? 0, n['margin'] === undefined || n['margin'] > 0 ? 0 : n['high'] ?? 0)) * ROOM);
      if (!larger) return undefined;
      const first = ctx.document.text.indexOf('\n') + 1;
      return { key: 'larger-glass', words: { glass: larger.name }, splices: head
        ? [{ from: head.span.from, to: head.span.to, key: larger.key }]
        : [{ from: first, to: first, literal: 'glass: ' }, { from: first, to: first, key: larger.key }, { from: first, to: first, literal: '\n' }] };
    },
  };
  // who puts in ice by eye puts in what fits: what is beyond by it alone is no stop either
  const { glassIce, contents: { liquid_mL, foam_mL, base_mL }, glass: { holding } } = build, byEye = glassIce !== null && ctx.book.list[glassIce.mass]?.assumed !== undefined;
  ctx.margins.push({ ...own, ...rest, op: ({ s, x }, out, i) => {
    let over = byEye ? Math.min(s[at + OVER]!, s[liquid_mL]! + s[foam_mL]! + s[base_mL]! - x[holding]!) : s[at + OVER]!;
    for (let k = 0; k < heads.length; k++) over -= s[heads[k]!]!;
    out[i] = over;
  } });
  if (heads.length > 0 || byEye) ctx.margins.push({ ...own, ...rest, cap: 'warn', under: 'glass-overfull', op: ({ s }, out, i) => { out[i] = s[at + OVER]!; } });
}

/** A glass of a name differs by 15 % from maker to maker; what it is to hold safely is less by that and a little. @source common-practice */
const ROOM = limit('glass-overfull', 'room');

/** The smallest glass of the same family that holds so many mL, else the smallest of any family. @source common-practice */
export function nextGlass(shapes: readonly GlassShape[], key: string, wanted_mL: number): GlassShape | undefined {
  const fitting = shapes.filter((g) => brim(g.profile) >= wanted_mL).sort((a, b) => brim(a.profile) - brim(b.profile));
  const own = table.families.filter((f) => f.includes(key)).flat(), any = new Set(table.families.flat());
  return fitting.find((g) => own.includes(g.key)) ?? fitting.find((g) => any.has(g.key));
}
