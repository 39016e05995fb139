import { rootBetween } from '../numeric/index.ts';
import { brim, heightOf, heightOfRadius, radiusAt, volumeBelow } from './profile.ts';
import type { Profile } from './profile.ts';
import { BED, cutOf, ICE_DENSITY, LAYER_SHARE, pieceMass, pieceRadius, pieceSize, solidShare, SPHERE, SPEAR } from './pieces.ts';
import type { Cut } from './pieces.ts';

/** A level is found within this. */
const CLOSE_MM = 1e-10;

/** What stands in the glass. Densities in g/mL at the serving temperature, volumes in mL. */
export interface Standing {
  readonly liquid_mL: number;
  readonly liquid_density: number;
  /** foam as it stands, on the liquid and around the ice; 0 for none */
  readonly foam_mL?: number;
  readonly foam_density?: number;
  /** what is firm at the floor, a set gel: ice stands on it */
  readonly base_mL?: number;
  readonly ice?: {
    /** word of the spec: `cubes`, `large cube`, `sphere`, `spear`, `crushed`, `pebble`, `cracked`, `block`, `shaved` */
    readonly kind: string;
    readonly count: number;
    /** of one piece; from the size where absent */
    readonly mass_g?: number;
    /** edge or diameter; from the mass where absent */
    readonly size_mm?: number;
  };
}

/** Levels in mm above the floor. */
export interface Levels {
  readonly liquid_mm: number;
  /** top of all that stands in the glass: liquid, foam, ice */
  readonly washline_mm: number;
  /** top of liquid and foam alone */
  readonly level_mm: number;
  readonly iceFrom_mm: number;
  readonly iceTo_mm: number;
  /** liquid, foam and what ice is in them, less the brim volume: negative is what is still free */
  readonly over_mL: number;
}

/** Places written by `standInto`, from `at`. @source none - definition */
export const LIQUID = 0, WASHLINE = 1, ICE_FROM = 2, ICE_TO = 3, OVER = 4, LEVEL = 5;
export const STANDING = 6;

/** Volume in mL below a height `x` over the underside of one piece: a prism of `face` mm² and `tall` mm, or a sphere of diameter `tall`. */
function below(cut: Cut, face: number, tall: number, x: number): number {
  const d = x < 0 ? 0 : x > tall ? tall : x;
  if (cut === SPHERE) return (Math.PI * d * d * (1.5 * tall - d)) / 3000;
  return (face * d) / 1000;
}

/** How deep a piece must be for `mL` of it to be under: the inverse of `below`. */
function depth(cut: Cut, face: number, tall: number, mL: number): number {
  if (!(mL > 0)) return 0;
  if (cut !== SPHERE) return Math.min((1000 * mL) / face, tall);
  const share = (6000 * mL) / (Math.PI * tall * tall * tall);
  if (share >= 1) return tall;
  let x = share; // share = 3x² - 2x³, x = depth over diameter
  let low = 0, high = 1;
  for (let i = 0; i < 60; i++) {
    const f = x * x * (3 - 2 * x) - share;
    if (f > 0) high = x; else low = x;
    let next = x - f / (6 * x * (1 - x) || 1);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - x) < 1e-12) break;
    x = next;
  }
  return x * tall;
}

/** Depth in liquid of a piece that floats with `t` mm of foam above it: (rhoL - rhoF) V(d) + rhoF V(d + t) = its mass. */
function afloatInFoam(cut: Cut, face: number, tall: number, grams: number, rhoL: number, rhoF: number, t: number): number {
  if (cut !== SPHERE) {
    const d = ((1000 * grams) / face - rhoF * t) / rhoL;
    return d + t <= tall ? Math.max(d, 0) : Math.min(((1000 * grams) / face - rhoF * tall) / (rhoL - rhoF), tall);
  }
  let low = 0, high = tall;
  for (let i = 0; i < 48; i++) {
    const d = (low + high) / 2;
    if ((rhoL - rhoF) * below(cut, face, tall, d) + rhoF * below(cut, face, tall, d + t) > grams) high = d; else low = d;
  }
  return (low + high) / 2;
}

