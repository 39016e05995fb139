import { daviesLog } from './activity.ts';
import { caseinInto } from './casein.ts';
import { ACIDS, PHOSPHORIC, STEPS } from './constants.ts';
import type { AcidConstants } from './constants.ts';

const LN10 = Math.LN10;
const LOWEST = -2, HIGHEST = 16;
const held = new Float64Array(4);
const found = new Float64Array(2);

/** Negative charge of the acids and Σ c z² at a point, written into `found`. */
function speciesAt(acids: ArrayLike<number>, from: number, k: AcidConstants, h: number, g: number): void {
  found.fill(0);
  for (let i = 0; i < ACIDS; i++) {
    const c = acids[from + i]!;
    if (!(c > 0)) continue;
    let sum = 1, n1 = 0, n2 = 0, term = 1, ratio = 1 / (h * g);
    for (let j = 0; j < k.steps[i]!; j++) {
      term *= k.K[i * STEPS + j]! * ratio; // [A(z)]/[A(z-1)] = K/h g(z-1)/g(z), g(z) = g^(z²): 1/g, 1/g³, 1/g⁵
      ratio /= g * g;
      const z = j + 1;
      sum += term; n1 += z * term; n2 += z * z * term;
    }
    found[0]! += (c * n1) / sum;
    found[1]! += (c * n2) / sum;
  }
}

/**
 * `chargeAt` by letting the ionic strength settle: slow, without derivatives, for what Newton's steps do not settle.
 * @source spana-davies activities; goldberg-2002 constants
 */
export function chargeBySettling(acids: ArrayLike<number>, from: number, value: number, k: AcidConstants, salt = 0, casein = 0): number {
  const h = Math.exp(-LN10 * value);
  caseinInto(held, 0, h, k, casein, acids[from + PHOSPHORIC]!);
  let ionic = salt + 0.02, strong = 0;
  for (let i = 0; i < 300; i++) {
    const g = 10 ** daviesLog(ionic, k.A);
    speciesAt(acids, from, k, h, g);
    const protons = h / g, hydroxide = k.Kw / (h * g);
    strong = found[0]! + held[0]! - held[2]! + hydroxide - protons;
    const settled = 0.5 * (found[1]! + Math.abs(strong) + protons + hydroxide) + salt;
    if (Math.abs(settled - ionic) < 1e-15 + 1e-14 * settled) break;
    ionic += 0.7 * (settled - ionic);
  }
  return strong;
}

/**
 * pH as `pH` gives it, by halving between -2 and 16 with the ionic strength settled anew at each point.
 * @source spana-davies activities; goldberg-2002 constants
 */
export function pHByHalving(acids: ArrayLike<number>, from: number, strong: number, k: AcidConstants, salt = 0, casein = 0): number {
  let low = LOWEST, high = HIGHEST;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (chargeBySettling(acids, from, middle, k, salt, casein) < strong) low = middle; else high = middle;
  }
  return (low + high) / 2;
}
