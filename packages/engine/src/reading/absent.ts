import { slot, type Extensive } from '../matter/constituents.ts';
import { wholeMass } from '../matter/block.ts';
import type { Compiled } from '../program/compile.ts';
import type { Put } from '../program/context.ts';
import type { Askable } from './asked.ts';
import type { Absent } from './types.ts';

/** Figures that need more of a liquid than its make-up, with what must be known of it. */
const NEEDS: Readonly<Record<string, readonly { readonly slot: Extensive; readonly code: string }[]>> = {
  acidity: [{ slot: 'unknown_g', code: 'make-up-unknown' }, { slot: 'acids_unknown_g', code: 'acids-unknown' }],
  ph: [{ slot: 'unknown_g', code: 'make-up-unknown' }, { slot: 'ph_unknown_g', code: 'ph-unknown' }],
};
/** Why a figure has no number at all here. */
const NONE: Readonly<Record<string, string>> = { dilution: 'no-ice', cost: 'no-price', overrun: 'no-foam', foam_volume: 'no-foam', pressure: 'no-gas', co2: 'no-gas', frozen: 'no-freezer' };

/**
 * Why a figure has no number: what is in it that is not known, or what the recipe does not do.
 * @returns a code with the things it hangs on, the most of it first, and their share of the mass where that decides
 * @source none - definition
 */
export function absentOf(c: Compiled, a: Askable): Absent {
  const { program, ctx, build } = c;
  if (a.probe < 0 && a.code !== undefined) return { code: ctx.choices.some((x) => x.code === a.code) ? 'not-seen' : 'not-reached', things: [] };
  if (a.of === 'drink' && !build) return { code: 'no-drink', things: [] };
  const block = blockOf(c, a.of);
  const w = program.workspace(), n = program.probes.length;
  program.run(Float64Array.from(program.nominal), new Float64Array(n), new Uint8Array(n), w);
  const mass = block < 0 ? 0 : wholeMass(w.s, block);
  if (block >= 0 && !(mass > 0)) return { code: 'nothing-in-it', things: [] };
  if (a.probe < 0 || a.figure === 'cost') return { code: NONE[a.figure] ?? 'not-made', things: [] };
  if (block < 0) return { code: 'not-defined', things: [] };
  const needs = NEEDS[a.figure] ?? [{ slot: 'unknown_g' as const, code: 'make-up-unknown' }];
  const most = needs.map((need) => ({ ...need, share: w.s[block + slot[need.slot]]! / mass })).sort((x, y) => y.share - x.share)[0]!;
  if (most.share > 0) {
    const things = new Map<string, number>();
    collect(a.of === 'drink' || a.of.startsWith('layer:') ? build!.puts : ctx.preps.get(a.of.slice('prep:'.length))!.puts, w.s, slot[most.slot], 1, things);
    if (things.size > 0) return { code: most.code, things: [...things].sort((x, y) => y[1] - x[1]).map(([thing]) => thing), share: most.share };
  }
  return { code: a.figure === 'ph' ? 'too-little-acid' : a.figure === 'pressure' ? 'siphon-full' : 'not-defined', things: [] };
}

function blockOf({ ctx, build }: Compiled, of: string): number {
  if (of === 'drink') return build?.total ?? -1;
  const layer = /^layer:(.+)$/.exec(of)?.[1];
  if (layer !== undefined && build) return layer === 'base' ? build.base.liquid : build.layers[Number(layer)]?.block ?? -1;
  const prep = of.startsWith('prep:') ? ctx.preps.get(of.slice('prep:'.length)) : undefined;
  return prep ? prep.content.phase('liquid') : -1;
}

/** Grams of each written thing that are not known, through preps down to what they were made of. */
function collect(puts: readonly Put[], s: Float64Array, of: number, share: number, out: Map<string, number>, depth = 0): void {
  for (const p of puts) {
    const g = s[p.g]! * share, prep = p.source.prep;
    if (prep && depth < 8) collect(prep.puts, s, of, s[prep.yield_g]! > 0 ? g / s[prep.yield_g]! : 0, out, depth + 1);
    else if (g * s[p.source.block + of]! > 0) out.set(p.measure.thing.words, (out.get(p.measure.thing.words) ?? 0) + g * s[p.source.block + of]!);
  }
}
