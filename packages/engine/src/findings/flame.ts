import type { Step } from '../document/types.ts';
import { LIGHTS_PCT } from '../keeping/index.ts';
import { strengthOf } from '../liquids/index.ts';
import type { BuildResult } from '../program/build.ts';
import type { Context } from '../program/context.ts';
import { leaveOut } from '../program/edit.ts';
import type { ProbeOp } from '../program/program.ts';
import { actionsOf } from '../document/actions.ts';
import type { Facts } from './facts.ts';

/** A flame, hob or torch near spirit. A closed bag or jar in a bath is silent. @source common-practice */
export function flame({ ctx, build, ordered }: Facts): void {
  for (const prep of ctx.preps.values()) for (const { step, strength } of prep.noted.fires) near(ctx, step, ({ s }, out, i) => { out[i] = s[strength]!; });
  const torches = ordered.build ? actionsOf(ordered.build.lines).filter((a): a is Step => a.kind === 'step' && a.verb === 'ignite') : [];
  if (build) for (const step of torches) near(ctx, step, strongest(build));
}

function near(ctx: Context, step: Step, strength: ProbeOp): void {
  ctx.margins.push({
    code: 'spirit-near-flame', at: step.path, unit: '% vol', sources: ['common-practice'], words: step.verb === 'ignite' ? { degree: 'lit' } : {},
    op: (w, out, i) => { strength(w, out, i); out[i]! -= LIGHTS_PCT; }, live: { strength },
    remedy: step.verb === 'ignite' ? { key: 'no-flame', words: {}, splices: leaveOut(ctx.sections, step) } : { key: 'closed-bath', words: {}, splices: [{ from: step.span.from, to: step.span.to, key: 'bath' }] },
  });
}

/** Strength of the strongest thing that lies open in the glass. */
function strongest(b: BuildResult): ProbeOp {
  const blocks = [b.total, ...b.layers.map((l) => l.block)];
  return ({ s }, out, i) => {
    let most = 0;
    for (const block of blocks) most = Math.max(most, strengthOf(s, block) || 0);
    out[i] = most;
  };
}
