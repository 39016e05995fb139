import table from '../../../../data/physics/volumes.json' with { type: 'json' };
import { at, CONSTITUENTS } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';
import { densityOfEthanolWaterAnywhere, densityOfEthanolWaterAt20 } from './ethanol-water-density.ts';
import { volumeOfSucrose } from './sucrose-density.ts';

const WATER = at.water, ETHANOL = at.ethanol, SUCROSE = at.sucrose;
const N = CONSTITUENTS.length;
/** Four coefficients and the end of the fit, by constituent. */
const PHI = new Float64Array(5 * N);
/** 1 where the volume follows sucrose's with temperature. */
const LIKE_SUCROSE = new Uint8Array(N);

const rows = table.constituents as Readonly<Partial<Record<Constituent, { readonly phi: readonly number[]; readonly to: number }>>>;
const concentrated: readonly Constituent[] = [
  'sucrose', 'glucose', 'fructose', 'lactose', 'maltose', 'other_sugars', 'polyols', 'citric', 'malic', 'tartaric', 'lactic', 'acetic',
  'phosphoric', 'ascorbic', 'quinic', 'succinic', 'other_acid', 'other_solubles',
];
for (const name of CONSTITUENTS) {
  const row = rows[name];
  if (row) PHI.set([...row.phi, row.to], 5 * at[name]);
}
/** What is dissolved among small molecules and so counts in the concentration. */
const SOLUTES = Uint8Array.from(concentrated, (name) => at[name]);
for (const i of SOLUTES) LIKE_SUCROSE[i] = 1;

/** mL/g of what takes up the same volume however concentrated it is, save fat, which swells; 0 for all else. All that is steady stands from `FIRST` up to, not including, `LAST`, in fours. */
const STEADY_ML = Float64Array.from(CONSTITUENTS, (name, i) => (i > ETHANOL && LIKE_SUCROSE[i] !== 1 && name !== 'fat' ? PHI[5 * i]! : 0));
const LAST = STEADY_ML.findLastIndex((mL) => mL !== 0) + 1, FIRST = LAST - 4 * Math.ceil((LAST - STEADY_ML.findIndex((mL) => mL !== 0)) / 4);
/** Solutes stand from sucrose up to, not including, `ACIDS_END`, with one more behind. */
const ACIDS_END = at.other_acid + 1, REST = at.other_solubles;
if ((ACIDS_END - SUCROSE - 1) % 4 !== 0 || SOLUTES.some((i) => i !== REST && !(i >= SUCROSE && i < ACIDS_END)) || SOLUTES.length !== ACIDS_END - SUCROSE + 1 || PHI[5 * REST + 1] !== 0) {
  throw new Error('the constituents do not stand in the order that volumes are added up in');
}

const FAT = at.fat;
/** Density of ethanol at 20 °C, g/mL. @source oiml-r22 general formula at p = 1 */
export const ETHANOL_G_ML = densityOfEthanolWaterAnywhere(1, 20) / 1000;

/**
 * Strength of so much ethanol in so much liquid.
 * @param ethanol_g grams, 0 or more
 * @param mL of the whole at 20 °C, above 0
 * @returns % vol
 * @source oiml-r22 definition of q
 */
export function strengthIn(ethanol_g: number, mL: number): number { return (100 * ethanol_g) / ETHANOL_G_ML / mL; }

/** What melted fat loses in density per K, over its density at 20 °C: 0.417 57 of 917.24 kg/m³. @source choi-okos1986 table 2 */
const FAT_PER_K = 0.41757 / 917.24;

/**
 * Grams in a block.
 * @param block grams by constituent from `offset`
 * @returns g
 * @source none - definition
 */
export function massOf(block: Float64Array, offset: number): number {
  let sum = 0;
  for (let i = 0; i < N; i++) sum += block[offset + i]!;
  return sum;
}

/** Grams of what is dissolved among small molecules. */
function solutesIn(block: Float64Array, offset: number): number {
  let a = block[offset + SUCROSE]!, b = block[offset + REST]!, c = 0, d = 0;
  for (let k = offset + SUCROSE + 1, end = offset + ACIDS_END; k < end; k += 4) { a += block[k]!; b += block[k + 1]!; c += block[k + 2]!; d += block[k + 3]!; }
  return a + b + (c + d);
}

/**
 * How concentrated are the sugars, polyols, acids and other small solubles in the water they share?
 * @param block grams by constituent from `offset`
 * @returns their mass over theirs and the water's, 0..1; 0 without any
 * @source none - definition
 */
