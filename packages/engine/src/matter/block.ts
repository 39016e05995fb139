import { BLOCK, CONSTITUENTS, slot } from './constituents.ts';

const MASS = CONSTITUENTS.length;
// loops over a block are written out four at a time: they are in every step of every run
if (MASS % 4 !== 0 || BLOCK % 4 !== 0 || slot.enthalpy_J !== MASS) throw new Error('a block is not of fours');

/** Sum of the grams of a block, what is unknown included. @source none - definition */
export function wholeMass(s: Float64Array, block: number): number {
  let a = s[block + slot.unknown_g]!, b = 0, c = 0, d = 0;
  for (let i = block, end = block + MASS; i < end; i += 4) { a += s[i]!; b += s[i + 1]!; c += s[i + 2]!; d += s[i + 3]!; }
  return a + b + (c + d);
}

/** Adds `share` times a block to another, every slot. @source none - definition */
export function addBlock(s: Float64Array, to: number, from: number, share: number): void {
  for (let i = 0; i < BLOCK; i += 4) {
    const a = to + i, b = from + i;
    s[a]! += share * s[b]!; s[a + 1]! += share * s[b + 1]!; s[a + 2]! += share * s[b + 2]!; s[a + 3]! += share * s[b + 3]!;
  }
}

/** Makes a block `share` times another, or itself, every slot but its heat, which is left as it was. @source none - definition */
export function scaleMatter(s: Float64Array, to: number, from: number, share: number): void {
  for (let i = 0; i < slot.enthalpy_J; i += 4) {
    const a = to + i, b = from + i;
    s[a] = share * s[b]!; s[a + 1] = share * s[b + 1]!; s[a + 2] = share * s[b + 2]!; s[a + 3] = share * s[b + 3]!;
  }
  for (let i = slot.enthalpy_J + 1; i < BLOCK; i++) s[to + i] = share * s[from + i]!;
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
