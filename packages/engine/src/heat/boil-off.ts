import { at } from '../matter/constituents.ts';

/**
 * What goes into the air in a boil: a share of the water, and the ethanol that cooking does not keep.
 * @param block grams by constituent from `offset`; changed
 * @param gone block that gains what has left, from `goneOffset`
 * @param waterShare share of the water boiled off, 0..1
 * @param ethanolKept share of the ethanol that stays, 0..1
 * @returns g gone
 * @source none - definition
 */
export function boilOff(block: Float64Array, offset: number, gone: Float64Array, goneOffset: number, waterShare: number, ethanolKept: number): number {
  const water = block[offset + at.water]! * Math.min(1, Math.max(0, waterShare));
  const ethanol = block[offset + at.ethanol]! * (1 - Math.min(1, Math.max(0, ethanolKept)));
  block[offset + at.water]! -= water;
  block[offset + at.ethanol]! -= ethanol;
  gone[goneOffset + at.water]! += water;
  gone[goneOffset + at.ethanol]! += ethanol;
  return water + ethanol;
}
