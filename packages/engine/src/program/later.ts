import { ACCOUNT, SURROUNDINGS, areaOfPieces } from '../ice/index.ts';
import { STANDING } from '../glass/index.ts';
import { enthalpyWithIce, strengthIn, volume, volumeAt20 } from '../liquids/index.ts';
import { addBlock, copyBlock, wholeMass } from '../matter/block.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import type { BuildResult } from './build.ts';
import { GLASS_J_GK, wallOf, wettedOf } from './ice-step.ts';
import type { Context } from './context.ts';
import { foamLater, type FoamThen } from './foam-later.ts';
import { advanceFrozen, restFrozen } from './frozen.ts';
import { coldGlass, glassMass, level, tellLevels } from './glass.ts';
import { CO2_G_MOL } from './sparkle.ts';

/** Minutes after pouring that are told. */
export const LATER_MIN = [2, 5, 10, 20, 30] as const;
/** Every whole minute of half an hour, for who looks at the glass itself. */
export const EACH_MIN = Array.from({ length: 30 }, (_, i) => i + 1);
/** How a drink that is left alone is asked for in readings: what it is so many minutes after it was poured. @source none - definition */
export const laterName = (minutes: number): string => `later:${minutes}`;
/** Where a drink is after it was poured: alone in the room, or in a hand. */
export type Left = 'alone' | 'hand';

/**
 * The drink in its glass, on its ice or without, left alone in the room or held by the wall in a hand, by its stem where it has one: liquids stirred together in thought, garnish left out; foam by a clock of its own. Temperature in °C,
 * strength in % vol, volume in mL at 20 °C, ice in g, water of its own in g by the minute. `each`: at every whole minute, with the levels in the glass.
 * @source none - heat balance of lumped bodies, as `advance`
 */
