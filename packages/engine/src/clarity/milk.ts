import table from '../../../../data/physics/curdle.json' with { type: 'json' };
import { ACIDS, constantsAt, daviesLog, MOLAR_MASS, STEPS } from '../acids/index.ts';

const PH = Float64Array.from(table.buffer.pH);
const MMOL = Float64Array.from(table.buffer.mmol_per_L);
const LAST = PH.length - 1;
const LN10 = Math.LN10;

/** Aqueous constants at 20 °C: the profiles of curdling were measured against pH set without ethanol. */
const AQUEOUS = constantsAt(20);
/** Their constants at the ionic strength of milk, as products from the first step on: [A(z)]/[A(0)] = product / h^z. */
const PRODUCTS = (() => {
  const out = new Float64Array(ACIDS * STEPS);
  const logG = daviesLog(table.ionic_strength.value, AQUEOUS.A);
  for (let i = 0; i < ACIDS; i++) {
    let product = 1;
    for (let j = 0; j < AQUEOUS.steps[i]!; j++) out[i * STEPS + j] = product *= AQUEOUS.K[i * STEPS + j]! * 10 ** (-(2 * j + 1) * logG);
  }
  return out;
})();

/** Mean protons acid `i` has given up at a proton activity `h`. */
export function released(i: number, h: number): number {
  const a = PRODUCTS[i * STEPS]! / h, b = PRODUCTS[i * STEPS + 1]! / (h * h), c = PRODUCTS[i * STEPS + 2]! / (h * h * h);
  return (a + 2 * b + 3 * c) / (1 + a + b + c);
}

/**
 * Strong acid in mmol that takes a litre of milk serum from pH 6.7 to a pH: the buffer of casein, phosphate and citrate of the milk itself.
 * pH: 2.7 to 6.7; above and below the last slope goes on. Straight between the points of the table, ± 15 %.
 * @source milk-buffer-peak peak value and place; the shape from memory
 */
export function milkBuffer(pH: number): number {
  let i = 1;
  while (i < LAST && pH < PH[i]!) i++;
  return MMOL[i - 1]! + ((MMOL[i]! - MMOL[i - 1]!) * (PH[i - 1]! - pH)) / (PH[i - 1]! - PH[i]!);
}

/** Casein in g/L of milk serum against which the buffer is scaled. @source memory 24 to 28 g/L of milk */
export const CASEIN_IN_SERUM = table.casein_in_serum.value;

/**
 * Aqueous pH of dairy and what was put to it, by the balance of protons: the pH that decides over curdling, not what a meter shows in the drink
 * (that reads 0.1 higher at 12 % vol, 0.25 at 20, 0.6 at 40).
 * serum_L: litres of dairy without its fat, 0 and up; strength: its buffer against that of milk, 1 (casein g/L of serum / `CASEIN_IN_SERUM`);
 * own: pH of the dairy itself (6.7 fresh, 4.5 yoghurt); acids: mol brought by all else, by kind in the order of the constituents from index `from`;
 * strong: mol of strong cations less anions brought with them; water_L: volume without fat, for the free protons of the sourest.
 * Between 1 and 10. Allocates nothing.
 * @source milk-buffer-peak buffer; goldberg-2002 acids at ionic strength 0.08
 */
export function milkMixPH(serum_L: number, strength: number, own: number, acids: ArrayLike<number>, from: number, strong: number, water_L: number): number {
  const demand = serum_L * strength * 1e-3;
  const start = milkBuffer(own);
  let low = 1, high = 10, fLow = 0, fHigh = 0;
  for (let i = 0; i < 80 && high - low > 1e-9; i++) {
    const pH = i === 0 ? low : i === 1 ? high : i % 3 ? low - (fLow * (high - low)) / (fHigh - fLow) : (low + high) / 2;
    const h = Math.exp(-LN10 * pH);
    let free = -strong - water_L * (h - 1e-14 / h) - demand * (milkBuffer(pH) - start); // protons left over: rises with pH
    for (let j = 0; j < ACIDS; j++) {
      const mol = acids[from + j]!;
      if (mol > 0) free += mol * released(j, h);
    }
    if (free > 0) { high = pH; fHigh = free; if (i === 0) return low; } else { low = pH; fLow = free; if (i === 1) return high; }
  }
  return (low + high) / 2;
}

/**
 * Anhydrous citric acid in g that gives up an amount of protons at a pH. mmol: 0 and up; pH: of the end.
 * @source goldberg-2002 constants at ionic strength 0.08
 */
export function citricForProtons(mmol: number, pH: number): number {
  return ((mmol / released(0, Math.exp(-LN10 * pH))) * MOLAR_MASS[0]!) / 1000;
}

/**
 * Anhydrous citric acid in g that brings litres of milk from its own pH to another. serum_L: without fat; pH, own: 2.7 to 6.7.
 * @source milk-buffer-peak buffer, ± 15 %
 */
export function citricForMilk(serum_L: number, pH: number, own = 6.7): number {
  return citricForProtons(serum_L * (milkBuffer(pH) - milkBuffer(own)), pH);
}
