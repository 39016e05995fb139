import type { Section, Step } from '../document/types.ts';
import { steeping } from '../larder/index.ts';
import { addBlock, wholeMass } from '../matter/block.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context, Put, Vat } from '../program/context.ts';
import { settle } from '../program/vat.ts';
import { behindStep } from '../program/words.ts';
import { PULP_HOLDS } from './infusion.ts';
import { PRESSED_HOLDS, undissolved } from './oleo.ts';
import { clear, keepShare, leaveBehind, strainSolids, takeOut } from './move.ts';

interface Straining { readonly section: Section; readonly vat: Vat; readonly step: Step; readonly first: boolean; readonly puts: readonly Put[]; readonly dairy: number; /** what a blender has made a pulp of */ readonly pulped: ReadonlySet<Put>; /** offset of the g of sugar that stay dry in the sieve, -1 where none can */ readonly dry: number }

const PAPER = /paper|lab-filter/, BAG = /bag|muslin/, SIEVE = /sieve|chinois|colander|hawthorne|julep/;

/**
 * What a prep loses to its cloth. The first cloth of a wash or a clearing takes what the method takes (a yield row counts everything
 * up to and including it); every later cloth, paper or sieve holds its mL.
 * @source common-practice
 */
export function strain(ctx: Context, o: Straining): void {
  const { vat: v, section, step, first } = o;
  const { liquid } = v, lost = ctx.lost;
  const method = section.method;
  settle(ctx, v);
  const holds = holdOf(ctx, step);
  if (v.content.has('solids')) {
    // what a nut butter holds is in the yield of its wash
    const counted = (p: Put) => first && method === 'fat wash' && p.source.ingredient?.category === 'nut';
    const wet = o.puts.filter((p) => p.source.ingredient && (p.source.form === 'botanical' || p.source.form === 'piece' || p.source.form === 'insoluble') && !counted(p));
    // peel that gave its water to sugar is pressed; what was wetted again holds as ever
    const pressed = method === 'oleo saccharum' && !o.puts.some((p) => p.source.form === 'liquid' && p.from < step.span.from);
    const each = wet.map((p) => (pressed ? PRESSED_HOLDS : o.pulped.has(p) ? PULP_HOLDS : steeping(p.source.ingredient!)?.held_g_g ?? 1));
    const held = ctx.spread('strain/held by solids', 'strain/held by solids', 1, 'share', 'nature', { at: step.path });
    const solids = v.content.phase('solids'), dry = o.dry;
    ctx.ops.push(({ s, x }) => {
      if (dry >= 0) {
        // sugar that found no water stays in the sieve with the peel
        const sugar = s[liquid + at.sucrose]!, left = undissolved(s, liquid, s[v.celsius]!);
        s[dry]! += left;
        if (sugar > 0) takeOut(s, liquid, lost, at.sucrose, left / sugar, s[v.celsius]!);
      }
      let g = 0;
      for (let i = 0; i < wet.length; i++) g += s[wet[i]!.g]! * each[i]!;
      strainSolids(s, liquid, solids, lost, g * x[held]!);
    });
  }
  if (first && method === 'fat wash') {
    const fats = o.puts.filter((p) => p.source.form === 'fat');
    const nut = o.puts.some((p) => p.source.ingredient?.category === 'nut');
    const hard = fats.some((p) => (p.source.ingredient?.cells['fat_melt_high_c']?.value ?? -20) > -5);
    const row = nut ? 'yield/nut butter wash' : hard ? 'yield/fat wash solid fat' : 'yield/fat wash oil';
    const share = yieldInput(ctx, row, step);
    const fat = v.content.phase('fat');
    ctx.ops.push(({ s, x }) => {
      keepShare(s, liquid, lost, x[share]!);
      takeOut(s, liquid, lost, at.fat, 1, s[v.celsius]!);
      s[liquid + slot.price_minor]! += s[fat + slot.price_minor]!;
      s[fat + slot.price_minor] = 0;
      addBlock(s, lost, fat, 1);
      addBlock(s, fat, fat, -1);
    });
    return;
  }
  if (first && /^clarify with (agar|gelatin|enzyme|gravity)$/.test(method)) {
    const row = method.endsWith('agar') ? 'yield/agar clarify' : method.endsWith('gelatin') ? 'yield/gelatin clarify' : method.endsWith('enzyme') ? 'yield/centrifuge' : 'yield/gelatin clarify';
    const share = yieldInput(ctx, row, step);
    ctx.ops.push(({ s, x }) => { clear(s, liquid, lost, GELS, s[v.celsius]!); keepShare(s, liquid, lost, x[share]!); });
    return;
  }
  if (first && (method === 'milk wash' || method === 'clarify with milk')) {
    const held = ctx.assume('cloth/curd held', step.path, 'tool');
    const tannin = ctx.middle('wash/tannin taken', 'wash/tannin taken', 'share', 'nature', { at: step.path, bounds: { min: 0, max: 1 } });
    const dairy = o.dairy;
    ctx.ops.push(({ s, x }) => {
      const solids = s[liquid + at.casein]! + s[liquid + at.fat]!;
      clear(s, liquid, lost, [at.casein], s[v.celsius]!);
      takeOut(s, liquid, lost, at.tannin, x[tannin]!, s[v.celsius]!);
      const wet = Math.max(0, x[held]! * s[dairy]! - solids), all = wholeMass(s, liquid);
      if (all > 0) keepShare(s, liquid, lost, 1 - Math.min(0.9, wet / all));
    });
    if (holds >= 0) ctx.ops.push(({ s, x }) => leaveBehind(s, liquid, lost, x[holds]!));
    return;
  }
  if (holds >= 0) ctx.ops.push(({ s, x }) => leaveBehind(s, liquid, lost, x[holds]!));
}

const GELS = [at.agar, at.gelatin];

function yieldInput(ctx: Context, row: string, step: Step): number {
  return ctx.middle(row, row, 'share', 'nature', { at: step.path, bounds: { min: 0, max: 1 } });
}

function holdOf(ctx: Context, step: Step): number {
  const key = step.through?.key;
  if (key === undefined) { const said = ctx.tables.assumption('cloth/not said')!; ctx.book.word({ key: 'cloth/not said', value: String(said.value), grade: said.grade, source: said.source, at: step.path, say: said.say, splices: behindStep(step, said.say, ctx.document.text) }); return ctx.assume('cloth/cheesecloth hold', step.path, 'tool'); }
  const row = PAPER.test(key) ? 'cloth/paper hold' : BAG.test(key) ? 'cloth/bag hold' : SIEVE.test(key) ? 'cloth/sieve hold' : 'cloth/cheesecloth hold';
  return ctx.assume(row, step.path, 'tool');
}
