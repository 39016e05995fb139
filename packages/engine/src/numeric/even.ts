import { normalQuantile } from './normal.ts';

/**
 * Deviates for few makers that lie as evenly as they can: of each input one maker in each of `makers` strips of equal odds, at its middle. Which maker has which
 * strip follows the additive recurrence on powers of the golden ratio's like in so many dimensions, less what of it goes along with the inputs before.
 * @param width inputs, 0 or more
 * @param makers 1 to 2^20
 * @returns a row of standard normal deviates a maker
 * @source mckay1979 strips; roberts2018 recurrence; owen1994 correlations taken off by rank
 */
export function evenDeviates(width: number, makers: number): Float64Array {
  const rows = new Float64Array(makers * width), middle = new Float64Array(makers), place = new Float64Array(makers);
  for (let strip = 0; strip < makers; strip++) middle[strip] = normalQuantile((strip + 0.5) / makers);
  const square = middle.reduce((sum, z) => sum + z * z, 0);
  // the root of x^(d + 1) = x + 1
  let ratio = 2;
  for (let i = 0; i < 60; i++) ratio = (1 + ratio) ** (1 / (width + 1));
  for (let k = 0, step = 1; k < width; k++) {
    step /= ratio;
    for (let m = 0; m < makers; m++) place[m] = (0.5 + step * (m + 1)) % 1;
    const column = stripped(place, middle);
    for (let j = 0; j < k; j++) {
      let along = 0;
      for (let m = 0; m < makers; m++) along += column[m]! * rows[m * width + j]!;
      along /= square;
      if (j === 0) place.set(column);
      for (let m = 0; m < makers; m++) place[m]! -= along * rows[m * width + j]!;
    }
    const last = k === 0 ? column : stripped(place, middle);
    for (let m = 0; m < makers; m++) rows[m * width + k] = last[m]!;
  }
  return rows;
}

/** The middle of the strip that each maker has by the order of their places, numbers between -16 and 16. */
function stripped(place: Float64Array, middle: Float64Array): Float64Array {
  const makers = place.length, order = new Float64Array(makers), out = new Float64Array(makers);
  // the place in 32 bits with the maker behind it: sorted as one number
  for (let m = 0; m < makers; m++) order[m] = Math.floor((place[m]! + 16) * 134_217_728) * makers + m;
  order.sort();
  for (let strip = 0; strip < makers; strip++) out[order[strip]! % makers] = middle[strip]!;
  return out;
}
