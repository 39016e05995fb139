import table from '../../../../data/physics/sps4.json' with { type: 'json' };
import { densityOfWater } from './ethanol-water-density.ts';

const WATER_20 = densityOfWater(20);
const COEFFICIENTS = table.c.map((row) => Float64Array.from(row)) as readonly Float64Array[];

/** (density of the solution - density of water) / mass fraction, kg/m³. */
function raise(w: number, celsius: number): number {
  const u = (celsius - 20) / 100;
  let sum = 0;
  // at 20 °C only the first row counts
  for (let i = u === 0 ? 0 : COEFFICIENTS.length - 1; i >= 0; i--) {
    const row = COEFFICIENTS[i]!;
    let inner = 0;
    for (let k = row.length - 1; k >= 0; k--) inner = inner * w + row[k]!;
    sum = sum * u + inner;
  }
  return sum;
}

/**
 * How dense is a solution of sucrose in water?
 * @param massFraction sucrose over solution, 0..0.85
 * @param celsius 0..80 °C
 * @returns kg/m³; outside the ranges the polynomial goes on unchecked
 * @source sps4 eq. 1; kell1975 for water
 */
export function densityOfSucroseSolution(massFraction: number, celsius: number): number {
  return (celsius === 20 ? WATER_20 : densityOfWater(celsius)) + massFraction * raise(massFraction, celsius);
}

/**
 * Volume one gram of sucrose takes up in water (its apparent specific volume).
 * @param massFraction sucrose over sucrose + water, held at 0..0.85
 * @param celsius held at -10..80 °C
 * @returns cm³/g
 * @source sps4 eq. 1, rearranged
 */
export function volumeOfSucrose(massFraction: number, celsius: number): number {
  const w = massFraction < 0 ? 0 : massFraction > 0.85 ? 0.85 : massFraction;
  const t = celsius < -10 ? -10 : celsius > 80 ? 80 : celsius;
  const water = t === 20 ? WATER_20 : densityOfWater(t);
  const q = raise(w, t);
  return (1000 * (water - q * (1 - w))) / (water * (water + w * q));
}
