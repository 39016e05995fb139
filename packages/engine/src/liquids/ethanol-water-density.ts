import table from '../../../../data/physics/oiml-r22.json' with { type: 'json' };

const A = Float64Array.from(table.A);
const B = Float64Array.from(table.B);
const C = table.C.map((row) => Float64Array.from(row)) as readonly Float64Array[];

/** Range of the general formula, °C, ends included. @source oiml-r22 general formula */
export const FORMULA_FROM_C = -20;
export const FORMULA_TO_C = 40;

/** Even and odd powers side by side: neither waits for the other. */
function polynomial(coefficients: Float64Array, x: number): number {
  const square = x * x;
  let even = 0, odd = 0, k = coefficients.length - 1;
  if (k % 2 === 0) even = coefficients[k--]!;
  for (; k > 0; k -= 2) { odd = odd * square + coefficients[k]!; even = even * square + coefficients[k - 1]!; }
  return even + x * odd;
}

function formula(massFraction: number, celsius: number): number {
  const d = celsius - 20;
  let sum = densityOfEthanolWaterAt20(massFraction);
  if (d === 0) return sum;
  sum += d * polynomial(B, d);
  if (massFraction === 0) return sum;
  let power = 1;
  for (const row of C) {
    power *= d;
    sum += power * massFraction * polynomial(row, massFraction);
  }
  return sum;
}

/**
 * The same at 20 °C, where measures in mL are meant: the first row of the formula alone.
 * @param massFraction ethanol over ethanol + water, 0..1; not looked at
 * @returns kg/m³ in vacuum
 * @source oiml-r22 general formula
 */
export function densityOfEthanolWaterAt20(massFraction: number): number {
  // half of what is mixed in a bar has no alcohol
  return massFraction === 0 ? A[0]! : polynomial(A, massFraction);
}

/**
 * How dense is a mixture of ethanol and water, contraction included?
 * @param massFraction ethanol over ethanol + water, 0..1
 * @param celsius -20..40 °C, still liquid
 * @returns kg/m³ in vacuum; NaN outside either range
 * @source oiml-r22 general formula
 */
export function densityOfEthanolWater(massFraction: number, celsius: number): number {
  if (!(massFraction >= 0 && massFraction <= 1 && celsius >= FORMULA_FROM_C && celsius <= FORMULA_TO_C)) return NaN;
  return formula(massFraction, celsius);
}

/**
 * The same where a run may stray outside the formula (a boil, a deep freezer): beyond -20 and 40 °C the last
 * degree's slope goes on, with the curvature of water's own density for the water's share above 40 °C.
 * @param massFraction 0..1, held at the ends
 * @param celsius any, meant for -40..100 °C
 * @returns kg/m³; within 0.3 % of water and ethanol at 78 °C
 * @source oiml-r22 general formula; kell1975 eq. 1 above 40 °C
 */
export function densityOfEthanolWaterAnywhere(massFraction: number, celsius: number): number {
  const p = massFraction < 0 ? 0 : massFraction > 1 ? 1 : massFraction;
  if (celsius > FORMULA_TO_C) {
    const end = formula(p, FORMULA_TO_C);
    const slope = end - formula(p, FORMULA_TO_C - 1);
    const water = densityOfWater(celsius) - densityOfWater(FORMULA_TO_C) -
      (densityOfWater(FORMULA_TO_C) - densityOfWater(FORMULA_TO_C - 1)) * (celsius - FORMULA_TO_C);
    return end + slope * (celsius - FORMULA_TO_C) + (1 - p) * water;
  }
  if (celsius < FORMULA_FROM_C) {
    const end = formula(p, FORMULA_FROM_C);
    return end + (end - formula(p, FORMULA_FROM_C + 1)) * (FORMULA_FROM_C - celsius);
  }
  return formula(p, celsius);
}

/**
 * How dense is air-free water?
 * @param celsius 0..100 °C; below 0 °C the same fraction goes on (supercooled)
 * @returns kg/m³
 * @source kell1975 eq. 1
 */
export function densityOfWater(celsius: number): number {
  const t = celsius;
  return (999.83952 + t * (16.952577 + t * (-7.9905127e-3 + t * (-46.241757e-6 + t * (105.84601e-9 - t * 281.03006e-12))))) /
    (1 + 16.887236e-3 * t);
}
