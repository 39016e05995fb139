import heat from '../../../../data/physics/heat-capacity.json' with { type: 'json' };
import excess from '../../../../data/physics/excess-enthalpy.json' with { type: 'json' };
import { at, CONSTITUENTS } from '../matter/constituents.ts';
import type { Constituent } from '../matter/constituents.ts';

const WATER = at.water, ETHANOL = at.ethanol;
const N = CONSTITUENTS.length;
const M_WATER = 18.0153, M_ETHANOL = 46.069;
const CP_WATER = Float64Array.from(heat.water.cp);
const CP_ETHANOL = Float64Array.from(heat.ethanol.cp);
/** Coefficients in p of each power of u, four numbers each. */
const MIX = Float64Array.from(heat.mixing.cp.flat());
if (MIX.length !== 4 * heat.mixing.cp.length) throw new Error('a power of the mixing heat capacity has other than four coefficients');
const CONST = new Float64Array(N);
const SLOPE = new Float64Array(N);
const rows = heat.constituents as Readonly<Partial<Record<Constituent, { readonly cp: readonly number[] }>>>;
for (const name of CONSTITUENTS) {
  const row = rows[name];
  if (row) { CONST[at[name]] = row.cp[0]!; SLOPE[at[name]] = row.cp[1]!; }
}
if (N % 4 !== 0 || CONST[WATER] !== 0 || CONST[ETHANOL] !== 0) throw new Error('heat capacities are summed in fours, beside those of water and ethanol');
const ORDER = CP_WATER.length;
/** Heat capacity of the last block as J/K in powers of u = (t - 25)/100, and H_E as J. */
const CAPACITY = new Float64Array(ORDER);
/** What a power of u brings when it is integrated: 1 / (k + 1). */
const INTEGRAL = Float64Array.from({ length: ORDER }, (_, k) => 1 / (k + 1));
const L = excess.bcd.map(([b, c, d]) => b! + c! * 298.15 + d! * 298.15 * 298.15);

/**
 * Heat of mixing ethanol and water at 25 °C.
 * @param moleFraction ethanol over ethanol + water in mol, 0..1
 * @returns J per mol of mixture, negative: it warms; spread about 5 % (measurements differ by that)
 * @source larkin1975 eq. 1
 */
export function excessEnthalpyAt25(moleFraction: number): number {
  const x = moleFraction;
  const root = Math.sqrt(x);
  const x15 = x * root;
  return x * (1 - x) * (L[0]! + root * L[1]! + x15 * (L[2]! + x * (L[3]! + x * x * L[4]!)));
}

/** Ethanol in g, what all else but water brings: J/K, and J/K in u; and the excess enthalpy in J that goes with CAPACITY. */
const BESIDE = new Float64Array(4);

/**
 * Takes down what a block brings to heat beside its water, for `enthalpyWith` and its like: for a liquid of which only the water changes.
 * Valid until the next call of anything in this file.
 * @param block grams by constituent from `offset`
 * @source none - definition
 */
export function takeBeside(block: Float64Array, offset: number): void {
  // sums side by side: none waits for another; water and ethanol have no coefficients of this kind
  let a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0;
  for (let i = 0, k = offset; i < N; i += 4, k += 4) {
    const p = block[k]!, q = block[k + 1]!, r = block[k + 2]!, s = block[k + 3]!;
    a += p * CONST[i]!; b += q * CONST[i + 1]!; c += r * CONST[i + 2]!; d += s * CONST[i + 3]!;
    e += p * SLOPE[i]!; f += q * SLOPE[i + 1]!; g += r * SLOPE[i + 2]!; h += s * SLOPE[i + 3]!;
  }
  BESIDE[0] = block[offset + ETHANOL]!; BESIDE[1] = a + b + (c + d); BESIDE[2] = e + f + (g + h);
}

/** Fills CAPACITY for this block, with the excess enthalpy. */
function expand(block: Float64Array, offset: number): void {
  takeBeside(block, offset);
  expandWith(block[offset + WATER]!);
}

function expandWith(water: number): void {
  const ethanol = BESIDE[0]!;
  BESIDE[3] = 0;
  for (let k = 0; k < ORDER; k++) CAPACITY[k] = water * CP_WATER[k]!;
  CAPACITY[0]! += BESIDE[1]!;
  CAPACITY[1]! += BESIDE[2]!;
  if (ethanol === 0) return;
  for (let k = 0; k < CP_ETHANOL.length; k++) CAPACITY[k]! += ethanol * CP_ETHANOL[k]!;
  if (water === 0) return;
  const solvent = water + ethanol;
  const p = ethanol / solvent;
  const weight = (water * ethanol) / solvent;
  for (let j = 0, k = 0; k < MIX.length; j++, k += 4) CAPACITY[j]! += weight * mixAt(k, p);
  const mol = water / M_WATER + ethanol / M_ETHANOL;
  BESIDE[3] = mol * excessEnthalpyAt25(ethanol / M_ETHANOL / mol);
}

