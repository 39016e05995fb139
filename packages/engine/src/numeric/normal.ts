// the coefficients are written into the formulas: this is where most of the time of drawing makers goes
/** Within this of the middle one fraction is enough; its square. */
const CENTRAL = 0.425, CENTRAL_2 = 0.180625;
/** Over q where |q| is at most `CENTRAL`, r = `CENTRAL_2` - q². */
function central(r: number): number {
  const p = ((((((2509.0809287301226727 * r + 33430.575583588128105) * r + 67265.770927008700853) * r + 45921.953931549871457) * r + 13731.693765509461125) * r + 1971.5909503065514427) * r + 133.14166789178437745) * r + 3.387132872796366608;
  return p / (((((((5226.495278852854561 * r + 28729.085735721942674) * r + 39307.89580009271061) * r + 21213.794301586595867) * r + 5394.1960214247511077) * r + 687.1870074920579083) * r + 42.313330701600911252) * r + 1);
}
/** r is the root of minus the tail's logarithm, less 1.6; up to 3.4. */
function tailOf(r: number): number {
  const p = ((((((7.7454501427834140764e-4 * r + 0.0227238449892691845833) * r + 0.24178072517745061177) * r + 1.27045825245236838258) * r + 3.64784832476320460504) * r + 5.7694972214606914055) * r + 4.6303378461565452959) * r + 1.42343711074968357734;
  return p / (((((((1.05075007164441684324e-9 * r + 5.475938084995344946e-4) * r + 0.0151986665636164571966) * r + 0.14810397642748007459) * r + 0.68976733498510000455) * r + 1.6763848301838038494) * r + 2.05319162663775882187) * r + 1);
}
/** The same less 5, beyond. */
function farTail(r: number): number {
  const p = ((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 0.0012426609473880784386) * r + 0.026532189526576123093) * r + 0.29656057182850489123) * r + 1.7848265399172913358) * r + 5.4637849111641143699) * r + 6.6579046435011037772;
  return p / (((((((2.04426310338993978564e-15 * r + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5) * r + 7.868691311456132591e-4) * r + 0.0148753612908506148525) * r + 0.13692988092273580531) * r + 0.59983220655588793769) * r + 1);
}

/**
 * Below which value does a standard normal lie with this probability?
 * @param p 0..1
 * @returns the quantile, relative error below 1e-15; ∓Infinity at 0 and 1; NaN outside
 * @source wichura1988 algorithm AS 241, PPND16
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  return Math.abs(q) <= CENTRAL ? q * central(CENTRAL_2 - q * q) : outside(p, q);
}
function outside(p: number, q: number): number {
  if (!(p >= 0 && p <= 1)) return NaN;
  const tail = q < 0 ? p : 1 - p;
  if (tail === 0) return q < 0 ? -Infinity : Infinity;
  const r = Math.sqrt(-Math.log(tail));
  const z = r <= 5 ? tailOf(r - 1.6) : farTail(r - 5);
  return q < 0 ? -z : z;
}

/**
 * `normalQuantile` of many at once, in place; a call a number would put every one of them on the heap.
 * @param p probabilities, 0..1
 * @param n so many, from the first on
 * @source wichura1988 algorithm AS 241, PPND16
 */
export function normalQuantiles(p: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    const q = p[k]! - 0.5;
    if (Math.abs(q) <= CENTRAL) p[k] = q * central(CENTRAL_2 - q * q); else p[k] = outside(p[k]!, q);
  }
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
