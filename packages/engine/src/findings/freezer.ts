import type { Path, Step } from '../document/types.ts';
import { at } from '../matter/constituents.ts';
import { iceAt } from '../liquids/index.ts';
import type { Context, PrepBuilt, RemedySeed } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp } from '../program/program.ts';
import { written } from '../program/edit.ts';
import { behindStep, insteadOf } from '../program/words.ts';
import type { Facts } from './facts.ts';

/** Of the water as ice, %: from SLUSH on it no longer pours freely, from SOLID on not at all. @source common-practice */
const SLUSH = limit('freezes-slush', 'slush'), SOLID = limit('freezes-solid', 'solid');
/** What a gram of ice takes up more than the water it was, mL: 1 / 0.9167 less 1 / 0.9998. @source crc-ice densities at 0 °C */
const SWELLS = 1 / 0.9167 - 1 / 0.9998;
/** Frozen on purpose: by its steps, and as it is kept. */
const WANTED = /^(freeze|ice|clarify with (agar|gelatin))$/, KEPT = /^(freeze|ice)$/;
/** A share at which a batch pours, %, and by how many kelvins a freezer may be colder than it says. @source common-practice */
const POURS = limit('freezes-solid', 'pours'), COLDER = limit('freezes-solid', 'colder');
/** Less of the water than this left, and it is no longer the same drink. @source common-practice */
const LEAVES = limit('freezes-solid', 'leaves');

/** What a freezer makes of a liquid: slush, a block, a burst bottle. @source ross1975; crc-ice */
export function freezer({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const { section: { method }, noted } = prep, thaws = (step: Step): boolean => prep.steps.some((x) => x.verb === 'thaw' && x.span.from > step.span.from);
    const feared = noted.frozen.filter((f) => !(f.step ? WANTED : KEPT).test(method)), stays = feared.filter((f) => f.step && !thaws(f.step));
    // what a step froze is not told of once more as it is kept
    for (const f of stays.length > 0 ? stays : feared.filter((one) => !one.step)) ices(ctx, prep, f);
    for (const f of feared) burst(ctx, prep, f);
  }
}

type Frozen = PrepBuilt['noted']['frozen'][number];

/** The step that froze it, or the prep itself where it is kept so. */
const whereOf = (prep: PrepBuilt, { step }: Frozen): Path => step?.path ?? ['preps', prep.section.key];

/** Too much of it is ice to pour. */
function ices(ctx: Context, prep: PrepBuilt, f: Frozen): void {
  const share: ProbeOp = ({ s }, out, i) => { out[i] = s[f.share]!; };
  const live = { percent: share, water: lessWater(prep, f) }, at = whereOf(prep, f);
  const remedy = (n: Readonly<Record<string, number>>) => pourable(prep, f, n['water'] ?? 0);
  ctx.margins.push({
    code: 'freezes-solid', at, unit: '%', sources: ['ross1975', 'common-practice'], words: { prep: prep.name }, live, remedy,
    op: ({ s }, out, i) => { out[i] = s[f.share]! - SOLID; },
  }, {
    code: 'freezes-slush', at, unit: '%', sources: ['ross1975', 'common-practice'], words: { prep: prep.name }, live, remedy,
    // what is solid is not slush
    under: 'freezes-solid', op: ({ s }, out, i) => { out[i] = (s[f.share]! > SOLID ? 0 : s[f.share]!) - SLUSH; },
  });
}

/** Grams of water to leave out of a prep's own so that it pours at this cold; 0 where it pours already. */
function lessWater(prep: PrepBuilt, f: Frozen): ProbeOp {
  const block = prep.content.phase('liquid'), copy = new Float64Array(at.insolubles + 1);
  return ({ s, x }, out, i) => {
    out[i] = 0;
    const celsius = x[f.celsius]! - COLDER, water = s[block + at.water]!;
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
function pourable(prep: PrepBuilt, f: Frozen, less: number): RemedySeed | undefined {
  const put = prep.puts.find((p) => p.source.ingredient?.category === 'water' && p.measure.amount?.unit === 'ml');
  const amount = put?.measure.amount;
  const now = amount ? (amount.low + amount.high) / 2 : 0, keep = Math.floor((now - less * 1.03) / 5) * 5;
  if (amount && keep >= 5 && keep >= LEAVES * now) return { key: 'less-water', words: { mL: keep }, splices: [{ from: amount.number.from, to: amount.number.to, literal: written(keep) }] };
  if (f.step && prep.section.method === 'fat wash') return undefined;
  return fridge(prep, f);
}

/** The fridge in place of the freezer: of the step that froze it, or as what is done with it last. */
function fridge({ section }: PrepBuilt, { step }: Frozen): RemedySeed {
  const key = 'fridge', end = section.lines[section.lines.length - 1]!.span.to;
  return { key, words: {}, splices: step ? [{ from: step.span.from, to: step.span.to, key }] : [{ from: end, to: end, literal: '\n' }, { from: end, to: end, key }] };
}

/** A bottle or jar of glass that its contents outgrow, or that carries pressure as well. */
function burst(ctx: Context, prep: PrepBuilt, f: Frozen): void {
  const at = whereOf(prep, f), before = f.step ? prep.steps.filter((x) => x.span.from < f.step!.span.from) : prep.steps;
  // a jar of no said size may stand open and half full
  const bottle = f.step?.into?.key === 'jar' ? f.step : before.findLast((x) => /^(bottle|jar|vacuum)$/.test(x.verb) || (x.into?.key === 'jar' && x.vessel_mL));
  if (!bottle) return;
  const step = f.step ?? bottle;
  const { say } = ctx.tables.assumption('freezer bottle/headspace')!;
  const size = (step.vessel_mL ?? bottle.vessel_mL)?.value, room = size === undefined ? ctx.assume('freezer bottle/headspace', at, 'tool', 'freezer bottle/headspace', step.into ? insteadOf(step.into.span, say) : behindStep(step, say, ctx.document.text)) : -1;
  ctx.margins.push({
    code: 'bottle-may-burst', at, unit: 'mL', sources: ['crc-ice', 'common-practice'], words: {},
    op: ({ s, x }, out, i) => {
      const head = size !== undefined ? Math.max(0, size - s[f.mL]!) : (s[f.mL]! * x[room]!) / (1 - x[room]!);
      out[i] = s[f.ice_g]! * SWELLS - s[f.shrinks]! - head;
    },
    live: { swells: ({ s }, out, i) => { out[i] = s[f.ice_g]! * SWELLS - s[f.shrinks]!; } },
    remedy: fridge(prep, f),
  });
}

