import table from '../../../../data/physics/acids.json' with { type: 'json' };
import { ACIDS, STEPS } from './constants.ts';
import type { AcidConstants } from './constants.ts';

const LN10 = Math.LN10;
const { linear, limit_I } = table.davies;
const LOWEST = -2, HIGHEST = 16;

/**
 * log10 of the activity coefficient of a univalent ion; times z² for charge z.
 * ionic: ionic strength in mol/L, 0 to 0.5 (held there: beyond it the equation turns and means nothing); A: slope of the temperature.
 * @source spana-davies log10 g = -A z² (sqrt I/(1 + sqrt I) - 0.3 I)
 */
export function daviesLog(ionic: number, A: number): number {
  const I = Math.min(Math.max(ionic, 0), limit_I);
  const root = Math.sqrt(I);
  return -A * (root / (1 + root) - linear * I);
}

/** What the last `speciate` found, mol/L: negative charge of the acids, its rise with -ln h, sum of c z². */
const found = new Float64Array(3);
const CHARGE = 0, SLOPE = 1, SQUARE = 2;

/** Speciation at a proton activity `h`, `g` the activity coefficient of a univalent ion. Writes `found`. */
function speciate(acids: ArrayLike<number>, from: number, k: AcidConstants, h: number, g: number): void {
  let charge = 0, slope = 0, square = 0;
  const gg = g * g;
  for (let i = 0; i < ACIDS; i++) {
    const c = acids[from + i]!;
    if (!(c > 0)) continue;
    let sum = 1, n1 = 0, n2 = 0, term = 1, ratio = 1 / (h * g);
    const steps = k.steps[i]!;
    for (let j = 0; j < steps; j++) {
      term *= k.K[i * STEPS + j]! * ratio; // [A(z)]/[A(z-1)] = K/h g(z-1)/g(z), g(z) = g^(z²): 1/g, 1/g³, 1/g⁵
      ratio /= gg;
      const z = j + 1;
      sum += term; n1 += z * term; n2 += z * z * term;
    }
    const mean = n1 / sum;
    charge += c * mean;
    slope += c * (n2 / sum - mean * mean);
    square += (c * n2) / sum;
  }
  found[CHARGE] = charge; found[SLOPE] = slope; found[SQUARE] = square;
}

/** Charge of the whole at `h`: positive where there is too much acid. Leaves `found`. */
function excess(acids: ArrayLike<number>, from: number, strong: number, k: AcidConstants, h: number, g: number): number {
  speciate(acids, from, k, h, g);
  return h / g + strong - k.Kw / (h * g) - found[CHARGE]!;
}

/**
 * pH as `pH` gives it, by halving between -2 and 16 with the ionic strength settled anew at each point: slow, for what Newton's steps do not settle.
 * @source spana-davies activities; goldberg-2002 constants
 */
export function pHByHalving(acids: ArrayLike<number>, from: number, strong: number, k: AcidConstants, salt = 0): number {
  let low = LOWEST, high = HIGHEST;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (chargeAt(acids, from, middle, k, salt) < strong) low = middle; else high = middle;
  }
  return (low + high) / 2;
}

/**
 * pH of a liquid from its acids and the net charge of its strong ions, by charge balance with Davies activities: -log10 of the proton's activity.
 * acids: mol/L of each acid in the order of the constituents, from index `from` (`ACIDS` of them); strong: mol/L of strong cations less strong anions
 * (potassium and sodium of a juice positive, chloride negative), any sign; k: from `constantsAt`; salt: mol/L of further 1:1 salt, for the ionic
 * strength alone. Always answers, between -2 and 16; proteins and dissolved gas are not in it. Allocates nothing.
 * @source spana-davies activities; goldberg-2002 constants
 */
export function pH(acids: ArrayLike<number>, from: number, strong: number, k: AcidConstants, salt = 0): number {
  let y = -LN10 * 3, ionic = 0.5 * Math.abs(strong) + salt;
  for (let i = 0; i < 40; i++) {
    const g = Math.exp(LN10 * daviesLog(ionic, k.A));
    const h = Math.exp(y);
    const f = excess(acids, from, strong, k, h, g);
    const protons = h / g, hydroxide = k.Kw / (h * g);
    const step = Math.min(Math.max(-f / (protons + hydroxide + found[SLOPE]!), -2.5), 2.5);
    const settled = 0.5 * (found[SQUARE]! + Math.abs(strong) + protons + hydroxide) + salt;
    const moved = settled - ionic;
    y = Math.min(Math.max(y + step, -LN10 * HIGHEST), -LN10 * LOWEST);
    ionic = settled;
    if (Math.abs(step) < 1e-8 && Math.abs(moved) < 1e-9 + 1e-8 * settled) return -y / LN10;
  }
  return pHByHalving(acids, from, strong, k, salt);
}

/** `pH` written into `out[at]`. @source none - definition */
export function pHInto(out: Float64Array, at: number, acids: ArrayLike<number>, from: number, strong: number, k: AcidConstants, salt = 0): void {
  out[at] = pH(acids, from, strong, k, salt);
}

/**
 * Net charge of strong ions (mol/L, cations less anions) that makes the acids stand at a pH: what a juice's salts bring, from its own pH.
 * acids, from, k, salt as in `pH`; value: pH, -2 to 16. Negative where the liquid is more acid than its listed acids. Allocates nothing.
 * @source spana-davies activities; goldberg-2002 constants
 */
export function chargeAt(acids: ArrayLike<number>, from: number, value: number, k: AcidConstants, salt = 0): number {
  const h = Math.exp(-LN10 * value);
  let ionic = salt, strong = 0;
  for (let i = 0; i < 60; i++) {
    const g = Math.exp(LN10 * daviesLog(ionic, k.A));
    strong = -excess(acids, from, 0, k, h, g);
    const settled = 0.5 * (found[SQUARE]! + Math.abs(strong) + h / g + k.Kw / (h * g)) + salt;
    const moved = Math.abs(settled - ionic);
    ionic = settled;
    if (moved < 1e-10) break;
  }
  return strong;
}

/**
 * Buffer strength in mol/L per pH at a pH, of water and acids. acids, from, k, salt as in `pH`; value: pH.
 * @source none - definition (slope of `chargeAt`)
 */
export function bufferAt(acids: ArrayLike<number>, from: number, value: number, k: AcidConstants, salt = 0): number {
  const step = 0.005;
  return (chargeAt(acids, from, value + step, k, salt) - chargeAt(acids, from, value - step, k, salt)) / (2 * step);
}

/**
 * Mean protons one molecule has given up at a pH, at a given ionic strength.
 * i: place of the acid in the order of the constituents; value: pH; ionic: mol/L, 0 to 0.5.
 * @source spana-davies activities; goldberg-2002 constants
 */
export function protonsReleased(i: number, value: number, ionic: number, k: AcidConstants): number {
  const g = Math.exp(LN10 * daviesLog(ionic, k.A));
  let sum = 1, n1 = 0, term = 1, ratio = 1 / (Math.exp(-LN10 * value) * g);
  for (let j = 0; j < k.steps[i]!; j++) {
    term *= k.K[i * STEPS + j]! * ratio;
    ratio /= g * g;
    sum += term; n1 += (j + 1) * term;
  }
  return n1 / sum;
}
