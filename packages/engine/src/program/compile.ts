import type { Document, Section } from '../document/types.ts';
import type { Tables } from '../larder/types.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { tellCloth } from '../preps/cloth.ts';
import { compilePrep } from '../preps/prep.ts';
import { seedFindings } from '../findings/seed.ts';
import { OVER } from '../glass/index.ts';
import { addBlock, clearBlock, wholeMass } from '../matter/block.ts';
import { strengthIn, volumeAt20 } from '../liquids/index.ts';
import { compileBuild, type BuildResult } from './build.ts';
import { Context } from './context.ts';
import { tellLevels } from './glass.ts';
import { figures } from './figures.ts';
import { compileLater, type Left } from './later.ts';
import { order, sectionsOf, type Ordered } from './order.ts';
import { sparkleOf } from './sparkle.ts';
import { program, type Program } from './program.ts';

/** A recipe ready to run, with what the reading needs of its static side. */
export interface Compiled { readonly program: Program; readonly ctx: Context; readonly build: BuildResult | null; readonly ordered: Ordered; readonly variant: string | null }

/**
 * Compiles a document for one variant, the maker's own shelf before the spec's: names resolved, preps in order of making, every uncertain number an input, every figure and
 * margin a probe. `later`: with what the drink is in its glass for half an hour, `each` whole minute of it with the glass as it stands then. Done once for a structure; `program.run` then computes numbers only.
 * @source none - definition
 */
export function compile(document: Document, tables: Tables, variant: string | null = null, shelf: readonly Section[] = [], later: Left | null = null, each = false): Compiled {
  const sections = [...shelf, ...sectionsOf(document, variant)];
  const ctx = new Context(document, tables, sections);
  const ordered = order(sections);
  for (const section of ordered.preps) {
    ctx.begin();
    const built = compilePrep(ctx, section);
    const of = `prep:${section.key}`, block = built.content.phase('liquid');
    const { volume } = figures(ctx, of, block, { temperature: built.rest_C, known: built.mL });
    ctx.probe('yield', of, 'mL', 'mass-balance', ['common-practice'], ({ s }, out, i) => { out[i] = s[volume]!; });
    if (built.foam) {
      const { overrun } = built.foam;
      ctx.probe('overrun', of, '%', 'usual-overrun', ['common-practice'], ({ s }, out, i) => { out[i] = s[overrun]!; });
      ctx.probe('foam_volume', of, 'mL', 'usual-overrun', ['common-practice'], ({ s }, out, i) => { out[i] = s[volume]! * (1 + s[overrun]! / 100); });
    }
    for (const t of built.takes) ctx.probe(`takes/${t.prep}`, of, 'mL', 'mass-balance', [], ({ s }, out, i) => { const src = ctx.sources.get(`prep ${ctx.preps.get(t.prep)!.name}`)!; out[i] = s[t.g]! * s[src.mL]!; });
    tintProbes(ctx, of, block, volume);
    tellCloth(ctx, built);
  }
  ctx.begin();
  const build = ordered.build && ordered.build.lines.length > 0 ? compileBuild(ctx, ordered.build) : null;
  if (build) drinkProbes(ctx, build, document.serves);
  if (build && later) compileLater(ctx, build, later, each);
  ctx.end();
  seedFindings(ctx, build, ordered);
  for (const [i, m] of ctx.margins.entries()) {
    ctx.probe(`margin:${m.code}`, `finding:${i}`, m.unit, m.code, m.sources, m.op, true);
    for (const [word, op] of Object.entries(m.live ?? {})) ctx.probe(`word:${word}`, `finding:${i}`, '', '', [], op, true);
  }
  for (const [i, choice] of ctx.choices.entries()) for (const [word, op] of Object.entries(choice.live ?? {})) ctx.probe(`word:${word}`, `choice:${i}`, '', '', [], op, true);
  return { program: program(ctx.book.list, ctx.book.firstOp, ctx.layout.length, ctx.ops, ctx.ofStages, ctx.probes, ctx.parts.all(ctx.book.list.length)), ctx, build, ordered, variant };
}

function tintProbes(ctx: Context, of: string, block: number, volume: number): void {
  for (const t of ['tint_r', 'tint_g', 'tint_b', 'turbid'] as const) ctx.probe(t, of, '', 'mixed-absorbance', [], ({ s }, out, i) => { out[i] = s[volume]! > 0 ? s[block + slot[t]]! / s[volume]! : 0; });
}

function drinkProbes(ctx: Context, b: BuildResult, serves: number): void {
  const one = ctx.layout.take(BLOCK);
  ctx.ops.push(({ s }) => { clearBlock(s, one); addBlock(s, one, b.total, 1 / serves); });
  const { volume: all_mL } = figures(ctx, 'drink', one, { temperature: b.temperature });
  if (ctx.sparkling.has(b.base.liquid) || b.layers.some((l) => ctx.sparkling.has(l.block))) sparkleOf(ctx, 'drink', one, all_mL);
  if (b.iced) ctx.probe('dilution', 'drink', '%', 'ice-water-over-measures', ['crc-ice'], ({ s }, out, i) => { out[i] = s[b.dilution]!; });
  const levels = b.glass.levels;
  tellLevels(ctx, 'glass', levels);
  ctx.probe('over_mL', 'glass', 'mL', 'stacked-frusta', ['definition'], ({ s }, out, i) => { out[i] = s[levels + OVER]!; });
  ctx.probe('ice_g', 'glass', 'g', 'mass-balance', [], ({ s }, out, i) => { out[i] = s[b.iceMass]!; });
  const base = b.base.liquid;
  const parts = [{ of: 'layer:base', block: base, mL: -1, stands: -1 }, ...b.layers.map((l, k) => ({ of: `layer:${k}`, block: l.block, mL: l.mL, stands: l.stands }))];
  for (const p of parts) {
    const volume = ctx.layout.take(1);
    ctx.ops.push(({ s }) => { s[volume] = volumeAt20(s, p.block) + s[p.block + slot.unknown_g]!; });
    ctx.probe('mL', p.of, 'mL', 'additive-solutes', ['oiml-r22'], ({ s }, out, i) => { out[i] = s[p.mL >= 0 ? p.mL : volume]! / serves; });
    ctx.probe('stands', p.of, '', '', [], ({ s }, out, i) => { out[i] = p.stands >= 0 ? s[p.stands]! : 1; });
    ctx.probe('strength', p.of, '% vol', 'ethanol-over-volume', ['oiml-r22'], ({ s }, out, i) => { out[i] = s[volume]! > 0 ? strengthIn(s[p.block + at.ethanol]!, s[volume]!) : NaN; });
    ctx.probe('density', p.of, 'kg/m3', 'additive-solutes', ['oiml-r22'], ({ s }, out, i) => { out[i] = s[volume]! > 0 ? (wholeMass(s, p.block) / s[volume]!) * 1000 : NaN; });
    tintProbes(ctx, p.of, p.block, volume);
  }
  for (const [name, offset] of ctx.balances) {
    ctx.parts.reads(offset, 6);
    for (const [k, part] of ['drink', 'melt', 'ice', 'vessel', 'air', 'mixing'].entries()) ctx.probe(`balance:${part}`, name, 'kJ', 'heat-balance', [], ({ s }, out, i) => { out[i] = s[offset + k]!; });
  }
}
