import { BLOCK, CONSTITUENTS, slot } from './constituents.ts';

const MASS = CONSTITUENTS.length;

/** Sum of the grams of a block, what is unknown included. @source none - definition */
export function wholeMass(s: Float64Array, block: number): number {
  let m = s[block + slot.unknown_g]!;
  for (let i = 0; i < MASS; i++) m += s[block + i]!;
  return m;
}

/** Adds `share` times a block to another, every slot. @source none - definition */
export function addBlock(s: Float64Array, to: number, from: number, share: number): void {
  for (let i = 0; i < BLOCK; i++) s[to + i]! += share * s[from + i]!;
}

/** Empties a block. @source none - definition */
export function clearBlock(s: Float64Array, block: number): void {
  s.fill(0, block, block + BLOCK);
}

/** Makes a block what another is, every slot. @source none - definition */
export function copyBlock(s: Float64Array, to: number, from: number): void {
  s.copyWithin(to, from, from + BLOCK);
}

/**
 * Moves `share` (0 to 1) of a block into another. What it cost stays behind with what is kept when `costStays`.
 * @source none - definition
 */
export function moveShare(s: Float64Array, from: number, to: number, share: number, costStays = false): void {
  const cost = s[from + slot.price_minor]!;
  for (let i = 0; i < BLOCK; i++) {
    const moved = share * s[from + i]!;
    s[to + i]! += moved;
    s[from + i]! -= moved;
  }
  if (costStays) { s[to + slot.price_minor]! -= cost - s[from + slot.price_minor]!; s[from + slot.price_minor] = cost; }
}
