import table from '../../../../data/physics/viscosity.json' with { type: 'json' };
import { at, CONSTITUENTS } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';

const N = CONSTITUENTS.length;
const [WA, WB, WC, WD] = table.water.c as [number, number, number, number];
const ETHANOL = table.ethanol.c as [number, number, number];
const MIX = table.mixing.c.map((row) => Float64Array.from(row)) as readonly Float64Array[];
const K = table.sucrose.k;
const Z1 = table.sucrose.z1 as [number, number, number], Z2 = table.sucrose.z2 as [number, number, number], Z3 = table.sucrose.z3 as [number, number, number];
const LIKE = new Float64Array(N);
const like = table.like_sucrose.of as Readonly<Partial<Record<Constituent, number>>>;
for (const name of CONSTITUENTS) LIKE[at[name]] = like[name] ?? 0;

/**
 * Viscosity of water.
 * @param celsius -20..100 °C
 * @returns mPa s
 * @source laliberte2009 eq. 12
 */
export function viscosityOfWater(celsius: number): number {
  return (celsius + WA) / ((WB * celsius + WC) * celsius + WD);
}

/**
 * Viscosity of ethanol and water.
 * @param massFraction ethanol over ethanol + water, 0..1
 * @param celsius -30..60 °C while liquid
 * @returns mPa s; within 4 % of print from -30 to 20 °C, 8 % at 40 to 60 °C
 * @source melinder2010 viscosity table; crc-solutions viscosity column; fitted
 */
export function viscosityOfEthanolWater(massFraction: number, celsius: number): number {
  const p = massFraction, u = celsius / 100;
  const ethanol = ETHANOL[0] + u * (ETHANOL[1] + u * ETHANOL[2]);
  let excess = 0;
  for (let j = MIX.length - 1; j >= 0; j--) {
    const row = MIX[j]!;
    let inner = 0;
    for (let i = row.length - 1; i >= 0; i--) inner = inner * p + row[i]!;
    excess = excess * u + inner;
  }
  return Math.exp((1 - p) * Math.log(viscosityOfWater(celsius)) + p * ethanol + p * (1 - p) * excess);
}

/** ln of how much thicker than water a sucrose solution is. */
function lnThicker(w: number, celsius: number): number {
  const z = w / (1 - K * w), u = (celsius - 20) / (celsius + 300);
  return z * (Z1[0] + u * Z1[1] + z * (Z2[0] + u * (Z2[1] + u * Z2[2]) + z * (Z3[0] + u * Z3[1])));
}

/**
 * Viscosity of sucrose in water.
 * @param massFraction 0..0.7, held above
 * @param celsius 0..80 °C
 * @returns mPa s; within 5 % of print to 60 % and 40 °C
 * @source crc-sucrose-viscosity; crc-solutions viscosity column; fitted
 */
export function viscosityOfSucrose(massFraction: number, celsius: number): number {
  const w = massFraction > 0.7 ? 0.7 : massFraction;
  return viscosityOfWater(celsius) * Math.exp(lnThicker(w, celsius));
}

/**
 * Viscosity of a mixture: that of its ethanol and water, times how much thicker its sugars and acids make the water they stand in.
 * Gelling agents, pulp, fat and protein are not counted.
 * @param block grams by constituent from `offset`
 * @param celsius -20..80 °C
 * @returns mPa s; a rough guide (factor 1.3) where ethanol and sugar meet: no printed data; NaN without water and ethanol
 * @source melinder2010; crc-solutions; crc-sucrose-viscosity; the product is an assumption
 */
export function viscosityOf(block: Float64Array, offset: number, celsius: number): number {
  const water = block[offset]!, ethanol = block[offset + at.ethanol]!;
  let solutes = 0, weighted = 0;
  for (let i = 2; i < N; i++) {
    if (LIKE[i] === 0) continue;
    const grams = block[offset + i]!;
    solutes += grams;
    weighted += grams * LIKE[i]!;
  }
  const base = viscosityOfEthanolWater(ethanol / (water + ethanol), celsius);
  if (solutes === 0) return base;
  const share = solutes / (solutes + water);
  return base * Math.exp((weighted / solutes) * lnThicker(share > 0.7 ? 0.7 : share, celsius));
}
