import { agentsOf, nameOf } from '../preps/setting.ts';
import type { PrepBuilt } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import { lineAfter, written } from '../program/edit.ts';
import { wholeMass } from '../matter/block.ts';
import { volumeAt20 } from '../liquids/index.ts';
import type { Facts } from './facts.ts';

/** g of xanthan in a kg that keep a foam that nothing else keeps. @source common-practice */
const KEEPS_G_KG = limit('foam-drains', 'keeps');

/** Foams that fall, and foam measured by what it looks like. @source common-practice */
export function foam({ ctx, build }: Facts): void {
  for (const prep of ctx.preps.values()) if (prep.foam) drains(ctx, prep);
  for (const p of build?.puts ?? []) {
    const prep = p.source.prep, unit = p.measure.amount?.unit;
    if (!prep?.foam || unit === undefined || unit === null || /^(g|kg|oz-weight|lb)$/.test(unit)) continue;
    const { overrun } = prep.foam, amount = p.measure.amount!;
    ctx.margins.push({
      code: 'foam-amount-unclear', at: p.measure.path, unit: 'g', sources: ['common-practice'], words: { thing: p.measure.thing.words }, op: ({ s }, out, i) => { out[i] = s[p.g]!; },
      live: { g: ({ s }, out, i) => { out[i] = s[p.g]!; }, times: ({ s }, out, i) => { out[i] = 1 + s[overrun]! / 100; } },
      remedy: (n) => ((n['g'] ?? 0) > 0 && amount.unitSpan ? { key: 'weigh-it', words: { g: written(n['g']!) }, splices: [{ from: Math.min(amount.number.from, amount.unitSpan.from), to: Math.max(amount.number.to, amount.unitSpan.to), literal: `${written(n['g']!)} g` }] } : undefined),
    });
  }
}

/** All that whips lets go again, and nothing holds it. */
function drains(ctx: Facts['ctx'], prep: PrepBuilt): void {
  const agents = agentsOf(prep), whippers = agents.filter((f) => f.agent.whips !== 'no');
  if (whippers.length === 0 || agents.some((f) => f.agent.holds !== 'no')) return;
  const main = whippers[0]!, block = prep.content.phase('liquid'), last = prep.puts[prep.puts.length - 1]!.measure;
  ctx.margins.push({
    code: 'foam-drains', at: main.put.measure.path, unit: 'mL', sources: ['common-practice'], words: { agent: nameOf(main.put) }, op: ({ s }, out, i) => { out[i] = volumeAt20(s, block); },
    live: { g: ({ s }, out, i) => { out[i] = (wholeMass(s, block) * KEEPS_G_KG) / 1000; } },
    remedy: (n) => ({ key: 'add-keeper', words: { g: written(Math.max(0.1, n['g'] ?? 0)) }, splices: lineAfter(ctx.sections, last, { key: 'keeper' }) }),
  });
}
