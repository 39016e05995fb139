import table from '../../../../data/physics/activity.json' with { type: 'json' };
import { at, CONSTITUENTS } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';

const WATER = at.water;
const N = CONSTITUENTS.length;
const M_WATER = table.water_g_per_mol;
const LN10 = Math.log(10);
const C = Float64Array.from(table.log10_aw_by_depression);
/** Mole per gram of particles; 0 for what does not lower the freezing point. */
const PER_G = new Float64Array(N);
/** Five coefficients, the end of the fit and ln(aw/xw) there, by constituent. */
const FIT = new Float64Array(7 * N);
const rows = table.constituents as Readonly<Partial<Record<Constituent, { readonly g_per_mol: number; readonly coef: readonly number[]; readonly to: number }>>>;
for (const name of CONSTITUENTS) {
  const row = rows[name];
  if (!row) continue;
  PER_G[at[name]] = 1 / row.g_per_mol;
  const k = 7 * at[name];
  FIT.set(row.coef, k);
  FIT[k + 5] = row.to;
  FIT[k + 6] = excessAt(k, row.to);
}

function excessAt(k: number, x: number): number {
  return x * x * (FIT[k]! + x * (FIT[k + 1]! + x * (FIT[k + 2]! + x * (FIT[k + 3]! + x * FIT[k + 4]!))));
}

/** By how much `excessAt` grows with x, over x. */
function excessSlopeAt(k: number, x: number): number {
  return 2 * FIT[k]! + x * (3 * FIT[k + 1]! + x * (4 * FIT[k + 2]! + x * (5 * FIT[k + 3]! + x * 6 * FIT[k + 4]!)));
}

/** ln of the water activity with this much of the block's water liquid: product of the binaries at the same mol per kg of water. */
function lnActivity(block: Float64Array, offset: number, water_g: number): number {
  const water = water_g / M_WATER;
  let sum = 0, product = 1;
  for (let i = 1; i < N; i++) {
    const per = PER_G[i]!;
    if (per === 0) continue;
    const grams = block[offset + i]!;
    if (grams === 0) continue;
    const mol = grams * per;
    const one = 1 / (mol + water), x = mol * one, k = 7 * i;
    product *= water * one;                                                // 1 - x
    sum += x < FIT[k + 5]! ? excessAt(k, x) : FIT[k + 6]!;
  }
  return Math.log(product) + sum;
}

/** Solutes of a block that lower the freezing point: mol, then the place of their fit; how many, those first of which there is much. */
const DISSOLVED = new Float64Array(N);
const FITS = new Int32Array(N);
let dissolved = 0, much = 0;
/** Less than so many mol to a mol of water is little: all of those together are four terms of a series in 1/water. What it leaves out is below 5e-8 K. @source none - definition */
const LITTLE = 0.002;
/** The four terms, and the mol of water from which they hold. */
const SERIES = new Float64Array(5);

/**
 * Takes down what a block has dissolved, for `freezingPointWith`: for a liquid of which only the water changes. Valid until the next call.
 * @param block grams by constituent from `offset`
 * @source none - definition
 */
export function takeDissolved(block: Float64Array, offset: number): void {
  const water = block[offset + WATER]! / M_WATER;
  let first = 0, second = 0, third = 0, fourth = 0, n = 0, last = N;
  for (let i = 1; i < N; i++) {
    const grams = block[offset + i]!;
    if (grams === 0) continue;
    const per = PER_G[i]!;
    if (per === 0) continue;
    const mol = grams * per, k = 7 * i;
    if (mol < LITTLE * water && LITTLE < FIT[k + 5]!) {
      // with r mol to a mol of water, x is r / (1 + r) and ln (1 - x) is -ln (1 + r)
      const square = mol * mol, a = FIT[k]!, b = FIT[k + 1]!;
      first -= mol; second += square * (0.5 + a); third += square * mol * (b - 2 * a - 1 / 3); fourth += square * square * (FIT[k + 2]! - 3 * b + 3 * a + 0.25);
      DISSOLVED[--last] = mol; FITS[last] = k;
    } else { DISSOLVED[n] = mol; FITS[n++] = k; }
  }
  much = n;
  // behind those of which there is much, for where hardly any water is left
  for (; last < N; last++) { DISSOLVED[n] = DISSOLVED[last]!; FITS[n++] = FITS[last]!; }
  dissolved = n;
  SERIES[0] = first; SERIES[1] = second; SERIES[2] = third; SERIES[3] = fourth; SERIES[4] = 0.9 * water;
}

