/**
 * Where does a function cross zero between two points? Brent's method: inverse quadratic steps, kept inside the bracket by bisection.
 * @param f continuous on the interval
 * @param low,high ends, either order; f must differ in sign there
 * @param tolerance half-width of the answer, in the unit of x
 * @returns x; NaN where the ends do not differ in sign or f gives NaN
 * @source brent1973 ch. 4
 */
export function rootBetween(f: (x: number) => number, low: number, high: number, tolerance = 1e-12): number {
  let a = low, b = high, fa = f(a), fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) return NaN;
  let c = a, fc = fa, d = b - a, e = d;
  for (let i = 0; i < 200; i++) {
    if (fb * fc > 0) { c = a; fc = fa; d = b - a; e = d; }
    if (Math.abs(fc) < Math.abs(fb)) { a = b; b = c; c = a; fa = fb; fb = fc; fc = fa; }
    const close = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= close || fb === 0) return b;
    if (Math.abs(e) >= close && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number, q: number;
      if (a === c) { p = 2 * half * s; q = 1 - s; } else {
        const r = fb / fc, t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q; else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(close * q), Math.abs(e * q))) { e = d; d = p / q; } else { d = half; e = half; }
    } else { d = half; e = half; }
    a = b; fa = fb;
    b += Math.abs(d) > close ? d : half > 0 ? close : -close;
    fb = f(b);
    if (Number.isNaN(fb)) return NaN;
  }
  return b;
}
