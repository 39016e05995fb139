import type { Step } from '../document/types.ts';
import { enthalpy, enthalpyWithIce, volumeAt20, FUSION_J_PER_G, WATER_0_J_G, enthalpyOfIce } from '../liquids/index.ts';
import { SURROUNDINGS, ACCOUNT, areaOfPieces } from '../ice/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { clearBlock, copyBlock } from '../matter/block.ts';
import { stepSeconds } from '../preps/prep.ts';
import type { Context, Vat } from './context.ts';
import { advanceFrozen, mayHoldIce, restFrozen } from './frozen.ts';
import { coldGlass, glassMass, iceOf, type IceBuilt } from './glass.ts';
import { assumeTime, SECONDS_A_TURN } from './times.ts';
import { lendPieces, piecesIn } from './lying.ts';
import { settle } from './vat.ts';

/** Room between packed pieces for each volume of ice, at 0.6 solid. @source common-practice */
const VOID_PER_ICE = 0.4 / 0.6;
/** Share of a glass vessel's mass in its floor. @source common-practice */
const FLOOR = 0.2;
/** Heat capacity of soda-lime glass, J/(g K). @source memory 0.84 */
export const GLASS_J_GK = 0.84;

interface IceStepOptions { readonly usesGlassIce: boolean; readonly glassIce: IceBuilt | null; readonly iced: boolean; readonly measures: number; readonly melted: number; readonly measured_mL: number; readonly dilution: number; readonly inGlass: boolean }

