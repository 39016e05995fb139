import table from '../../../../data/physics/refraction.json' with { type: 'json' };
import { at, BLOCK, CONSTITUENTS } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import { soluteShare, volume } from './volume.ts';
import { densityOfSucroseSolution } from './sucrose-density.ts';

const N = CONSTITUENTS.length;
const WATER = at.water, ETHANOL = at.ethanol;
const R_WATER = table.water.r, R_WATER_PER_K = table.water.per_K;
/** Four coefficients and the end of the fit, by constituent. */
const R = new Float64Array(5 * N);
const rows = table.constituents as Readonly<Partial<Record<Constituent, { readonly r: readonly number[]; readonly to: number }>>>;
for (const name of CONSTITUENTS) {
  const row = rows[name];
  if (row) R.set([...row.r, row.to], 5 * at[name]);
}

function refraction(i: number, share: number): number {
  const k = 5 * i;
  const w = share < R[k + 4]! ? share : R[k + 4]!;
  return R[k]! + w * (R[k + 1]! + w * (R[k + 2]! + w * R[k + 3]!));
}

/** n from (n² - 1)/(n² + 2). */
function indexOf(x: number): number {
  return Math.sqrt((1 + 2 * x) / (1 - x));
}

/**
 * Refractive index of a mixture at 20 °C in sodium light. Each gram brings its own refraction; the volume, contraction included, is that
 * of the mixture. Fat and insolubles scatter and are left out.
 * @param block grams by constituent from `offset`
 * @param mL its volume at 20 °C, where that is known already
 * @returns n; within 0.0002 of print for binaries inside their fits; NaN for an empty block
 * @source crc-solutions refractive index column; oiv-refraction; lorenz1880 for the mixing rule
 */
export function refractiveIndex(block: Float64Array, offset: number, mL = volume(block, offset, 20)): number {
  const water = block[offset + WATER]!, ethanol = block[offset + ETHANOL]!;
  const w = soluteShare(block, offset);
  let sum = water * R_WATER;
  if (ethanol > 0) sum += ethanol * refraction(ETHANOL, ethanol / (ethanol + water));
  for (let k = 0; k < REFRACTING.length; k++) {
    const i = REFRACTING[k]!, grams = block[offset + i]!;
    if (grams !== 0) sum += grams * refraction(i, w);
  }
  let scattering = 0;
  for (let k = 0; k < SCATTERING.length; k++) scattering += block[offset + SCATTERING[k]!]! * SPECIFIC[k]!;
  return indexOf(sum / (mL - scattering));
}

/** What beside water and ethanol refracts. */
const REFRACTING = Uint8Array.from(CONSTITUENTS.flatMap((name, i) => (i > ETHANOL && rows[name] ? [i] : [])));
/** What has no refraction of its own, and the volume of a gram of each, so that it can be taken off. */
const SCATTERING = Uint8Array.from(CONSTITUENTS.flatMap((name, i) => (i > ETHANOL && !rows[name] ? [i] : [])));
const SPECIFIC = Float64Array.from(SCATTERING, (i) => {
  const one = new Float64Array(BLOCK);
  one[i] = 1;
  return volume(one, 0, 20);
});

/**
 * Refractive index of sucrose in water.
 * @param massFraction 0..0.84, held at the ends
 * @param celsius 5..40 °C; water's refraction falls by 4.1e-5 of itself per K, sucrose's is taken as constant
 * @returns n in sodium light
 * @source oiv-refraction; crc-solutions; sps4 for the density
 */
export function indexOfSucrose(massFraction: number, celsius = 20): number {
  const w = massFraction < 0 ? 0 : massFraction > 0.84 ? 0.84 : massFraction;
  const r = (1 - w) * R_WATER * (1 + R_WATER_PER_K * (celsius - 20)) + w * refraction(at.sucrose, w);
  return indexOf((r * densityOfSucroseSolution(w, celsius)) / 1000);
}

const OF_WATER = indexOfSucrose(0), OF_MOST = indexOfSucrose(0.84);

/**
 * What a refractometer scaled in sucrose at 20 °C shows for this index.
 * @param n refractive index at 20 °C, 1.333..1.501
 * @returns °Brix (g sucrose per 100 g), 0 below water's index, 84 at the end; within 0.01 of the OIV table
 * @source oiv-refraction, inverted
 */
export function brixFromIndex(n: number): number {
  if (!(n > OF_WATER)) return Number.isNaN(n) ? NaN : 0;
  if (n >= OF_MOST) return 84;
  let low = 0, high = 0.84;
  let w = n < 1.42 ? brixFromIndexPolynomial(n) / 100 : (n - 1.333) / 0.2, before = 0, offBefore = OF_WATER - n;
  for (let i = 0; i < 60; i++) {
    if (!(w > low && w < high)) w = (low + high) / 2;
    const off = indexOfSucrose(w) - n;
    if (off > 0) high = w; else low = w;
    // a secant through the last two points, the first of them water; the error after a step is far below that step
    const step = (off * (w - before)) / (off - offBefore);
    before = w; offBefore = off;
    w -= step;
    if (!(Math.abs(step) > 1e-7)) break;
  }
  return 100 * w;
}

/**
 * The published polynomial for the same question.
 * @param n refractive index at 20 °C, 1.333..1.42
 * @returns °Brix; about 0.02 below the OIV table
 * @source brix-polynomials refractive index
 */
export function brixFromIndexPolynomial(n: number): number {
  return ((((11758.74 * n - 88885.21) * n + 270177.93) * n - 413145.8) * n + 318417.95) * n - 99127.4536;
}
