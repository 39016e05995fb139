import type { Step } from '../document/types.ts';
import { boilOff, ethanolKeptAfterSimmering, ethanolKeptBy } from '../heat/index.ts';
import type { Context, Vat } from '../program/context.ts';
import { enthalpyWithIce } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';

/** How far a pan or a flame departs from the table of what cooking keeps: a power of its shares. */
const asCooked = (ctx: Context, step: Step): number => ctx.spread('model/alcohol kept', 'model/alcohol kept', 1, 'share', 'model', { at: step.path });

/**
 * An open pan at the boil: a share of the water goes, and of the ethanol what the table of cooked dishes says for so many minutes; under a lid nothing.
 * `boilsOff`: row of the assumptions with the water's share; `seconds`: input.
 * @source usda-retention6 codes 5004 to 5009
 */
export function simmer(ctx: Context, v: Vat, step: Step, boilsOff: string, seconds: number): void {
  if (step.flags.includes('covered') || step.flags.includes('closed')) return;
  const water = ctx.assume(boilsOff, step.path, 'nature'), power = asCooked(ctx, step), { lost } = ctx;
  ctx.ops.push(({ s, x }) => { boilOff(s, v.liquid, s, lost, x[water]!, s[v.liquid + at.ethanol]! > 0 ? ethanolKeptAfterSimmering(x[seconds]! / 60) ** x[power]! : 1); });
}

/** A peel is flamed over a drink, not the drink. */
const BESIDE = /peel|zest|twist|oil|schale|zeste|garnish|cinnamon|zimt/i;

/** What is set alight burns part of its ethanol. @source usda-retention6 code 5003 flamed */
export function burn(ctx: Context, v: Vat, step: Step): void {
  if (BESIDE.test(ctx.document.text.slice(step.span.from, step.span.to))) return;
  const power = asCooked(ctx, step), kept = ethanolKeptBy('5003')!, { lost } = ctx;
  ctx.ops.push(({ s, x }) => {
    const { liquid } = v;
    boilOff(s, liquid, s, lost, 0, kept ** x[power]!);
    // the flame's heat goes up: what stays is as warm as it was
    const heat = enthalpyWithIce(s, liquid, s[v.celsius]!, s[v.ownIce]!);
    s[lost + slot.enthalpy_J]! += s[liquid + slot.enthalpy_J]! - heat;
    s[liquid + slot.enthalpy_J] = heat;
  });
}