export function soluteShare(block: Float64Array, offset: number): number {
  const solutes = solutesIn(block, offset);
  return solutes > 0 ? solutes / (solutes + block[offset + WATER]!) : 0;
}

/**
 * What volume does a mixture fill at this temperature? Ethanol and water contract as in the alcoholometric formula; each dissolved
 * sugar, polyol and acid adds its apparent volume at the concentration of all of them in the water; the rest adds its own volume.
 * Gas in solution, air and ice are not counted.
 * @param block grams by constituent from `offset`
 * @param celsius -20..80 °C; beyond, slopes go on (see `densityOfEthanolWaterAnywhere`)
 * @returns mL; 0 for an empty block
 * @source oiml-r22 general formula; sps4 eq. 1; crc-solutions fits; choi-okos1986 table 2
 */
export function volume(block: Float64Array, offset: number, celsius: number): number {
  fill(block, offset, celsius);
  return FILLED[0]!;
}

/** The volume of the last call of `fill`: returned, it would be put on the heap. */
const FILLED = new Float64Array(1);

function fill(block: Float64Array, offset: number, celsius: number): void {
  const water = block[offset + WATER]!, ethanol = block[offset + ETHANOL]!, sucrose = block[offset + SUCROSE]!, rest = block[offset + REST]!;
  const solvent = water + ethanol;
  let sum = 0;
  if (solvent > 0) {
    // two statements and no choice of one number, which would be put on the heap
    if (celsius === 20) sum = (1000 * solvent) / densityOfEthanolWaterAt20(ethanol / solvent);
    else sum = (1000 * solvent) / densityOfEthanolWaterAnywhere(ethanol / solvent, celsius);
  }
  // sums side by side: none waits for another
  let a = 0, b = 0, c = 0, d = 0;
  for (let j = FIRST; j < LAST; j += 4) {
    const k = offset + j;
    a += block[k]! * STEADY_ML[j]!; b += block[k + 1]! * STEADY_ML[j + 1]!; c += block[k + 2]! * STEADY_ML[j + 2]!; d += block[k + 3]! * STEADY_ML[j + 3]!;
  }
  sum += a + b + (c + d);
  const fat = block[offset + FAT]!;
  if (fat !== 0) sum += (fat * PHI[5 * FAT]!) / (1 - FAT_PER_K * (celsius - 20));
  const solutes = solutesIn(block, offset);
  if (solutes === 0) { FILLED[0] = sum; return; }
  const w = solutes > 0 ? solutes / (solutes + water) : 0;
  const swell = celsius === 20 || w === 0 ? 0 : volumeOfSucrose(w, celsius) - volumeOfSucrose(w, 20);
  if (sucrose !== 0) sum += sucrose * volumeOfSucrose(w, celsius);
  for (let j = SUCROSE + 1; j < ACIDS_END; j++) {
    const grams = block[offset + j]!;
    if (grams === 0) continue;
    const k = 5 * j, x = w < PHI[k + 4]! ? w : PHI[k + 4]!;
    sum += grams * (PHI[k]! + x * (PHI[k + 1]! + x * (PHI[k + 2]! + x * PHI[k + 3]!)) + swell);
  }
  FILLED[0] = sum + rest * (PHI[5 * REST]! + swell);
}

/**
 * What volume does a mixture fill at 20 °C, the temperature at which every measure in mL is meant?
 * @param block grams by constituent from `offset`
 * @returns mL
 * @source oiml-r22 general formula; sps4 eq. 1; crc-solutions fits; choi-okos1986 table 2
 */
export function volumeAt20(block: Float64Array, offset: number): number {
  fill(block, offset, 20);
  return FILLED[0]!;
}

/**
 * How dense is a mixture?
 * @param block grams by constituent from `offset`
 * @param celsius as in `volume`
 * @returns g/mL (true density); NaN for an empty block
 * @source oiml-r22 general formula; sps4 eq. 1; crc-solutions fits
 */
export function densityOf(block: Float64Array, offset: number, celsius: number): number {
  return massOf(block, offset) / volume(block, offset, celsius);
}

/**
 * Strength of a mixture: ethanol's own volume at 20 °C in the volume of the whole at 20 °C.
 * @param block grams by constituent from `offset`
 * @returns % vol; NaN for an empty block
 * @source oiml-r22 definition of q
 */
export function strengthOf(block: Float64Array, offset: number): number {
  return strengthIn(block[offset + ETHANOL]!, volume(block, offset, 20));
}