/**
 * `freezingPoint` of what `takeDissolved` took down, with so much water, and by how much a gram more of water raises it.
 * @param water_g grams
 * @param near °C to start from; 0 when nothing is known
 * @param out °C, and K per g of water; -80 and 0 without water
 * @source clegg-aw eq. 1; ross1975 eq. 3; crc-solutions fits
 */
export function freezingPointWith(water_g: number, near: number, out: Float64Array): void {
  out[0] = LOWEST_C; out[1] = 0;
  if (!(water_g > 0)) return;
  const water = water_g / M_WATER, some = water >= SERIES[4]! ? much : dissolved;
  let product = 1, sum = 0, slope = 0, whole = 0;
  if (some < dissolved) {
    const one = 1 / water;
    sum = one * (SERIES[0]! + one * (SERIES[1]! + one * (SERIES[2]! + one * SERIES[3]!)));
    slope = -one * one * (SERIES[0]! + one * (2 * SERIES[1]! + one * (3 * SERIES[2]! + one * 4 * SERIES[3]!)));
  }
  for (let j = 0; j < some; j++) {
    const mol = DISSOLVED[j]!, k = FITS[j]!, one = 1 / (mol + water), x = mol * one;
    // 1 - x is water's share; d x / d water is -x / (mol + water)
    product *= water * one;
    whole += x;
    if (x < FIT[k + 5]!) {
      sum += excessAt(k, x);
      slope -= x * x * one * excessSlopeAt(k, x);
    } else sum += FIT[k + 6]!;
  }
  slope += whole / water;
  const f = depression((Math.log(product) + sum) / LN10, -near);
  out[0] = -f;
  out[1] = f > 0 && f < -LOWEST_C ? -slope / (M_WATER * LN10 * slopeIce(f)) : 0;
}

/**
 * Does what `takeDissolved` took down, with so much water, hold no ice at this temperature?
 * @param water_g grams, above 0
 * @param celsius 0 °C at the most, held at -80
 * @source clegg-aw eq. 1; ross1975 eq. 3; crc-solutions fits
 */
export function isLiquidWith(water_g: number, celsius: number): boolean {
  const water = water_g / M_WATER, some = water >= SERIES[4]! ? much : dissolved, one = 1 / water;
  let product = 1, sum = some < dissolved ? one * (SERIES[0]! + one * (SERIES[1]! + one * (SERIES[2]! + one * SERIES[3]!))) : 0;
  for (let j = 0; j < some; j++) {
    const mol = DISSOLVED[j]!, k = FITS[j]!, one = 1 / (mol + water), x = mol * one;
    product *= water * one;
    sum += x < FIT[k + 5]! ? excessAt(k, x) : FIT[k + 6]!;
  }
  return (Math.log(product) + sum) / LN10 <= logIce(Math.min(-celsius, -LOWEST_C));
}

/**
 * Water activity of a mixture: the product of what each solute alone would give at its mol per kg of water.
 * @param block grams by constituent from `offset`
 * @returns 0..1, at the freezing point (25 °C differs by less than 0.01 below 50 % solutes); 1 for water, 0 without water
 * @source ross1975 eq. 3; crc-solutions fits
 */
export function waterActivity(block: Float64Array, offset: number): number {
  const water = block[offset + WATER]!;
  return water > 0 ? Math.exp(lnActivity(block, offset, water)) : 0;
}

