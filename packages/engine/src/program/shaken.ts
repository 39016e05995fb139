import type { Path, Step } from '../document/types.ts';
import { volumeAt20 } from '../liquids/index.ts';
import { BLOCK, slot } from '../matter/constituents.ts';
import { clearBlock, moveShare, wholeMass } from '../matter/block.ts';
import { agentOf, type Agent } from '../texture/index.ts';
import type { Context, Put, Vat } from './context.ts';
import { limit } from './limits.ts';

/** What makes a head in a shaker: whites, chickpea water, protein and gum powders. Gelatin has to set and cream is whipped: they are foams of their own. */
const HEADS = /^(egg|aquafaba|plant protein|whey protein|caseinate|methylcellulose|quillaja|sucrose ester)/;
const SHAKES = /^(shake|whip-shake|dry-shake|blend|flash-blend)$/, DRY = (step: Step): boolean => step.verb === 'dry-shake' || (step.verb === 'shake' && step.flags.includes('dry')) || /blend/.test(step.verb);
/** What whips weakly counts for so much of a dose. @source common-practice */
const WEAK = limit('foam-no-whipper', 'weak');
/** A head takes up no more of the drink than this. @source common-practice */
const MOST = 0.6;

/** A head that was shaken up: its block, mL as it stands, whether it does, its overrun in per cent; what holds it. */
export interface Head { readonly name: string; readonly block: number; readonly mL: number; readonly stands: number; readonly overrun: number; readonly holds: Agent['holds']; readonly at: Path }

/**
 * The head that shaking makes of a drink with egg white, chickpea water or a powder in it: air by the liquid and by how much of a foam's dose is in it, half of it where
 * nothing was shaken dry; as much of the drink goes into the head as carries that air. Null where nothing of the kind was shaken.
 * @source common-practice judged: no measurement of a shaken head was found; whipped by machine egg white grows six to eight times
 */
export function headOf(ctx: Context, puts: readonly Put[], steps: readonly Step[], v: Vat): Head | null {
  const found = puts.flatMap((put) => {
    const agent = put.source.ingredient && agentOf(put.source.ingredient.id), low = agent?.dose.foam?.[0];
    const shaken = steps.filter((x) => SHAKES.test(x.verb) && x.span.from > put.measure.span.from);
    return agent && low !== undefined && HEADS.test(agent.key) && agent.whips !== 'no' && shaken.length > 0 ? [{ put, agent, low, dry: shaken.some(DRY) }] : [];
  });
  const main = found[0];
  if (!main) return null;
  const key = found.some((f) => f.dry) ? 'shaken/air dry' : 'shaken/air on ice', path = main.put.measure.path;
  const air = ctx.middle(key, key, 'share', 'nature', { at: path }), grows = ctx.middle('shaken/overrun', 'shaken/overrun', '%', 'nature', { at: path });
  const block = ctx.layout.take(BLOCK), mL = ctx.layout.take(1), stands = ctx.layout.take(1), overrun = ctx.layout.take(1);
  for (const f of found) ctx.parts.reads(f.put.g);
  ctx.ops.push(({ s, x }) => {
    clearBlock(s, block);
    const liquid = volumeAt20(s, v.liquid) + s[v.liquid + slot.unknown_g]!, kg = wholeMass(s, v.liquid) / 1000;
    s[mL] = 0; s[stands] = 0; s[overrun] = x[grows]!;
    if (!(liquid > 0 && kg > 0)) return;
    let dose = 0;
    for (let i = 0; i < found.length; i++) dose += (s[found[i]!.put.g]! / kg / found[i]!.low) * (found[i]!.agent.whips === 'weak' ? WEAK : 1);
    const share = Math.min(MOST, (x[air]! * Math.min(1, dose) * 100) / x[grows]!);
    moveShare(s, v.liquid, block, share);
    s[mL] = share * liquid * (1 + x[grows]! / 100);
    s[stands] = share > 0 ? 1 : 0;
  });
  return { name: main.put.measure.thing.words, block, mL, stands, overrun, holds: main.agent.holds, at: path };
}