/** A drink meets ice for a while: stir, shake and their like. Closes its account in joules. */
export function iceStep(ctx: Context, step: Step, v: Vat, o: IceStepOptions): { readonly built: IceBuilt; readonly mass: number; readonly celsius: number; readonly balance: number } {
  const verb = step.verb;
  const kind = verb === 'shake' && step.flags.includes('hard') ? 'hard shake' : verb.replace('-', ' ');
  const built = o.glassIce ?? iceOf(ctx, step.ice, kind, step.path);
  const time = verb === 'throw' || verb === 'roll' || verb === 'stir' ? stepTurns(ctx, step) : stepSeconds(ctx, step, true);
  const agitation = ctx.assume(ctx.tables.assumption(`agitation/${kind}`) ? `agitation/${kind}` : 'agitation/stir', step.path, 'model');
  const chipping = ctx.tables.assumption(`agitation/area/${kind}`) ? ctx.assume(`agitation/area/${kind}`, step.path, 'model') : -1;
  const shaken = verb !== 'stir' && verb !== 'swizzle';
  // a serving glass takes its mass times the heat capacity of glass
  const blender = verb === 'blend' || verb === 'flash-blend', vessel = blender ? 'vessel/blender' : shaken ? 'vessel/shaker' : 'vessel/mixing glass';
  const heat = ctx.assume(o.inGlass ? glassMass(ctx) : `${vessel} heat`, step.path, 'tool');
  const perUnit = o.inGlass ? GLASS_J_GK : 1000;                           // J/K from g, or from kJ/K
  const vesselAt = ctx.assume(coldGlass(ctx, step, o.inGlass) ?? (o.inGlass ? 'start/serving glass' : shaken ? 'start/shaker tin' : 'start/mixing glass'), step.path, 'place');
  // how much of it is wetted asks for what it holds; a shaken tin is wetted all over
  const holds = shaken ? -1 : ctx.assume(o.inGlass ? 'glass/brim/not said' : 'vessel/mixing glass volume', step.path, o.inGlass ? 'model' : 'tool');
  const room = ctx.assume('place/room', step.path, 'place');
  const wet = o.usesGlassIce || built.dry ? -1 : ctx.assume(/crushed|pebble|shaved/.test(built.kind) ? 'ice/wet/crushed' : 'ice/wet/cubes', step.path, 'nature');
  const toVessel = ctx.assume(shaken ? 'conductance/drink to tin' : 'conductance/drink to mixing glass', step.path, 'model');
  const toAir = ctx.assume('conductance/vessel to air', step.path, 'model');

  const { ice } = v.content;
  const around = ctx.layout.take(SURROUNDINGS), account = ctx.layout.take(ACCOUNT), before = ctx.layout.take(BLOCK), water = ctx.layout.take(BLOCK), balance = ctx.layout.take(6), then = ctx.layout.take(2);
  ctx.extras.push([water, 1]);
  const bodies = { liquid: v.liquid, enthalpy: v.liquid + slot.enthalpy_J, celsius: v.celsius, vessel: v.content.vessel, ice: ice.mass };
  const first = !o.iced, pieces = piecesIn(v);
  const { usesGlassIce } = o;
  settle(ctx, v);
  ctx.ops.push(({ s, x }) => {
    const liquid = v.liquid;
    if (first) { copyBlock(s, o.measures, liquid); s[o.measured_mL] = volumeAt20(s, liquid) + s[liquid + slot.unknown_g]!; s[o.melted] = 0; }
    copyBlock(s, before, liquid);
    if (!usesGlassIce) {
      const celsius = Math.min(0, x[built.celsius]!), mass = x[built.mass]!;
      // water clings to ice that is not colder than about -1 °C: it is water at 0 °C, and part of what was weighed
      const clinging = mass * (wet >= 0 ? x[wet]! : 0) * Math.min(1, Math.max(0, 1 + celsius));
      s[liquid + at.water]! += clinging;
      s[liquid + slot.enthalpy_J]! += clinging * WATER_0_J_G;
      s[ice.mass] = mass - clinging; s[ice.celsius] = celsius; s[ice.mass0] = mass - clinging; s[ice.area0] = areaOfPieces(mass - clinging, x[built.size]!) * (chipping >= 0 ? x[chipping]! : 1);
      // stirred ice stands in the drink: what stands out of it is not wetted; shaken ice is
      if (!shaken) s[ice.area0]! *= wettedOf(volumeAt20(s, liquid) + s[liquid + slot.unknown_g]!, mass);
      s[account + 2] = clinging;
    } else s[account + 2] = 0;
    if (s[v.content.vessel + 1] === 0) {
      // of the vessel only what is wetted takes part: its floor and the wall up to drink and ice
      s[v.content.vessel + 1] = x[heat]! * perUnit * (shaken ? 1 : wallOf(volumeAt20(s, liquid), s[ice.mass]!, x[holds]!));
      s[v.content.vessel] = x[vesselAt]!;
    }
    const lent = pieces < 0 ? 0 : lendPieces(s, v, pieces);
    s[then] = s[ice.mass]! * enthalpyOfIce(s[ice.celsius]!) + s[account + 2]! * WATER_0_J_G; s[then + 1] = -s[v.content.vessel + 1]! * s[v.content.vessel]!;
    s[account] = 0; s[account + 1] = 0;
    s[around] = x[room]!; s[around + 1] = x[agitation]!; s[around + 2] = x[toVessel]!; s[around + 3] = x[toAir]!;
    advanceFrozen(s, bodies, v.ownIce, around, x[time]!, account);
    s[then + 1]! += s[v.content.vessel + 1]! * s[v.content.vessel]!;
    s[v.content.vessel + 1]! -= lent;
    const iceWater = s[account + 1]! + s[account + 2]!;
    s[o.melted]! += iceWater;
    s[o.dilution] = s[o.measured_mL]! > 0 ? (s[o.melted]! / 0.9982 / s[o.measured_mL]!) * 100 : NaN;
  });
  if (mayHoldIce(ctx, v)) restFrozen(ctx, v);
  // the account, each kJ taken up positive: it sums to zero; pieces in the vessel count with it
  ctx.ofStages.add(ctx.ops.length);
  ctx.ops.push(({ s }) => {
    const t = s[v.celsius]!, iceWater = s[account + 1]! + s[account + 2]!, fused = s[account + 1]! * FUSION_J_PER_G;
    const own = enthalpyWithIce(s, before, t, s[v.ownIce]!);
    clearBlock(s, water);
    s[water + at.water] = iceWater;
    const waterThen = enthalpy(s, water, t);
    s[balance] = (own - s[before + slot.enthalpy_J]!) / 1000;
    s[balance + 1] = fused / 1000;
    s[balance + 2] = (s[ice.mass]! * enthalpyOfIce(s[ice.celsius]!) + waterThen - s[then]! - fused) / 1000;
    s[balance + 3] = s[then + 1]! / 1000;
    s[balance + 4] = -s[account]! / 1000;
    s[balance + 5] = (s[v.liquid + slot.enthalpy_J]! - own - waterThen) / 1000;
  });
  return { built, mass: ice.mass, celsius: ice.celsius, balance };
}

function stepTurns(ctx: Context, step: Step): number {
  if (step.seconds || step.times === undefined) return stepSeconds(ctx, step, true);
  if (step.verb === 'stir') return assumeTime(ctx, step, 'time/turn of a spoon', step.times);
  return ctx.spread(`time/${step.path.join('/')}`, 'time/turns', step.times * SECONDS_A_TURN, 's', 'time', { at: step.path, bounds: { min: 0 } });
}

/** Share of ice that stands in the drink, 0 to 1: what of a heap of so many g so many mL reach. @source none - geometry */
export function wettedOf(mL: number, ice_g: number): number { return Math.min(1, mL / (VOID_PER_ICE * (ice_g / 0.917))); }

/** Share of a glass vessel that takes part, 0 to 1: its floor and the wall up to drink and ice. @source none - geometry */
export function wallOf(mL: number, ice_g: number, holds_mL: number): number { return Math.min(1, FLOOR + (1 - FLOOR) * ((mL + ice_g / 0.917) / holds_mL)); }
