import { enthalpy, sucroseSaturation } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import table from '../../../../data/physics/infusion.json' with { type: 'json' };

const OLEO = table.oleo;
/** Sugar draws water out of peel so many times as slowly as tea leaf gives. @source common-practice four to twenty-four hours in a room */
export const DRAWS_SLOWER = OLEO.slower;
/** g of syrup that a gram of peel keeps when it has given its water and is pressed. @source common-practice */
export const PRESSED_HOLDS = OLEO.held;

/**
 * Grams of sugar that lie undissolved in a block at a temperature.
 * @param celsius 0 to 100
 * @source mohos table A2.3
 */
export function undissolved(s: Float64Array, block: number, celsius: number): number {
  const share = sucroseSaturation(Math.min(100, Math.max(0, celsius))) / 100;
  return Math.max(0, s[block + at.sucrose]! - (s[block + at.water]! * share) / (1 - share));
}

/**
 * Dry sugar draws water out of wet solids, never more than makes a saturated syrup of all of it.
 * @param share of the water in the solids that goes now, 0 to 1
 * @param celsius of both
 * @source common-practice; mohos table A2.3 where it ends
 */
export function drawWater(s: Float64Array, liquid: number, solids: number, share: number, celsius: number): void {
  const dry = undissolved(s, liquid, celsius);
  if (!(dry > 0) || !(share > 0)) return;
  const saturated = sucroseSaturation(Math.min(100, Math.max(0, celsius))) / 100;
  const g = Math.min(s[solids + at.water]! * Math.min(1, share), (dry * (1 - saturated)) / saturated);
  s[solids + at.water]! -= g;
  s[liquid + at.water]! += g;
  s[liquid + slot.enthalpy_J] = enthalpy(s, liquid, celsius);
}