/** Of a power of u, whose coefficients begin at `k`, what mixing brings at this mass fraction. */
function mixAt(k: number, p: number): number { return MIX[k]! + p * (MIX[k + 1]! + p * (MIX[k + 2]! + p * MIX[k + 3]!)); }

/** A step of Newton's this small, in K, is the last: what is left is its square times half the change of the heat capacity over itself, less than a hundredth for each K. */
const LAST_STEP = 3e-4;

function capacityAt(u: number): number {
  let sum = 0;
  for (let k = ORDER - 1; k >= 0; k--) sum = sum * u + CAPACITY[k]!;
  return sum;
}

function heatTo(u: number): number {
  let sum = 0;
  for (let k = ORDER - 1; k >= 0; k--) sum = sum * u + CAPACITY[k]! * INTEGRAL[k]!;
  return 100 * u * sum;
}

/**
 * Heat capacity of a liquid mixture.
 * @param block grams by constituent from `offset`
 * @param celsius -40..100 °C; beyond, held at the ends
 * @returns J/K; fats as melted, no phase change
 * @source melinder2010 ethanol-water table; laliberte2009 eq. 8; llano2005 after Bubnik; choi-okos1986 table 2
 */
export function heatCapacity(block: Float64Array, offset: number, celsius: number): number {
  expand(block, offset);
  return capacityNow(celsius);
}

/** Below -40 and above 100 °C the capacity stays what it is there. */
function held(celsius: number): number {
  return celsius < -40 ? -40 : celsius > 100 ? 100 : celsius;
}

function enthalpyNow(celsius: number): number {
  const t = held(celsius);
  const u = (t - 25) / 100;
  return t === celsius ? heatTo(u) : heatTo(u) + capacityAt(u) * (celsius - t);
}

/**
 * Enthalpy of a liquid mixture against pure liquid water, pure ethanol and each solute in solution at 25 °C: heat of mixing of ethanol and
 * water at 25 °C, then the heat capacity of the mixture from there. Mixing at constant enthalpy so gives the warming.
 * @param block grams by constituent from `offset`
 * @param celsius any; meant for -40..100 °C
 * @returns J; 0 for an empty block
 * @source larkin1975 eq. 1 at 25 °C only; melinder2010; laliberte2009
 */
export function enthalpy(block: Float64Array, offset: number, celsius: number): number {
  expand(block, offset);
  return BESIDE[3]! + enthalpyNow(celsius);
}

/**
 * What a gram of a solute brings to the enthalpy of a mixture.
 * @param i its place among the constituents, neither water nor ethanol
 * @param celsius as in `enthalpy`
 * @returns J/g, 0 at 25 °C
 * @source laliberte2009; choi-okos1986 table 2
 */
export function enthalpyOfSolute(i: number, celsius: number): number {
  const t = held(celsius), u = (t - 25) / 100;
  return 100 * u * (CONST[i]! + (SLOPE[i]! * u) / 2) + (CONST[i]! + SLOPE[i]! * u) * (celsius - t);
}

/**
 * Temperature of a liquid mixture that holds this enthalpy: the inverse of `enthalpy`.
 * @param block grams by constituent from `offset`
 * @param enthalpy_J as `enthalpy` counts it
 * @param guess °C to start from
 * @returns °C within 1e-9; NaN for an empty block
 * @source none - inverse of `enthalpy`
 */
export function temperatureOf(block: Float64Array, offset: number, enthalpy_J: number, guess = 20): number {
  takeBeside(block, offset);
  return temperatureWith(block[offset + WATER]!, enthalpy_J, guess);
}

/**
 * `enthalpy` of what `takeBeside` took down, with so much water.
 * @param water g
 * @param celsius as in `enthalpy`
 * @returns J
 * @source larkin1975 eq. 1 at 25 °C only; melinder2010; laliberte2009
 */
export function enthalpyWith(water: number, celsius: number): number {
  expandWith(water);
  return BESIDE[3]! + enthalpyNow(celsius);
}

/**
 * `temperatureOf` of what `takeBeside` took down, with so much water.
 * @param water g
 * @param enthalpy_J,guess as in `temperatureOf`
 * @returns °C within 1e-9; NaN for an empty block
 * @source none - inverse of `enthalpy`
 */
export function temperatureWith(water: number, enthalpy_J: number, guess: number): number {
  expandWith(water);
  const target = enthalpy_J - BESIDE[3]!;
  let t = guess;
  for (let i = 0; i < 30; i++) {
    const inside = held(t), u = (inside - 25) / 100;
    let heats = 0, holds = 0;
    for (let k = ORDER - 1; k >= 0; k--) { const c = CAPACITY[k]!; heats = heats * u + c * INTEGRAL[k]!; holds = holds * u + c; }
    const step = (100 * u * heats + holds * (t - inside) - target) / holds;
    t -= step;
    if (Math.abs(step) < LAST_STEP) return t;
  }
  return Number.isFinite(t) ? t : NaN;
}

