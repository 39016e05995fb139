import { at, CONSTITUENTS } from '../matter/constituents.ts';
import { densityOfEthanolWater } from './ethanol-water-density.ts';
import { massFractionFromStrength } from './strength.ts';
import { massOf, volume } from './volume.ts';

const N = CONSTITUENTS.length;
const ETHANOL = densityOfEthanolWater(1, 20) / 1000, WATER = densityOfEthanolWater(0, 20) / 1000;
/** Where the rules begin to part, and where the whole difference counts: % vol, g of sugar in a litre. */
const STRONG = 20, STRONG_WHOLE = 24, SWEET = 20, SWEET_WHOLE = 50;
/** No mixture of sugar is denser than this, g/mL: a bound on the strength before the volume is known. */
const DENSEST = 1.5;
const rest = new Float64Array(N);

const ramp = (x: number): number => (x <= 0 ? 0 : x >= 1 ? 1 : x * x * (3 - 2 * x));

/** Grams of sugar in a block. */
function sugarOf(block: Float64Array, offset: number): number {
  let sum = 0;
  for (let i = at.sucrose; i <= at.other_sugars; i++) sum += block[offset + i]!;
  return sum;
}

/**
 * By how much of its volume would a sweet and strong mixture be larger if Tabarié's rule held instead of ours? No printed table decides between them there.
 * @param block grams by constituent from `offset`
 * @returns (rival volume - ours) / ours at 20 °C, positive where Tabarié's is the lighter; 0 at or below 20 % vol or 20 g of sugar in a litre, whole from 24 % vol and
 * 50 g/L, without a step between; 0 for an empty block. Some 1 µs where it is not 0, hardly anything where it is. Allocates nothing.
 * @source oiv-03b Tabarié's formula against oiml-r22 and sps4
 */
export function rivalShare(block: Float64Array, offset: number): number {
  const ethanol = block[offset + at.ethanol]!;
  const sugar = sugarOf(block, offset);
  if (!(sugar > 0) || !(ethanol > 0)) return 0;
  const mass = massOf(block, offset);
  if ((100 * ethanol * DENSEST) / (ETHANOL * mass) <= STRONG || 1000 * sugar * DENSEST <= SWEET * mass) return 0;
  const mL = volume(block, offset, 20);
  const strength = (100 * ethanol) / ETHANOL / mL;
  const weight = ramp((strength - STRONG) / (STRONG_WHOLE - STRONG)) * ramp(((1000 * sugar) / mL - SWEET) / (SWEET_WHOLE - SWEET));
  // at the edge itself what rounding leaves is nothing
  if (!(weight > 1e-15)) return 0;
  // the same solutes in the same volume without ethanol: the water is found in three steps, each a thousandth of the last
  for (let i = 0; i < N; i++) rest[i] = block[offset + i]!;
  rest[at.ethanol] = 0;
  for (let i = 0; i < 3; i++) rest[at.water]! += (mL - volume(rest, 0, 20)) * WATER;
  const tabarie = massOf(rest, 0) / mL + densityOfEthanolWater(massFractionFromStrength(strength), 20) / 1000 - WATER;
  return weight * (mass / mL / tabarie - 1);
}
