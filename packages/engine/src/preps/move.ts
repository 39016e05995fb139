import { boilOff } from '../heat/index.ts';
import { enthalpyOfSolute, volumeAt20 } from '../liquids/index.ts';
import { addBlock, moveShare, wholeMass } from '../matter/block.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';

/**
 * Leaves `mL` of a liquid behind in a cloth, a tin or a vessel; what it cost stays with what is kept.
 * Never more than nine tenths of what is there.
 * @source none - definition
 */
export function leaveBehind(s: Float64Array, liquid: number, lost: number, mL: number): void {
  const all = volumeAt20(s, liquid);
  if (all > 0 && mL > 0) moveShare(s, liquid, lost, Math.min(0.9, mL / all), true);
}

/**
 * Pours a liquid into another, all but `mL` that cling to what it was in; what it cost goes along. `from` stays as it is.
 * @source none - definition
 */
export function pourOut(s: Float64Array, from: number, to: number, lost: number, mL: number): void {
  const all = volumeAt20(s, from), share = all > 0 && mL > 0 ? Math.min(0.9, mL / all) : 0;
  for (let i = 0; i < BLOCK; i++) {
    if (i === slot.price_minor) { s[to + i]! += s[from + i]!; continue; }
    const clings = share * s[from + i]!;
    s[lost + i]! += clings;
    s[to + i]! += s[from + i]! - clings;
  }
}

/** Keeps `share` of a liquid by mass; the rest is lost, its cost is not. @source none - definition */
export function keepShare(s: Float64Array, liquid: number, lost: number, share: number): void {
  moveShare(s, liquid, lost, Math.min(1, Math.max(0, 1 - share)), true);
}

/** Moves a share of one solute into what is lost, with the heat it holds at this temperature: what stays is as warm as it was. @source none - definition */
export function takeOut(s: Float64Array, liquid: number, lost: number, solute: number, share: number, celsius: number): void {
  const g = s[liquid + solute]! * share, heat = g * enthalpyOfSolute(solute, celsius);
  s[liquid + solute]! -= g;
  s[lost + solute]! += g;
  s[liquid + slot.enthalpy_J]! -= heat;
  s[lost + slot.enthalpy_J]! += heat;
}

/**
 * A gel, a centrifuge or a curd has taken hold of what makes a liquid cloudy: pectin, fibre, insolubles, fat and the agent go.
 * @source common-practice
 */
export function clear(s: Float64Array, liquid: number, lost: number, agents: readonly number[], celsius: number): void {
  for (const c of CLOUDS) takeOut(s, liquid, lost, c, 1, celsius);
  for (const c of agents) takeOut(s, liquid, lost, c, 1, celsius);
  s[liquid + slot.turbid] = 0;
  for (const t of TINTS) s[liquid + t]! *= COLOUR_LEFT;
}
/** Half of a juice's colour goes with its cloud. Judged by eye. */
const COLOUR_LEFT = 0.45;
const TINTS = [slot.tint_r, slot.tint_g, slot.tint_b];
const CLOUDS = [at.pectin, at.fibre, at.insolubles, at.fat];

/**
 * Strains wet solids off: they keep `held` g of the liquid, and go with it.
 * @source common-practice
 */
export function strainSolids(s: Float64Array, liquid: number, solids: number, lost: number, held: number): void {
  const own = wholeMass(s, solids);
  if (own <= 0) return;
  const there = wholeMass(s, liquid);
  if (there > 0) moveShare(s, liquid, lost, Math.min(0.9, held / there), true);
  addBlock(s, lost, solids, 1);
  s[liquid + slot.price_minor]! += s[solids + slot.price_minor]!;
  s[lost + slot.price_minor]! -= s[solids + slot.price_minor]!;
  addBlock(s, solids, solids, -1);
}

/**
 * What dissolves out of solids: `share` of everything in them but water, fibre, fat and insolubles goes into the liquid.
 * @source common-practice
 */
export function extract(s: Float64Array, liquid: number, solids: number, share: number): void {
  for (let i = 0; i < slot.enthalpy_J; i++) {
    if (i === at.water || i === at.fibre || i === at.fat || i === at.insolubles) continue;
    const g = share * s[solids + i]!;
    s[solids + i]! -= g;
    s[liquid + i]! += g;
  }
  for (const t of [slot.tint_r, slot.tint_g, slot.tint_b, slot.charge_mol]) { s[liquid + t]! += share * s[solids + t]!; s[solids + t]! *= 1 - share; }
}

/**
 * Boils a share of the water away to reduce it, and of the ethanol as much more as it is more volatile (relative volatility about 8 in dilute
 * solution: nearly all the ethanol of a reduced liquid goes long before the water).
 * @source common-practice
 */
function boilAway(s: Float64Array, liquid: number, lost: number, share: number): void {
  boilOff(s, liquid, s, lost, share, (1 - share) ** VOLATILITY);
}
const VOLATILITY = 8;

/** Boils water off until the liquid fills `mL` at 20 °C; nothing happens when it is less already. @source none - definition */
export function reduceTo(s: Float64Array, liquid: number, lost: number, mL: number): void {
  for (let i = 0; i < 8; i++) {
    const over = volumeAt20(s, liquid) - mL;
    if (over <= 0.001) return;
    const water = s[liquid + at.water]!;
    boilAway(s, liquid, lost, Math.min(0.95, (over * 0.998) / Math.max(water, 1e-9)));
  }
}
