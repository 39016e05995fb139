import type { Measure, Step } from '../document/types.ts';
import { CHARGER, COOL_BEFORE_CHARGING, TOO_HOT_TO_CHARGE } from '../gas/index.ts';
import type { Context, PrepBuilt, Put, RemedySeed } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import { lineBefore } from '../program/edit.ts';
import type { Facts } from './facts.ts';
import { gramsOf } from './steps.ts';
import table from '../../../../data/physics/siphon.json' with { type: 'json' };

/** Sizes that are sold, mL. */
const SIZES = Object.keys(table.vessels).map(Number).sort((a, b) => a - b);
/** A charger is for so much of a mix, mL; a vessel takes at most so many for each of its half litres. @source common-practice */
const FOR_ONE = limit('siphon-undercharged', 'for_one'), MOST = limit('siphon-undercharged', 'most');
/** What is finer than any nozzle once it went through. */
const FINE = /paper|lab-filter|bag|muslin|fine|chinois|cheesecloth|superbag/;

/** What a siphon takes: how full, how much gas, how warm, how fine. Makers' marks go before all of it. @source common-practice; siphon-safety */
export function siphon({ ctx }: Facts): void {
  for (const prep of ctx.preps.values()) {
    const { charge } = prep.noted;
    if (!charge) continue;
    const { step, nominal_mL: size } = charge;
    ctx.margins.push({
      code: 'siphon-overfull', at: step.path, unit: 'mL', sources: ['common-practice'], words: { size },
      op: ({ s }, out, i) => { out[i] = s[charge.mL]! - size; }, live: { mL: ({ s }, out, i) => { out[i] = s[charge.mL]!; } },
      remedy: (n) => largerSiphon(step, n['mL'] ?? 0),
    });
    const written = step.gas?.chargers;
    if (prep.foam && written !== undefined) {
      ctx.margins.push({
        code: 'siphon-undercharged', at: step.path, unit: 'chargers', sources: ['common-practice'], words: { chargers: written },
        op: ({ s, x }, out, i) => { out[i] = s[charge.mL]! / FOR_ONE - charge.gas(x) / CHARGER.g; }, live: { mL: ({ s }, out, i) => { out[i] = s[charge.mL]!; } },
        remedy: (n) => {
          const wanted = Math.ceil((n['mL'] ?? 0) / FOR_ONE + Math.max(0, (n['high'] ?? 0) - (n['margin'] ?? 0)));
          return wanted > written && wanted <= MOST * Math.max(1, size / FOR_ONE) ? { key: 'more-chargers', words: { chargers: wanted }, splices: [{ from: step.gas!.span.from, to: step.gas!.span.to, literal: `${wanted} N2O` }] } : undefined;
        },
      });
    }
    ctx.margins.push({
      code: 'siphon-charged-warm', at: step.path, unit: 'K', sources: ['common-practice'], words: {},
      op: ({ s }, out, i) => { out[i] = s[charge.celsius]! - TOO_HOT_TO_CHARGE; }, warnFrom: COOL_BEFORE_CHARGING - TOO_HOT_TO_CHARGE,
      live: { celsius: ({ s }, out, i) => { out[i] = s[charge.celsius]!; }, bar: charge.pressure },
      remedy: { key: 'cool', words: {}, splices: lineBefore(ctx.sections, step, { key: 'cool' }) },
    });
    // an infusion under pressure is vented with its pieces in it, nothing passes the nozzle
    if (prep.foam) blocks(ctx, prep, step);
  }
}

/** The smallest siphon that is sold and takes it, its chargers with it. */
function largerSiphon(step: Step, mL: number): RemedySeed | undefined {
  const said = step.vessel_mL?.span, size = SIZES.find((s) => s >= mL * 1.06);
  if (size === undefined || !said) return undefined;
  const gas = step.gas, chargers = Math.ceil((mL * 1.06) / FOR_ONE);
  const more = gas?.chargers !== undefined && gas.chargers < chargers ? [{ from: gas.span.from, to: gas.span.to, literal: `${chargers} N2O` }] : [];
  return { key: 'larger-siphon', words: { size }, splices: [...more, { from: said.from, to: said.to, literal: `${size} ml` }] };
}

/** What is coarse and goes into a step unstrained. */
export function coarseBefore(prep: PrepBuilt, step: Step): Put[] {
  const fine = prep.steps.some((x) => x.span.to <= step.span.from && /strain$/.test(x.verb) && (x.verb !== 'strain' || x.flags.includes('fine') || x.flags.includes('double') || FINE.test(x.through?.key ?? '')));
  return fine ? [] : prep.puts.filter((p) => pulp(p) !== 'none' && p.from < step.span.from);
}

/** Strained fine before a step. */
export function strainFine(ctx: Context, step: Step): RemedySeed { return { key: 'strain-fine', words: {}, splices: lineBefore(ctx.sections, step, { key: 'strain' }) }; }

/** Pieces, leaves and pulp that reach the valve. */
function blocks(ctx: Context, prep: PrepBuilt, step: Step): void {
  const coarse = coarseBefore(prep, step), worst = coarse.find((p) => pulp(p) === 'pieces') ?? coarse[0];
  if (!worst) return;
  const soft = pulp(worst) === 'pulp';
  ctx.margins.push({
    code: 'siphon-blocks', at: worst.measure.path, unit: 'g', sources: ['common-practice'], words: { thing: worst.measure.thing.words, ...(soft ? { degree: 'pulp' } : {}) },
    op: ({ s }, out, i) => { out[i] = gramsOf(coarse, s); }, ...(soft ? { cap: 'warn' as const } : {}), remedy: strainFine(ctx, step),
  });
}

/** What of a thing is coarse: pieces and leaves, or the pulp of a juice or purée that nobody strained. */
function pulp(p: Put): 'pieces' | 'pulp' | 'none' {
  const { form, ingredient } = p.source;
  if (form === 'botanical' || form === 'piece' || form === 'insoluble') return 'pieces';
  if (form === 'puree') return 'pulp';
  return ingredient && /^juice/.test(ingredient.category) && (ingredient.cells['turbidity_class']?.value ?? 0) >= PULPY && !strained(p.measure) ? 'pulp' : 'none';
}
/** The class of turbidity from which there is pulp in it. */
const PULPY = limit('siphon-blocks', 'pulp');
const strained = (m: Measure): boolean => m.treatments.some((t) => /strained|clarified|filtered|clear/.test(t.key));
