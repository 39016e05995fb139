import table from '../../../../data/physics/glass.json' with { type: 'json' };
import { densityOfIce } from '../liquids/index.ts';

/** How ice is cut, as numbers for the loop. `BED` is a heap: crushed, pebble, cracked. @source none - definition */
export const CUBE = 0, SPHERE = 1, SPEAR = 2, BED = 3;
export type Cut = 0 | 1 | 2 | 3;

/** Density of ice at 0 °C in g/mL. @source crc-ice density */
export const ICE_DENSITY = densityOfIce(0) / 1000;

/** The kinds a spec writes, as what they are in a glass. `side` is how wide a spear is for its length. */
const KINDS: Readonly<Record<string, { readonly cut: Cut; readonly heap: keyof typeof table.solid }>> = {
  'cubes': { cut: CUBE, heap: 'cubes' }, 'large cube': { cut: CUBE, heap: 'cubes' }, 'block': { cut: CUBE, heap: 'cubes' },
  'sphere': { cut: SPHERE, heap: 'spheres' }, 'spear': { cut: SPEAR, heap: 'cubes' },
  'cracked': { cut: BED, heap: 'cracked' }, 'pebble': { cut: BED, heap: 'pebble' }, 'crushed': { cut: BED, heap: 'crushed' }, 'shaved': { cut: BED, heap: 'shaved' },
};

/** How a written kind of ice is cut; an unknown word is cubes. @source none - definition */
export function cutOf(kind: string): Cut {
  return KINDS[kind]?.cut ?? CUBE;
}

/** Share of a heap of a kind that is ice, 0 to 1. @source fao-ice stowage of block, tube, plate and flake ice; common-practice cubes; random-packing spheres */
export function solidShare(kind: string): number {
  return table.solid[KINDS[kind]?.heap ?? 'cubes'].value;
}

/** Share of a round floor that one layer of pieces covers before they climb. @source common-practice judged 0.6 to 0.8 */
export const LAYER_SHARE = table.layer.value;

/** Sides of a spear to its length: 40 × 40 × 118 mm. @source common-practice */
const SPEAR_LENGTH = 118 / 40;

/** Mass in g of one piece by its size in mm: edge of a cube, diameter of a sphere, edge of a spear's end, grain of a heap (as a cube). @source crc-ice density */
export function pieceMass(cut: Cut, size: number): number {
  const mL = (size * size * size) / 1000;
  if (cut === SPHERE) return (ICE_DENSITY * mL * Math.PI) / 6;
  if (cut === SPEAR) return ICE_DENSITY * mL * SPEAR_LENGTH;
  return ICE_DENSITY * mL;
}

/** Size in mm of one piece by its mass in g: the inverse of `pieceMass`; 0 for no mass. @source crc-ice density */
export function pieceSize(cut: Cut, grams: number): number {
  return grams > 0 ? Math.cbrt(grams / pieceMass(cut, 1)) : 0;
}

/** Surface in cm² of one piece by its size in mm. @source none - geometry */
export function pieceArea(cut: Cut, size: number): number {
  const face = (size * size) / 100;
  if (cut === SPHERE) return Math.PI * face;
  if (cut === SPEAR) return face * (2 + 4 * SPEAR_LENGTH);
  return 6 * face;
}

/** Surface in cm² per g of ice in pieces of a size in mm. @source crc-ice density */
export function areaPerGram(cut: Cut, size: number): number {
  return pieceArea(cut, size) / pieceMass(cut, size);
}

/** How high a piece stands, mm: a spear upright, all else as wide as it is. @source none - geometry */
export function pieceHeight(cut: Cut, size: number): number {
  return cut === SPEAR ? size * SPEAR_LENGTH : size;
}

/** Radius in mm of the round hole a piece passes, upright: half the diagonal of a square, the radius of a sphere. @source none - geometry */
export function pieceRadius(cut: Cut, size: number): number {
  return cut === SPHERE ? size / 2 : size / Math.SQRT2;
}

/** Volume in mL of a piece below a height `x` in mm above its underside. x outside the piece gives 0 or all of it. @source none - geometry */
export function pieceBelow(cut: Cut, size: number, x: number): number {
  const top = pieceHeight(cut, size);
  const d = x < 0 ? 0 : x > top ? top : x;
  if (cut === SPHERE) return (Math.PI * d * d * (1.5 * size - d)) / 3000;
  return (size * size * d) / 1000;
}
