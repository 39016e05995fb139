const A = [3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727];
const B = [1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061, 28729.085735721942674, 5226.495278852854561];
const C = [1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4];
const D = [1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459, 0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9];
const E = [6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7];
const F = [1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4, 1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15];

function ratio(top: readonly number[], bottom: readonly number[], r: number): number {
  let p = 0, q = 0;
  for (let k = 7; k >= 0; k--) { p = p * r + top[k]!; q = q * r + bottom[k]!; }
  return p / q;
}

/**
 * Below which value does a standard normal lie with this probability?
 * @param p 0..1
 * @returns the quantile, relative error below 1e-15; ∓Infinity at 0 and 1; NaN outside
 * @source wichura1988 algorithm AS 241, PPND16
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(A, B, 0.180625 - q * q);
  if (!(p >= 0 && p <= 1)) return NaN;
  const tail = q < 0 ? p : 1 - p;
  if (tail === 0) return q < 0 ? -Infinity : Infinity;
  const r = Math.sqrt(-Math.log(tail));
  const z = r <= 5 ? ratio(C, D, r - 1.6) : ratio(E, F, r - 5);
  return q < 0 ? -z : z;
}

/**
 * With which probability does a standard normal lie below this value?
 * @param z any
 * @returns 0..1, absolute error below 1e-14
 * @source abramowitz-stegun 26.2.10 and 26.2.17's continued fraction 26.2.14
 */
export function normalShare(z: number): number {
  const x = Math.abs(z);
  if (x > 38) return z < 0 ? 0 : 1;
  const density = Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
  let upper: number;
  if (x < 3) {
    let term = x, sum = x;
    for (let k = 1; Math.abs(term) > 1e-18 * Math.abs(sum) && k < 200; k++) { term *= (x * x) / (2 * k + 1); sum += term; }
    upper = 0.5 - density * sum;
  } else {
    let fraction = x;
    for (let k = 120; k >= 1; k--) fraction = x + k / fraction;
    upper = density / fraction;
  }
  return z < 0 ? upper : 1 - upper;
}
