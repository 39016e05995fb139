import type { Context, PrepBuilt } from '../program/context.ts';
import type { ProbeOp } from '../program/program.ts';
import type { Facts } from './facts.ts';

/** Gas in a closed bottle against what the bottle is taken to bear: as it stands after the steps that are written, and as it would stand if yeast went on. @source carroll-1991; eu-wine; common-practice */
export function pressure({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) if (prep.noted.closed.length > 0) presses(ctx, prep);
}

function presses(ctx: Context, prep: PrepBuilt): void {
  const { closed } = prep.noted, { shut } = closed[0]!, bears = ctx.assume('bottle/bears', shut.path, 'tool');
  const most = (s: Float64Array): number => closed.reduce((top, c) => Math.max(top, s[c.bar]!), 0), last = closed[closed.length - 1]!;
  const live: Record<string, ProbeOp> = {
    bar: ({ s }, out, i) => { out[i] = most(s); }, all: ({ s }, out, i) => { out[i] = s[last.full]!; }, bears: ({ x }, out, i) => { out[i] = x[bears]! / 100; },
  };
  const sources = ['carroll-1991', 'eu-wine', 'common-practice'];
  ctx.margins.push({
    code: 'bottle-may-burst', at: shut.path, unit: 'bar', sources, words: { degree: 'gas' }, live, op: ({ s, x }, out, i) => { out[i] = most(s) - x[bears]! / 100; },
  });
  if (!prep.noted.live) return;
  ctx.margins.push({
    code: 'bottle-may-burst', at: shut.path, unit: 'bar', sources, words: { degree: 'later' }, live, cap: 'warn', under: 'bottle-may-burst', op: ({ s, x }, out, i) => { out[i] = s[last.full]! - x[bears]! / 100; },
  });
}