/** log10 aw of ice against supercooled water at `f` K below 0 °C. */
function logIce(f: number): number {
  let sum = 0;
  for (let k = C.length - 1; k >= 0; k--) sum = (sum + C[k]!) * f;
  return sum;
}

function slopeIce(f: number): number {
  let sum = 0;
  for (let k = C.length - 1; k >= 0; k--) sum = sum * f + (k + 1) * C[k]!;
  return sum;
}

/** Lowest freezing point that is given, °C: the activity of ice turns back below -100. */
const LOWEST_C = -80;
const DRIEST = logIce(-LOWEST_C);

/** A step of Newton's this small, in K, is the last: the next would be its square, and less than a hundredth of that for each K. */
const LAST_STEP = 1e-4;

function depression(log10aw: number, near = 0): number {
  if (log10aw >= 0) return 0;
  if (log10aw <= DRIEST) return -LOWEST_C;
  let f = near > 0 ? near : log10aw / C[0]!;
  if (f > -LOWEST_C) f = -LOWEST_C;
  for (let i = 0; i < 30; i++) {
    let log = 0, slope = 0;
    for (let k = C.length - 1; k >= 0; k--) { const c = C[k]!; log = (log + c) * f; slope = slope * f + (k + 1) * c; }
    const step = (log - log10aw) / slope;
    f -= step;
    if (f > -LOWEST_C) f = -LOWEST_C;
    if (Math.abs(step) < LAST_STEP) break;
  }
  return f;
}

/**
 * At what temperature does ice begin to form in this mixture?
 * @param block grams by constituent from `offset`
 * @returns °C, 0 for pure water; -80 where there is no water or less than freezes above that. Within 0.4 K for ethanol up to 60 % by
 * mass of the water phase, 0.1 K for sugars up to their fits; beyond a fit its last activity coefficient is kept
 * @source clegg-aw eq. 1; ross1975 eq. 3; crc-solutions fits
 */
export function freezingPoint(block: Float64Array, offset: number): number {
  const water = block[offset + WATER]!;
  return water > 0 ? -depression(lnActivity(block, offset, water) / LN10) : LOWEST_C;
}

/**
 * How much of the water is ice when the mixture has come to rest at this temperature, everything else staying in the liquid?
 * @param block grams by constituent from `offset`, all water still liquid in it
 * @param celsius -80..0 °C, held at -80
 * @returns g of ice, 0 at and above the freezing point; less than 1e-9 of the water off
 * @source ross1975 eq. 3; clegg-aw eq. 1, solved for the water left
 */
export function iceAt(block: Float64Array, offset: number, celsius: number): number {
  const all = block[offset + WATER]!;
  if (!(all > 0) || celsius >= 0) return 0;
  const target = logIce(celsius < LOWEST_C ? -LOWEST_C : -celsius) * LN10;
  let off = lnActivity(block, offset, all) - target;
  if (off <= 0) return 0;
  if (lnActivity(block, offset, all * 1e-9) === 0) return all;
  // ln aw goes roughly as -1/water: steps are taken in 1/water, kept inside the bracket
  let low = 0, high = all, w = all;
  for (let i = 0; i < 80; i++) {
    const h = w * (1 - 1e-6);
    const slope = (off - (lnActivity(block, offset, h) - target)) / (1 / w - 1 / h);
    let next = 1 / (1 / w - off / slope);
    if (!(next > low && next < high)) next = (low + high) / 2;
    const moved = Math.abs(next - w);
    w = next;
    if (moved < 1e-12 * all) break;
    off = lnActivity(block, offset, w) - target;
    if (off > 0) high = w; else low = w;
  }
  return all - w;
}

/**
 * The same as a share of the water.
 * @returns 0..1; 0 without water
 * @source ross1975 eq. 3; clegg-aw eq. 1
 */
export function iceShare(block: Float64Array, offset: number, celsius: number): number {
  const all = block[offset + WATER]!;
  return all > 0 ? iceAt(block, offset, celsius) / all : 0;
}