export function compileLater(ctx: Context, b: BuildResult, left: Left, each = false): void {
  const { layout, document } = ctx, serves = document.serves;
  const liquid = layout.take(BLOCK), ownIce = layout.take(1), celsius = layout.take(1), vessel = layout.take(2), ice = layout.take(4), around = layout.take(SURROUNDINGS), account = layout.take(ACCOUNT);
  const path = ['glass'], last = b.steps[b.steps.length - 1], cold = last ? coldGlass(ctx, last, true) : undefined;
  const stemmed = b.glass.shape.stem_mm > 0;
  const glass = ctx.assume(glassMass(ctx), path, 'tool'), starts = ctx.assume(cold ?? 'start/serving glass', path, 'place'), room = ctx.assume('place/room', path, 'place');
  const still = ctx.assume('agitation/still', path, 'model'), toVessel = ctx.assume('conductance/drink to still glass', path, 'model'), toAir = ctx.assume(stemmed ? 'conductance/stemmed glass to air' : 'conductance/vessel to air', path, 'model');
  const wet = b.layers.filter((l) => l.kind === 'liquid');
  const lively = ctx.sparkling.has(b.base.liquid) || wet.some((l) => ctx.sparkling.has(l.block)), goes = lively ? ctx.middle('gas/lost in ten minutes', 'gas/lost in ten minutes', 'share', 'model', { at: path }) : -1;
  const held = left === 'hand' && !stemmed, skin = held ? ctx.assume('place/hand', path, 'place') : -1, toHand = held ? ctx.assume('conductance/vessel to hand', path, 'model') : -1;
  const own = b.base.content.vessel, given = b.glassIce, served = b.base.content.ice;
  const starting = wet.map((l) => b.puts.find((p) => p.measure.path === l.at)?.start);
  const mayFreeze = ctx.frozen.has(b.base.liquid) || starting.some((start) => start?.ice !== undefined), thawed = { liquid, celsius, ownIce };
  const bodies = { liquid, enthalpy: liquid + slot.enthalpy_J, celsius, vessel, ice };
  ctx.ops.push(({ s, x }) => {
    copyBlock(s, liquid, b.base.liquid);
    for (let k = 0; k < wet.length; k++) {
      const block = wet[k]!.block, start = starting[k];
      addBlock(s, liquid, block, 1);
      s[liquid + slot.enthalpy_J]! += enthalpyWithIce(s, block, start ? (start.input >= 0 ? x[start.input]! : s[start.offset]!) : s[b.temperature]!, start?.ice === undefined ? 0 : s[start.ice]! * wholeMass(s, block));
    }
    for (let i = 0; i < BLOCK; i++) s[liquid + i]! /= serves;
    s[celsius] = s[b.temperature]!;
    const mL = volumeAt20(s, liquid) + s[liquid + slot.unknown_g]!;
    s[ice] = given ? s[b.iceMass]! : 0;
    if (s[ice] > 0) {
      s[ice + 1] = s[served.celsius]!; s[ice + 2] = s[ice]!;
      s[ice + 3] = areaOfPieces(s[ice], given!.size_mm) * wettedOf(mL, s[ice]);
    }
    if (s[own + 1]! > 0) { s[vessel] = s[own]!; s[vessel + 1] = s[own + 1]!; } else {
      s[vessel] = x[starts]!;
      s[vessel + 1] = x[glass]! * GLASS_J_GK * wallOf(mL, s[ice], x[b.glass.holding]!);
    }
    s[account] = 0; s[account + 1] = 0; s[ownIce] = 0;
    s[around] = x[room]!; s[around + 1] = x[still]!; s[around + 2] = x[toVessel]!; s[around + 3] = x[toAir]!;
    // air and skin together are one place, between the two
    if (held) {
      const hand = x[toHand]!, wall = x[toAir]! + hand;
      s[around] = x[room]! + (hand * (x[skin]! - x[room]!)) / wall; s[around + 3] = wall;
    }
  });
  if (mayFreeze) restFrozen(ctx, thawed);
  const unset = b.layers.filter((l) => l.kind === 'foam');
  let before = 0;
  for (const minutes of each ? EACH_MIN : LATER_MIN) {
    const seconds = 60 * (minutes - before), kept = layout.take(5);
    before = minutes;
    ctx.ops.push(({ s }) => {
      advanceFrozen(s, bodies, ownIce, around, seconds, account);
      const mL = volumeAt20(s, liquid) + s[liquid + slot.unknown_g]!;
      s[kept] = s[celsius]!; s[kept + 1] = s[liquid + at.ethanol]!; s[kept + 2] = mL; s[kept + 3] = s[ice]!; s[kept + 4] = s[account + 1]!;
    });
    const of = laterName(minutes), there = (s: Float64Array) => wholeMass(s, b.base.liquid) > 0;
    ctx.probe('temperature', of, '°C', 'heat-balance', ['crc-ice', 'melinder2010'], ({ s }, out, i) => { out[i] = there(s) ? s[kept]! : NaN; });
    ctx.probe('strength', of, '% vol', 'ethanol-over-volume', ['oiml-r22'], ({ s }, out, i) => { out[i] = s[kept + 2]! > 0 ? strengthIn(s[kept + 1]!, s[kept + 2]!) : NaN; });
    ctx.probe('volume', of, 'mL', 'additive-solutes', ['oiml-r22'], ({ s }, out, i) => { out[i] = s[kept + 2]!; });
    if (lively) ctx.probe('co2', of, 'g/L', 'poured-gas', ['glass-shapes-2019', 'common-practice'], ({ s, x }, out, i) => { out[i] = s[kept + 2]! > 0 ? (s[liquid + slot.co2_mol]! * CO2_G_MOL * 1000 * (1 - x[goes]!) ** (minutes / 10)) / s[kept + 2]! : NaN; });
    const foam = foamLater(ctx, b, of, minutes);
    if (each) standsThen(ctx, b, of, { liquid, celsius, ice, unset, foam });
    if (given) ctx.probe('ice_left', of, 'g', 'heat-balance', ['crc-ice'], ({ s }, out, i) => { out[i] = s[kept + 3]!; });
    if (given) ctx.probe('melted', of, 'g', 'heat-balance', ['crc-ice'], ({ s }, out, i) => { out[i] = s[kept + 4]!; });
  }
}

/** The glass at a moment: levels by the drink as it is then, with what ran out of the foam, and by the ice and the foam that are left; the gel at the floor stays. */
function standsThen(ctx: Context, b: BuildResult, of: string, then: { readonly liquid: number; readonly celsius: number; readonly ice: number; readonly unset: BuildResult['layers']; readonly foam: FoamThen | null }): void {
  const { liquid, celsius, ice, unset, foam } = then, levels = ctx.layout.take(STANDING), kept = ctx.layout.take(4), serves = ctx.document.serves;
  const contents = { liquid_mL: kept, density: kept + 1, foam_mL: kept + 2, foam_density: kept + 3, base_mL: b.contents.base_mL };
  ctx.ops.push(({ s }) => {
    let mL = volume(s, liquid, s[celsius]!) + s[liquid + slot.unknown_g]!, grams = wholeMass(s, liquid);
    // a foam that did not set is in the drink
    for (let i = 0; i < unset.length; i++) if (!(s[unset[i]!.stands]! > 0)) { mL += s[unset[i]!.mL]! / serves; grams += wholeMass(s, unset[i]!.block) / serves; }
    if (foam) { mL += s[foam.drained]!; grams += s[foam.drained_g]!; }
    s[contents.liquid_mL] = mL;
    s[contents.density] = mL > 0 ? grams / mL : 1;
    s[contents.foam_mL] = foam ? s[foam.stands]! : 0;
    s[contents.foam_density] = foam && s[foam.stands]! > 0 ? s[foam.stands_g]! / s[foam.stands]! : 0.25;
  });
  level(ctx, b.glass, contents, b.glassIce, ice, levels);
  tellLevels(ctx, of, levels);
}
