import table from '../../../../data/physics/acids.json' with { type: 'json' };
import { at } from '../matter/constituents.ts';

interface Step { readonly pK25: number; readonly dH?: number; readonly dCp?: number; readonly lnK?: readonly number[]; readonly parabola?: readonly number[] }

const GAS_CONSTANT = 8.314462618; // J/(mol K), exact since 2019
const LN10 = Math.LN10;
const T25 = 298.15;

/** Number of acids, in the order of the constituents from `citric` to `other_acid`. @source none - definition */
export const ACIDS = at.other_acid - at.citric + 1;
/** Place of phosphoric acid among the acids: what casein holds of it. @source none - definition */
export const PHOSPHORIC = at.phosphoric - at.citric;
/** Most steps an acid of the table has; the stride of `AcidConstants.pK`. @source none - definition */
export const STEPS = 3;

const rows: readonly { readonly molar_mass: number; readonly equivalent: number; readonly steps: readonly Step[] }[] = (() => {
  const byId = new Map(table.acids.map((acid) => [acid.id, acid]));
  const order = ['citric', 'malic', 'tartaric', 'lactic', 'acetic', 'phosphoric', 'ascorbic', 'quinic', 'succinic', table.alsoCounted.other_acid];
  return order.map((id) => byId.get(id)!);
})();

/** Molar masses of the acids in g/mol, in the order of the constituents; `other_acid` counts as citric. @source goldberg-2002 formulas */
export const MOLAR_MASS: Float64Array = Float64Array.from(rows, (row) => row.molar_mass);
/** Grams of each acid that give up one mole of protons on titration to pH 8.2. @source awri-tn14 equivalent weights */
export const EQUIVALENT: Float64Array = Float64Array.from(rows, (row) => row.equivalent);

/**
 * pK of an acid step from its heat and heat capacity of dissociation.
 * pK25: at 25 °C; dH: kJ/mol; dCp: J/(mol K), taken constant; celsius: 0 to 80, beyond that extrapolated.
 * @source goldberg-2002 integrated van 't Hoff equation
 */
export function pkFromEnthalpy(pK25: number, dH: number, dCp: number, celsius: number): number {
  const T = celsius + 273.15;
  return pK25 - (1000 * dH * (1 / T25 - 1 / T) + dCp * (T25 / T - 1 + Math.log(T / T25))) / (GAS_CONSTANT * LN10);
}

/**
 * Thermodynamic pK of one step of an acid at a temperature.
 * acid: id of `data/physics/acids.json`, `carbonic` and `phthalic` too; step: from 1; celsius: 0 to 80. NaN for a step the acid has not.
 * Ascorbic and quinic acid stand at their 25 °C value: no temperature data were found.
 * @source goldberg-2002 pK, dH, dCp; citric-fits first step of citric acid; echa-lactic lactic acid
 */
export function pK(acid: string, step: number, celsius: number): number {
  const extra: Readonly<Record<string, readonly Step[]>> = { carbonic: table.carbonic.steps, phthalic: table.phthalic.steps };
  const steps: readonly Step[] | undefined = table.acids.find((row) => row.id === acid)?.steps ?? extra[acid];
  const found = steps?.[step - 1];
  return found ? stepPk(found, celsius) : NaN;
}

/**
 * pK of one step by its heat and heat capacity alone, also where a fit to measurements stands in `pK`. NaN for a step without them.
 * acid, step, celsius as in `pK`.
 * @source benezeth-1997 citric acid; goldberg-2002 the others
 */
export function pKByHeat(acid: string, step: number, celsius: number): number {
  const steps: readonly Step[] | undefined = table.acids.find((row) => row.id === acid)?.steps;
  const found = steps?.[step - 1];
  return found?.dH === undefined ? NaN : pkFromEnthalpy(found.pK25, found.dH, found.dCp ?? 0, celsius);
}

function stepPk(step: Step, celsius: number): number {
  if (step.lnK) {
    const [a, b, c, d] = step.lnK as [number, number, number, number];
    const T = celsius + 273.15;
    return -(a + b / T + c * Math.log(T) + d * T) / LN10;
  }
  if (step.parabola) {
    const [base, curve, centre] = step.parabola as [number, number, number];
    return base + curve * (celsius - centre) ** 2;
  }
  if (step.dH === undefined) return step.pK25;
  return pkFromEnthalpy(step.pK25, step.dH, step.dCp ?? 0, celsius);
}

