import { at } from '../matter/constituents.ts';
import { ACIDS, MOLAR_MASS } from './constants.ts';

const FIRST = at.citric, MOL_G = MOLAR_MASS.map((mass) => 1 / mass);

/**
 * How much of each acid there is in a litre of a liquid: what the solvers take.
 * out: the first `ACIDS` places are written, mol/L in the order of the constituents; s, block: grams of the liquid's block, from index `block`;
 * mL: what the block fills at 20 °C, above 0 (0 gives infinities and NaN). Gives back the sum over the acids in mol/L. Allocates nothing.
 * @source goldberg-2002 formulas
 */
export function molarInto(out: Float64Array, s: ArrayLike<number>, block: number, mL: number): number {
  const per_L = 1000 / mL;
  let sum = 0;
  for (let i = 0; i < ACIDS; i++) {
    const mol = s[block + FIRST + i]! * MOL_G[i]! * per_L;
    out[i] = mol;
    sum += mol;
  }
  return sum;
}
