import type { Step } from '../document/types.ts';
import { at } from '../matter/constituents.ts';
import { iceAt } from '../liquids/index.ts';
import type { Context, PrepBuilt, RemedySeed } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import { written } from '../program/edit.ts';
import { behindStep, insteadOf } from '../program/words.ts';
import type { Facts } from './facts.ts';
import { usualAt } from './steps.ts';

/** Of the water as ice, %: from SLUSH on it no longer pours freely, from SOLID on not at all. @source common-practice */
const SLUSH = limit('freezes-slush', 'slush'), SOLID = limit('freezes-solid', 'solid');
/** What a gram of ice takes up more than the water it was, mL: 1 / 0.9167 less 1 / 0.9998. @source crc-ice densities at 0 °C */
const SWELLS = 1 / 0.9167 - 1 / 0.9998;
/** Frozen on purpose. */
const WANTED = /^(freeze|ice|clarify with (agar|gelatin))$/;
/** A share at which a batch pours, %, and by how many kelvins a freezer may be colder than it says. @source common-practice */
const POURS = limit('freezes-solid', 'pours'), COLDER = limit('freezes-solid', 'colder');
/** Less of the water than this left, and it is no longer the same drink. @source common-practice */
const LEAVES = limit('freezes-solid', 'leaves');

/** What a freezer makes of a liquid: slush, a block, a burst bottle. @source ross1975; crc-ice */
export function freezer({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    if (WANTED.test(prep.section.method)) continue;
    for (const f of prep.noted.frozen) {
      if (!prep.steps.some((x) => x.verb === 'thaw' && x.span.from > f.step.span.from)) ices(ctx, prep, f);
      burst(ctx, prep, f);
    }
  }
}

type Frozen = PrepBuilt['noted']['frozen'][number];

/** Too much of it is ice to pour. */
function ices(ctx: Context, prep: PrepBuilt, f: Frozen): void {
  const share: ProbeOp = ({ s }, out, i) => { out[i] = s[f.share]!; };
  const live = { percent: share, water: lessWater(ctx, prep, f.step) };
  const remedy = (n: Readonly<Record<string, number>>) => pourable(prep, f.step, n['water'] ?? 0);
  ctx.margins.push({
    code: 'freezes-solid', at: f.step.path, unit: '%', sources: ['ross1975', 'common-practice'], words: { prep: prep.name }, live, remedy,
    op: ({ s }, out, i) => { out[i] = s[f.share]! - SOLID; },
  }, {
    code: 'freezes-slush', at: f.step.path, unit: '%', sources: ['ross1975', 'common-practice'], words: { prep: prep.name }, live, remedy,
    // what is solid is not slush
    under: 'freezes-solid', op: ({ s }, out, i) => { out[i] = (s[f.share]! > SOLID ? 0 : s[f.share]!) - SLUSH; },
  });
}

/** Grams of water to leave out of a prep's own so that it pours at this cold; 0 where it pours already. */
function lessWater(ctx: Context, prep: PrepBuilt, step: Step): ProbeOp {
  const input = ctx.book.list.findIndex((i) => i.at === step.path && i.unit === '°C');
  const block = prep.content.phase('liquid'), copy = new Float64Array(at.insolubles + 1);
  return ({ s, x }, out, i) => {
    out[i] = 0;
    const celsius = (input >= 0 ? x[input]! : step.temperature?.celsius ?? usualAt(ctx, 'freezer')) - COLDER, water = s[block + at.water]!;
    for (let k = 0; k < copy.length; k++) copy[k] = s[block + k]!;
    if ((100 * iceAt(copy, 0, celsius)) / water <= POURS) return;
    let low = 0, high = water;
    for (let k = 0; k < 40; k++) {
      const cut = (low + high) / 2;
      copy[at.water] = water - cut;
      if ((100 * iceAt(copy, 0, celsius)) / (water - cut) > POURS) low = cut; else high = cut;
    }
    out[i] = high;
  };
}

/** Less of the water that was put in, where that is enough; else the fridge. */
function pourable(prep: PrepBuilt, step: Step, less: number): RemedySeed | undefined {
  const put = prep.puts.find((p) => p.source.ingredient?.category === 'water' && p.measure.amount?.unit === 'ml');
  const amount = put?.measure.amount;
  const now = amount ? (amount.low + amount.high) / 2 : 0, keep = Math.floor((now - less * 1.03) / 5) * 5;
  if (amount && keep >= 5 && keep >= LEAVES * now) return { key: 'less-water', words: { mL: keep }, splices: [{ from: amount.number.from, to: amount.number.to, literal: written(keep) }] };
  if (prep.section.method === 'fat wash') return undefined;
  return fridge(step);
}

function fridge(step: Step): RemedySeed { return { key: 'fridge', words: {}, splices: [{ from: step.span.from, to: step.span.to, key: 'fridge' }] }; }

/** A bottle or jar of glass that its contents outgrow, or that carries pressure as well. */
function burst(ctx: Context, prep: PrepBuilt, f: Frozen): void {
  const { step } = f, bottled = step.into?.key === 'jar' || prep.steps.some((x) => /^(bottle|jar|vacuum)$/.test(x.verb) && x.span.from < step.span.from);
  if (!bottled) return;
  const { say } = ctx.tables.assumption('freezer bottle/headspace')!;
  const size = step.vessel_mL?.value, room = size === undefined ? ctx.assume('freezer bottle/headspace', step.path, 'tool', 'freezer bottle/headspace', step.into ? insteadOf(step.into.span, say) : behindStep(step, say, ctx.document.text)) : -1;
  ctx.margins.push({
    code: 'bottle-may-burst', at: step.path, unit: 'mL', sources: ['crc-ice', 'common-practice'], words: {},
    op: ({ s, x }, out, i) => {
      const head = size !== undefined ? Math.max(0, size - s[f.mL]!) : (s[f.mL]! * x[room]!) / (1 - x[room]!);
      out[i] = s[f.ice_g]! * SWELLS - s[f.shrinks]! - head;
    },
    live: { swells: ({ s }, out, i) => { out[i] = s[f.ice_g]! * SWELLS - s[f.shrinks]!; } },
    remedy: fridge(step),
  });
}