/**
 * pK of water. celsius: 0 to 60.
 * @source memory pKw = 4470.99/T - 6.0875 + 0.01706 T (Harned's form; 13.995 at 25 °C)
 */
export function pKw(celsius: number): number {
  const [a, b, c] = table.water.coef as [number, number, number];
  const T = celsius + 273.15;
  return a / T + b + c * T;
}

/**
 * Debye-Hückel slope A of the Davies equation in (L/mol)^0.5. celsius: 0 to 60.
 * @source memory A = 1.82483e6 sqrt(rho)/(eps T)^1.5, permittivity of Malmberg and Maryott; 0.511 at 25 °C
 */
export function debyeHueckelA(celsius: number): number {
  const [e0, e1, e2, e3] = table.davies.eps as [number, number, number, number];
  const eps = e0 + celsius * (e1 + celsius * (e2 + celsius * e3));
  const rho = 0.99984 + celsius * (6.5e-5 + celsius * (-8.5e-6 + 5e-8 * celsius)); // kg/L to 0.0003, enough under the root
  return (1.82483e6 * Math.sqrt(rho)) / (eps * (celsius + 273.15)) ** 1.5;
}

const [ETHANOL_A, ETHANOL_B] = table.ethanol.coef as [number, number];
const ETHANOL_LIMIT = table.ethanol.limit_pct;

/**
 * How far ethanol raises the pK of a carboxyl step. pct: % vol of the liquid, 0 to 60 (held at the ends); the same shift for every step.
 * share: of the rule, 1 unless drawn from `ETHANOL_SHIFT`.
 * @source prenesti-2012 table 4 at 12 % vol; the rule between is judged (0.0095 phi + 0.00015 phi^2)
 */
export function ethanolShift(pct: number, share = 1): number {
  const phi = pct < 0 ? 0 : pct > ETHANOL_LIMIT ? ETHANOL_LIMIT : pct;
  return share * phi * (ETHANOL_A + ETHANOL_B * phi);
}

/** Constants of all acids at one temperature and strength: what the solvers take. */
export interface AcidConstants {
  /** thermodynamic constants, STEPS a row, in the order of the constituents; 0 for a step the acid has not */
  readonly K: Float64Array;
  /** steps of each acid */
  readonly steps: Uint8Array;
  readonly Kw: number;
  readonly A: number;
  /** by how much ethanol has divided the constants; 1 in water */
  lift: number;
}

/**
 * Constants for the solvers at a temperature, and in a liquid of some strength. Allocates: make it once, outside a loop, and let `constantsInto` put
 * ethanol to it.
 * celsius: 0 to 80 (pKw and the activities to 60); ethanol: % vol, 0 to 60, 0 for the aqueous constants of titration and of curdling.
 * @source goldberg-2002 pK, dH, dCp; citric-fits first step of citric acid; prenesti-2012 shift with ethanol
 */
export function constantsAt(celsius: number, ethanol = 0): AcidConstants {
  const { K, steps, Kw, A } = celsius === 20 ? (usual ??= aqueous(20)) : aqueous(celsius), lift = 10 ** ethanolShift(ethanol);
  return { K: K.map((k) => k / lift), steps, Kw, A, lift };
}
/** Of most liquids the acidity is told at 20 °C: worked out once. */
let usual: AcidConstants | undefined;

function aqueous(celsius: number): AcidConstants {
  const K = new Float64Array(ACIDS * STEPS), steps = new Uint8Array(ACIDS);
  rows.forEach((row, i) => {
    steps[i] = row.steps.length;
    row.steps.forEach((step, j) => { K[i * STEPS + j] = 10 ** -stepPk(step, celsius); });
  });
  return { K, steps, Kw: 10 ** -pKw(celsius), A: debyeHueckelA(celsius), lift: 1 };
}

/**
 * Constants for a single acid of given pK, as the solvers take them (the first place of the order): for printed tables that state their own.
 * pKs: one to three, ascending.
 * @source none - definition
 */
export function constantsOf(pKs: readonly number[], celsius: number): AcidConstants {
  const K = new Float64Array(ACIDS * STEPS);
  const steps = new Uint8Array(ACIDS);
  steps[0] = Math.min(pKs.length, STEPS);
  for (let j = 0; j < steps[0]; j++) K[j] = 10 ** -pKs[j]!;
  return { K, steps, Kw: 10 ** -pKw(celsius), A: debyeHueckelA(celsius), lift: 1 };
}
