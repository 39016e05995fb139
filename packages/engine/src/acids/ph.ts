import table from '../../../../data/physics/acids.json' with { type: 'json' };
import { caseinInto } from './casein.ts';
import { chargeBySettling, pHByHalving } from './halving.ts';
import { daviesLog } from './activity.ts';
import { ACIDS, PHOSPHORIC, STEPS } from './constants.ts';
import type { AcidConstants } from './constants.ts';

const LN10 = Math.LN10;
const { linear, limit_I } = table.davies;
const LOWEST = -2, HIGHEST = 16;
/** Most steps before halving takes over, and the last step in ln h and in the ionic strength: what is left is of the order of its square. */
const MOST = 40, CLOSE = 1e-4, CLOSE_I = 2e-5;

/** The acids that are there: amount in mol/L and the products of their constants, four numbers each. */
const present = new Float64Array(4 * ACIDS);

function gather(acids: ArrayLike<number>, from: number, k: AcidConstants): number {
  let n = 0;
  for (let i = 0; i < ACIDS; i++) {
    const c = acids[from + i]!;
    if (!(c > 0)) continue;
    const j = i * STEPS, one = k.K[j]!, two = one * k.K[j + 1]!;
    present[n] = c; present[n + 1] = one; present[n + 2] = two; present[n + 3] = two * k.K[j + 2]!;
    n += 4;
  }
  return n;
}

/**
 * Sums over the acids at one point, mol/L: negative charge; its fall with ln h; its fall with ln g, which is also the fall of Σ c z² with ln h; Σ c z²;
 * its fall with ln g. Then the activity coefficient of a univalent ion and the change of its logarithm with the ionic strength; then casein's four.
 */
const sums = new Float64Array(11);
const CHARGE = 0, CHARGE_H = 1, CHARGE_G = 2, SQUARE = 3, SQUARE_G = 4, ACTIVITY = 5, ACTIVITY_I = 6, CASEIN = 7;

function activity(ionic: number, A: number): void {
  const held = ionic > limit_I;
  const I = held ? limit_I : ionic, root = Math.sqrt(I), one = 1 + root;
  sums[ACTIVITY] = Math.exp(-LN10 * A * (root / one - linear * I));
  sums[ACTIVITY_I] = held ? 0 : -LN10 * A * (0.5 / (root * one * one) - linear);
}

/** [A(z)]/[A(0)] = K1…Kz / (h^z g^(z²)). */
function speciate(n: number, h: number): void {
  const x = 1 / h, v = 1 / sums[ACTIVITY]!, vv = v * v;
  const x1 = x * v, x2 = x * x * vv * vv, x3 = x2 * x * vv * vv * v;
  let charge = 0, byH = 0, byG = 0, square = 0, squareG = 0;
  for (let i = 0; i < n; i += 4) {
    const c = present[i]!, one = present[i + 1]! * x1, two = present[i + 2]! * x2, three = present[i + 3]! * x3;
    const share = 1 / (1 + one + two + three);
    const m1 = (one + 2 * two + 3 * three) * share, m2 = (one + 4 * two + 9 * three) * share;
    const m3 = (one + 8 * two + 27 * three) * share, m4 = (one + 16 * two + 81 * three) * share;
    charge += c * m1; byH += c * (m2 - m1 * m1); byG += c * (m3 - m1 * m2);
    square += c * m2; squareG += c * (m4 - m2 * m2);
  }
  sums[CHARGE] = charge; sums[CHARGE_H] = byH; sums[CHARGE_G] = byG; sums[SQUARE] = square; sums[SQUARE_G] = squareG;
}

/**
 * Where solving begins, for one liquid solved many times: where its first solve ended. A program's first run is at its nominal, so that all others begin there,
 * whichever they are. `set`: there was a first; `ionic` 0: it had nothing to solve.
 */
export interface Near { y: number; ionic: number; set: boolean }
/** Nothing solved yet. @source none - definition */
export const near = (): Near => ({ y: 0, ionic: 0, set: false });

/**
 * `pH` written into `out[at]`: two unknowns, ln h and the ionic strength, by Newton's steps on both at once, the balance of charge as the logarithm of
 * positive over negative, which is nearly straight. A pure function of its arguments. Allocates nothing.
 * @source spana-davies activities; goldberg-2002 constants
 */
