import type { Step } from '../document/types.ts';
import { LEAF_MIN } from '../preps/infusion.ts';
import { stepRow } from '../preps/prep.ts';
import { strengthOfPrep, strongestOf } from '../preps/setting.ts';
import type { PrepBuilt, RemedySeed, Steeped } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { Facts } from './facts.ts';
import { harmful } from './harm.ts';

/** Less than this share of what a thing can give is as good as nothing. @source common-practice */
const LEAST = limit('infusion-short', 'least');
/** More contact than this and tea is bitter: so many times the time that draws 63 % out of its leaf. @source common-practice */
const MOST = limit('infusion-bitter', 'most');
/** Bitters keep, and draw what water does not, from this strength on. % vol @source common-practice */
const STRONG = limit('bitters-weak', 'strong');
/** A mix that was never warmer than this stands at one temperature: time counts in proportion. °C @source none - definition */
const EVEN = 35;
/** What the remedies aim at: contact, and minutes for tea that is hot. @source common-practice */
const ENOUGH = limit('infusion-short', 'enough'), GOOD = limit('infusion-bitter', 'good'), CUP_MIN = limit('infusion-bitter', 'cup');
/** A hot infusion that would have to stand for longer than this is not mended by its time alone. min @source none - definition */
const HOT_MIN = 30;

const INFUSIONS = /^(infusion|pressure infusion|bitters)$/;

/** What steeps too short to give anything, tea that steeps too long, bitters too weak to keep. @source common-practice */
export function infusion({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const { method } = prep.section;
    for (const one of prep.steeped) {
      // nobody is told to draw more out of what harms
      if (INFUSIONS.test(method) && !harmful(one.put.source.ingredient!.id)) short(ctx, prep, one);
      if (one.slower === 1) bitter(ctx, prep, one);
    }
    if (method === 'bitters') weak(ctx, prep);
  }
}

/** The only step with a time written in which a thing steeps; undefined where there are several or none. */
function timed(prep: PrepBuilt, one: Steeped): Step | undefined {
  const { from } = one.put, out = prep.steps.find((x) => x.span.from > from && stepRow(x.verb).does === 'strain');
  const steps = prep.steps.filter((x) => x.span.from > from && (!out || x.span.to <= out.span.from) && /^(rest|set|boil)$/.test(stepRow(x.verb).does) && x.verb !== 'cool');
  return steps.length === 1 && steps[0]!.seconds ? steps[0] : undefined;
}

/** A time as it would be written: minutes, from two hours on hours. */
function spoken(minutes: number, round: (n: number) => number): string {
  return minutes < 1 ? `${Math.max(5, round(minutes * 12) * 5)} s` : minutes < 120 ? `${round(minutes)} min` : `${round(minutes / 60)} h`;
}

/** Other words in place of a step's time. */
function lasts(key: string, step: Step, time: string): RemedySeed { return { key, words: { time }, splices: [{ from: step.seconds!.span.from, to: step.seconds!.span.to, literal: time }] }; }

/** Hardly anything came out of it. */
function short(ctx: Facts['ctx'], prep: PrepBuilt, one: Steeped): void {
  const { measure } = one.put, step = timed(prep, one), minutes = step ? (step.seconds!.low + step.seconds!.high) / 120 : 0, { hottest } = prep.vat;
  ctx.margins.push({
    code: 'infusion-short', at: measure.path, unit: 'share', sources: ['common-practice'], words: { thing: measure.thing.words },
    op: ({ s }, out, i) => { out[i] = s[one.put.g]! > 0 ? LEAST - s[one.reached]! : -LEAST; },
    live: { share: ({ s }, out, i) => { out[i] = 100 * s[one.reached]!; }, hottest: ({ s }, out, i) => { out[i] = s[hottest]!; } },
    remedy: (n) => {
      const contact = -Math.log(1 - Math.min(0.99, (n['share'] ?? 0) / 100)), wanted = contact > 1e-4 ? (minutes * ENOUGH) / contact : 0;
      if (!step || wanted <= minutes || ((n['hottest'] ?? 0) > EVEN && wanted > HOT_MIN)) return undefined;
      return lasts('steep-longer', step, spoken(wanted, Math.ceil));
    },
  });
}

/** Tea leaf that gives its last; told as the minutes at 95 °C that would draw as much. */
function bitter(ctx: Facts['ctx'], prep: PrepBuilt, one: Steeped): void {
  const { measure } = one.put, step = timed(prep, one), minutes = step ? (step.seconds!.low + step.seconds!.high) / 120 : 0, { hottest } = prep.vat;
  ctx.margins.push({
    code: 'infusion-bitter', at: measure.path, unit: 'min', sources: ['common-practice'], words: { thing: measure.thing.words },
    op: ({ s }, out, i) => { out[i] = LEAF_MIN * (s[one.put.g]! > 0 ? s[one.contact]! - MOST : -MOST); },
    live: { contact: ({ s }, out, i) => { out[i] = s[one.contact]!; }, hottest: ({ s }, out, i) => { out[i] = s[hottest]!; } },
    remedy: (n) => (!step ? undefined : lasts('steep-shorter', step, (n['hottest'] ?? 0) > EVEN ? `${CUP_MIN} min` : spoken((minutes * GOOD) / Math.max(MOST, n['contact'] ?? MOST), Math.round))),
  });
}

/** Bitters in a spirit that is none. */
function weak(ctx: Facts['ctx'], prep: PrepBuilt): void {
  const first = strongestOf(prep), strength = strengthOfPrep(prep);
  if (!first || prep.steeped.length === 0) return;
  ctx.margins.push({
    code: 'bitters-weak', at: first.measure.path, unit: '% vol', sources: ['common-practice'], words: { limit: STRONG },
    op: ({ s }, out, i) => { out[i] = STRONG - strength(s); }, live: { strength: ({ s }, out, i) => { out[i] = strength(s); } },
  });
}