/** Level at which `mL` stand about pieces whose undersides are at `floor`: V(L) = mL + ice below L. */
function levelAbout(profile: Profile, mL: number, count: number, cut: Cut, face: number, tall: number, floor: number): number {
  const low = heightOf(profile, mL), high = heightOf(profile, mL + count * below(cut, face, tall, tall));
  const over = (L: number): number => volumeBelow(profile, L) - mL - count * below(cut, face, tall, L - floor);
  if (-count * below(cut, face, tall, low - floor) >= 0) return low;
  if (below(cut, face, tall, tall) <= below(cut, face, tall, high - floor)) return high;
  return rootBetween(over, low, high, CLOSE_MM);
}

function write(out: Float64Array, at: number, profile: Profile, liquid: number, level: number, from: number, to: number): void {
  out[at + LIQUID] = liquid;
  out[at + LEVEL] = level;
  out[at + WASHLINE] = Math.max(liquid, level, to);
  out[at + ICE_FROM] = from;
  out[at + ICE_TO] = to;
  out[at + OVER] = volumeBelow(profile, level) - brim(profile);
}

/** A heap that fills the glass from wall to wall, `solid` of it ice: afloat, or on the floor where the liquid is too shallow to lift it. */
function heap(out: Float64Array, at: number, profile: Profile, base: number, liquid: number, rhoL: number, foam: number, rhoF: number, grams: number, solid: number): void {
  const ice = grams / ICE_DENSITY, bulk = ice / solid;
  const around = (solid * foam) / (1 - solid); // ice in the foam where the heap is taller than it
  let inLiquid = (grams - rhoF * around) / rhoL, inFoam = around;
  if (inLiquid + inFoam >= ice) { inLiquid = Math.min(ice, (grams - rhoF * ice) / (rhoL - rhoF)); inFoam = ice - inLiquid; }
  const floor = base + liquid + inLiquid - inLiquid / solid;
  if (floor >= base && inLiquid < ice) {
    const L = heightOf(profile, base + liquid + inLiquid);
    const F = foam > 0 ? heightOf(profile, base + liquid + inLiquid + foam + inFoam) : L;
    write(out, at, profile, L, F, heightOf(profile, floor), heightOf(profile, floor + bulk));
    return;
  }
  const L = heightOf(profile, base + Math.min(liquid / (1 - solid), liquid + ice));
  const F = foam > 0 ? heightOf(profile, base + Math.min((liquid + foam) / (1 - solid), liquid + foam + ice)) : L;
  write(out, at, profile, L, F, heightOf(profile, base), heightOf(profile, base + bulk));
}

/**
 * Levels in a glass with liquid, foam and ice, solved directly (layer by layer it swings): V(level) = liquid + what of the ice is under it.
 * out: `STANDING` numbers from `at`, in the order LIQUID, WASHLINE, ICE_FROM, ICE_TO, OVER, LEVEL; profile: mm; base_mL: firm at the floor; liquid_mL, foam_mL: 0 and up;
 * rhoL, rhoF: g/mL; cut: of `pieces`; count: pieces, a fraction allowed; mass_g: of one, at 0.9167 g/mL; size_mm: edge of a spear's end, 0 for the usual one
 * (cubes and spheres take theirs from the mass); solid: share of ice in a heap. A few pieces float side by side; where they would cover more than
 * `LAYER_SHARE` of the round, and always when crushed, they are a heap from wall to wall. A piece whose underside would come below where the glass is wide enough for
 * it stands there, as does one heavier than the liquid. Without ice ICE_FROM and ICE_TO are 0.
 * @source none - Archimedes and the geometry of the glass
 */