/**
 * `heatCapacity` of what `takeBeside` took down, with the water of the last call.
 * @param celsius as in `heatCapacity`
 * @returns J/K
 * @source melinder2010; laliberte2009 eq. 8
 */
export function capacityNow(celsius: number): number {
  return capacityAt((held(celsius) - 25) / 100);
}

/**
 * What a liquid is at one moment, of what `takeBeside` took down with so much water.
 * @param water g
 * @param enthalpy_J,guess as in `temperatureOf`
 * @param out °C, J/K, J/g that a gram more of water brings at this temperature, and by how much that grows with each gram
 * @source none - inverse of `enthalpy`, its slopes
 */
export function momentWith(water: number, enthalpy_J: number, guess: number, out: Float64Array): void {
  const celsius = temperatureWith(water, enthalpy_J, guess);
  out[0] = celsius;
  out[1] = capacityNow(celsius);
  if (!(water > 1e-9)) { out[2] = enthalpyWith(water + 1, celsius) - enthalpy_J; out[3] = 0; return; }
  const t = held(celsius), u = (t - 25) / 100;
  let heats = 0, holds = 0;
  for (let k = ORDER - 1; k >= 0; k--) { heats = heats * u + CP_WATER[k]! * INTEGRAL[k]!; holds = holds * u + CP_WATER[k]!; }
  out[2] = 100 * u * heats + holds * (celsius - t);
  out[3] = 0;
  // of what a gram of water brings only the mixing with ethanol hangs on how much there is
  if (BESIDE[0] !== 0) mixingSlopes(water, u, celsius - t, out);
}

/**
 * Adds to out[2] by how much the heat of mixing grows with each gram of water, J/g, and to out[3] by how much that does: of what is mixed at 25 °C, m E(x) with
 * m mol of both and x of them ethanol, and of the heat capacity to 100 u above and `beyond` K on, w e / (w + e) M(p) with w and e grams and p = e / (w + e).
 */
function mixingSlopes(water: number, u: number, beyond: number, out: Float64Array): void {
  const ethanol = BESIDE[0]!, mol = water / M_WATER + ethanol / M_ETHANOL, x = ethanol / M_ETHANOL / mol, y = 1 - x, root = Math.sqrt(x), x15 = x * root;
  // g is E / (x y); gx and gxx are its slope times x and its curvature times x²
  const l1 = root * L[1]!, l2 = x15 * L[2]!, l3 = x15 * x * L[3]!, l4 = x15 * x * x * x * L[4]!;
  const g = L[0]! + l1 + l2 + l3 + l4, gx = 0.5 * l1 + 1.5 * l2 + 2.5 * l3 + 4.5 * l4, gxx = -0.25 * l1 + 0.75 * l2 + 3.75 * l3 + 15.75 * l4;
  out[2]! += (x * (x * g - y * gx)) / M_WATER;
  out[3]! += (x * (-2 * x * g + 2 * (y - x) * gx + y * gxx)) / (M_WATER * M_WATER * mol);
  let c0 = 0, c1 = 0, c2 = 0, c3 = 0, power = 1;
  for (let j = 0, k = 0; k < MIX.length; j++, k += 4) {
    const by = power * (100 * u * INTEGRAL[j]! + beyond);
    c0 += MIX[k]! * by; c1 += MIX[k + 1]! * by; c2 += MIX[k + 2]! * by; c3 += MIX[k + 3]! * by;
    power *= u;
  }
  const p = ethanol / (water + ethanol), q = 1 - p, m = c0 + p * (c1 + p * (c2 + p * c3)), slope = c1 + p * (2 * c2 + p * 3 * c3), bend = 2 * c2 + p * 6 * c3;
  out[2]! += p * p * (m - q * slope);
  out[3]! -= ((p * p * p) / ethanol) * (2 * (m - q * slope) + p * (2 * slope - q * bend));
}

/**
 * Heat capacity of a sugar syrup by the sugar technologists' formula, which takes water as 4.184 at any temperature. The mixture's own
 * (`heatCapacity`) has its sugar from here and its water from steam tables.
 * @param massFraction dry solids over solution, 0..0.8
 * @param celsius 0..100 °C
 * @param purity sucrose over dry solids, 0..1
 * @returns J/(g K)
 * @source llano2005 after Bubnik
 */
export function heatCapacityOfSyrup(massFraction: number, celsius: number, purity = 1): number {
  return 4.184 + massFraction * (-2.971 + 0.46 * purity + 0.0075 * celsius);
}