export function pHInto(out: Float64Array, at: number, acids: ArrayLike<number>, from: number, strong: number, k: AcidConstants, salt = 0, casein = 0, start: Near | null = null): void {
  const n = gather(acids, from, k);
  const up = strong > 0 ? strong : 0, down = strong < 0 ? -strong : 0;
  let y: number, ionic: number;
  if (start !== null && start.ionic > 0) { y = start.y; ionic = start.ionic; }
  else { y = down > 1e-3 ? Math.log(down) : casein > 0 ? -6 * LN10 : -3 * LN10; ionic = 0.5 * (up + down) + salt + 0.002; }
  for (let i = 0; i < MOST; i++) {
    activity(ionic, k.A);
    const h = Math.exp(y), g = sums[ACTIVITY]!, dg = sums[ACTIVITY_I]!;
    speciate(n, h);
    const protons = h / g, hydroxide = k.Kw / (h * g);
    let plus = protons + up, rise = protons, minus = hydroxide + down + sums[CHARGE]!, fall = hydroxide + sums[CHARGE_H]!;
    if (casein > 0) {
      caseinInto(sums, CASEIN, h, k, casein, acids[from + PHOSPHORIC]!);
      minus += sums[CASEIN]!; fall += sums[CASEIN + 1]!;
      plus += sums[CASEIN + 2]!; rise += sums[CASEIN + 3]!;
    }
    const off = Math.log(plus / minus);
    const offH = rise / plus + fall / minus, offI = dg * (-protons / plus + (hydroxide + sums[CHARGE_G]!) / minus);
    const rest = 0.5 * (sums[SQUARE]! + up + down + protons + hydroxide) + salt - ionic;
    const restH = 0.5 * (-sums[CHARGE_G]! + protons - hydroxide), restI = -0.5 * dg * (sums[SQUARE_G]! + protons + hydroxide) - 1;
    const det = offH * restI - offI * restH;
    let dy = (rest * offI - off * restI) / det;
    const dI = (off * restH - rest * offH) / det;
    if (dy > 2.5) dy = 2.5; else if (dy < -2.5) dy = -2.5;
    y += dy;
    if (y > -LN10 * LOWEST) y = -LN10 * LOWEST; else if (y < -LN10 * HIGHEST) y = -LN10 * HIGHEST;
    // a step that would take the ionic strength below zero lets it settle instead
    const next = ionic + dI, moved = dI < 0 ? -dI : dI;
    ionic = next > 0.1 * ionic ? next : ionic + rest;
    if (dy < CLOSE && dy > -CLOSE && moved < CLOSE_I * (ionic + CLOSE_I)) {
      if (start === null || start.set) { out[at] = -y / LN10; return; }
      // the first is solved again from where it ended, as it will be whenever it is asked for
      start.y = y; start.ionic = ionic; start.set = true;
    }
  }
  if (start !== null) start.set = true;
  out[at] = pHByHalving(acids, from, strong, k, salt, casein);
}

const answer = new Float64Array(1);

/**
 * pH of a liquid from its acids and the net charge of its strong ions, by charge balance with Davies activities: -log10 of the proton's activity.
 * acids: mol/L of each acid in the order of the constituents, from index `from` (`ACIDS` of them), those of dairy (citric, phosphoric) among them;
 * strong: mol/L of strong cations less strong anions (potassium and sodium of a juice positive, chloride negative), any sign; k: from `constantsAt`
 * or `constantsInto`; salt: mol/L of further 1:1 salt, for the ionic strength alone; casein: g/L with the colloidal phosphate of its micelles, 0 and up.
 * Always answers, between -2 and 16; other proteins and dissolved gas are not in it. Allocates nothing.
 * @source spana-davies activities; goldberg-2002 constants; swaisgood-1992 casein
 */
export function pH(acids: ArrayLike<number>, from: number, strong: number, k: AcidConstants, salt = 0, casein = 0): number {
  pHInto(answer, 0, acids, from, strong, k, salt, casein);
  return answer[0]!;
}

/**
 * Net charge of strong ions (mol/L, cations less anions) that makes the acids stand at a pH: what a juice's salts bring, from its own pH.
 * acids, from, k, salt, casein as in `pH`; value: pH, -2 to 16. Negative where the liquid is more acid than its listed acids. Allocates nothing.
 * @source spana-davies activities; goldberg-2002 constants; swaisgood-1992 casein
 */
export function chargeAt(acids: ArrayLike<number>, from: number, value: number, k: AcidConstants, salt = 0, casein = 0, start: Near | null = null): number {
  chargeInto(answer, 0, acids, from, value, k, salt, casein, start);
  return answer[0]!;
}

/** `chargeAt` written into `out[at]`: Newton's steps on the ionic strength. @source spana-davies activities */
export function chargeInto(out: Float64Array, at: number, acids: ArrayLike<number>, from: number, value: number, k: AcidConstants, salt = 0, casein = 0, start: Near | null = null): void {
  const n = gather(acids, from, k);
  const h = Math.exp(-LN10 * value), oh = k.Kw / h;
  let held = 0;
  if (casein > 0) { caseinInto(sums, CASEIN, h, k, casein, acids[from + PHOSPHORIC]!); held = sums[CASEIN]! - sums[CASEIN + 2]!; }
  let ionic = start !== null && start.ionic > 0 ? start.ionic : salt + h + oh + 0.02;
  for (let i = 0; i < MOST; i++) {
    activity(ionic, k.A);
    const g = sums[ACTIVITY]!;
    speciate(n, h);
    const protons = h / g, hydroxide = oh / g;
    const strong = sums[CHARGE]! + held + hydroxide - protons;
    const sign = strong > 0 ? 1 : -1;
    const rest = 0.5 * (sums[SQUARE]! + sign * strong + protons + hydroxide) + salt - ionic;
    const fall = sums[ACTIVITY_I]! * (sums[CHARGE_G]! + hydroxide - protons);
    const slope = -0.5 * (sums[ACTIVITY_I]! * (sums[SQUARE_G]! + protons + hydroxide) + sign * fall) - 1;
    const moved = -rest / slope, next = ionic + moved;
    ionic = next > 0.1 * ionic ? next : ionic + rest;
    if (moved < CLOSE_I * (ionic + CLOSE_I) && moved > -CLOSE_I * (ionic + CLOSE_I)) {
      if (start === null || start.set) { out[at] = strong - fall * moved; return; }
      start.ionic = ionic; start.set = true;
    }
  }
  if (start !== null) start.set = true;
  out[at] = chargeBySettling(acids, from, value, k, salt, casein);
}

/**
 * Buffer strength in mol/L per pH at a pH, of water, acids and casein. acids, from, k, salt, casein as in `pH`; value: pH.
 * @source none - definition (slope of `chargeAt`)
 */
export function bufferAt(acids: ArrayLike<number>, from: number, value: number, k: AcidConstants, salt = 0, casein = 0): number {
  const step = 0.005;
  return (chargeAt(acids, from, value + step, k, salt, casein) - chargeAt(acids, from, value - step, k, salt, casein)) / (2 * step);
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