export function standInto(
  out: Float64Array, at: number, profile: Profile, base_mL: number, liquid_mL: number, rhoL: number, foam_mL: number, rhoF: number,
  cut: Cut, count: number, mass_g: number, size_mm: number, solid: number,
): void {
  const foam = foam_mL > 0 ? foam_mL : 0;
  const under = base_mL + liquid_mL;
  if (!(count > 0 && mass_g > 0)) {
    const L = heightOf(profile, under);
    write(out, at, profile, L, foam > 0 ? heightOf(profile, under + foam) : L, 0, 0);
    return;
  }
  if (cut === BED) { heap(out, at, profile, base_mL, liquid_mL, rhoL, foam, rhoF, count * mass_g, solid); return; }
  const piece = mass_g / ICE_DENSITY;
  const size = cut === SPEAR && size_mm > 0 ? size_mm : pieceSize(cut, mass_g);
  const face = cut === SPHERE ? (Math.PI * size * size) / 4 : size * size;
  const tall = cut === SPEAR ? (1000 * piece) / face : size;

  let inLiquid = foam > 0 ? (mass_g - rhoF * piece) / (rhoL - rhoF) : mass_g / rhoL;
  let d = depth(cut, face, tall, Math.min(inLiquid, piece));
  let L = heightOf(profile, under + count * Math.min(inLiquid, piece));
  let F = foam > 0 ? heightOf(profile, under + foam + count * piece) : L;
  const r = radiusAt(profile, L);
  if (count > 1 && count * face > LAYER_SHARE * Math.PI * r * r) { heap(out, at, profile, base_mL, liquid_mL, rhoL, foam, rhoF, count * mass_g, solid); return; }
  if (foam > 0 && L - d + tall > F) { // the foam does not cover it: its thickness t is F - L
    const over = (t: number): number => {
      d = afloatInFoam(cut, face, tall, mass_g, rhoL, rhoF, t);
      inLiquid = below(cut, face, tall, d);
      L = heightOf(profile, under + count * inLiquid);
      F = heightOf(profile, under + foam + count * below(cut, face, tall, d + t));
      return F - L - t;
    };
    if (over(0) > 0) over(over(tall) > 0 ? tall : rootBetween(over, 0, tall, CLOSE_MM));
  }
  const wide = count > 1 ? Math.max(pieceRadius(cut, size), Math.sqrt((count * face) / (LAYER_SHARE * Math.PI))) : pieceRadius(cut, size);
  const floor = Math.max(heightOf(profile, base_mL), heightOfRadius(profile, wide));
  if (L - d < floor || inLiquid >= piece) {
    L = levelAbout(profile, under, count, cut, face, tall, floor);
    F = foam > 0 ? levelAbout(profile, under + foam, count, cut, face, tall, floor) : L;
    write(out, at, profile, L, F, floor, floor + tall);
    return;
  }
  write(out, at, profile, L, F, L - d, L - d + tall);
}

const scratch = new Float64Array(STANDING);

/**
 * `standInto` for one glass, as an object. Ice by mass and count, or by size and count.
 * @source none - Archimedes and the geometry of the glass
 */
export function stand(profile: Profile, what: Standing): Levels {
  const ice = what.ice;
  const cut = ice ? cutOf(ice.kind) : 0;
  const mass = ice ? ice.mass_g ?? pieceMass(cut, ice.size_mm ?? 0) : 0;
  standInto(scratch, 0, profile, what.base_mL ?? 0, what.liquid_mL, what.liquid_density, what.foam_mL ?? 0, what.foam_density ?? 0,
    cut, ice?.count ?? 0, mass, ice?.size_mm ?? 0, solidShare(ice?.kind ?? 'cubes'));
  return {
    liquid_mm: scratch[LIQUID]!, washline_mm: scratch[WASHLINE]!, level_mm: scratch[LEVEL]!,
    iceFrom_mm: scratch[ICE_FROM]!, iceTo_mm: scratch[ICE_TO]!, over_mL: scratch[OVER]!,
  };
}

/**
 * Room in mm between a piece and the narrowest ring it passes on its way in, diameters: negative when it does not go in.
 * kind: word of the spec; size_mm: edge or diameter. The narrowest ring is the tightest from the brim down to where the piece lies.
 * @source none - geometry
 */
export function iceClearance(profile: Profile, kind: string, size_mm: number): number {
  const cut = cutOf(kind);
  if (cut === BED || profile.length === 0) return Infinity;
  const r = pieceRadius(cut, size_mm);
  let widest = 0;
  for (const [, radius] of profile) widest = Math.max(widest, radius);
  const rest = heightOfRadius(profile, Math.min(r, widest));
  let narrow = Infinity;
  for (const [h, radius] of profile) if (h >= rest) narrow = Math.min(narrow, radius);
  return 2 * (Math.min(narrow, widest) - r);
}

/**
 * Ice in g that a glass takes, heaped level with the brim. kind: word of the spec.
 * @source fao-ice stowage; common-practice cubes 0.55 to 0.62
 */
export function iceThatFits(profile: Profile, kind: string): number {
  return brim(profile) * solidShare(kind) * ICE_DENSITY;
}
