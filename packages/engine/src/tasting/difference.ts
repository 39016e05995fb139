/** ln of the factorial, exact sums for what a panel can be. */
function lnFactorial(n: number): number {
  let sum = 0;
  for (let i = 2; i <= n; i++) sum += Math.log(i);
  return sum;
}

/**
 * With which probability are at least this many answers right when everybody guesses?
 * @param n answers, a whole number from 1
 * @param right at least so many right, 0..n
 * @param chance probability of a lucky guess, 0..1: 1/3 in a triangle, 1/2 in duo-trio and paired tests
 * @returns 0..1
 * @source iso-4120 binomial
 */
export function luck(n: number, right: number, chance: number): number {
  let sum = 0;
  for (let x = Math.max(0, right); x <= n; x++)
    sum += Math.exp(lnFactorial(n) - lnFactorial(x) - lnFactorial(n - x) + x * Math.log(chance) + (n - x) * Math.log1p(-chance));
  return Math.min(1, sum);
}

/**
 * How many right answers are needed before a difference may be claimed?
 * @param n answers, a whole number from 1
 * @param alpha risk of claiming a difference that is none, above 0
 * @param chance as in `luck`
 * @param sides 2 where either sample may be preferred: the agreeing answers are counted
 * @returns the least number; undefined where even all right would not do
 * @source iso-4120; iso-10399; iso-5495
 */
export function leastRight(n: number, alpha: number, chance: number, sides: 1 | 2 = 1): number | undefined {
  for (let x = 0; x <= n; x++) if (sides * luck(n, x, chance) <= alpha + 1e-12 && (sides === 1 || 2 * x > n)) return x;
  return undefined;
}

/**
 * Which share of tasters truly tells the samples apart, and between which ends does it lie?
 * @param n,right answers and right ones
 * @param chance as in `luck`
 * @param z standard deviates either side: 1.64 for 95 % one-sided, 1.96 for 95 % two-sided
 * @returns estimate, low and high end; below 0 means no more than luck
 * @source iso-5495-amd1 examples
 */
export function tellingShare(n: number, right: number, chance: number, z: number): { readonly value: number; readonly low: number; readonly high: number } {
  const p = right / n;
  const value = (p - chance) / (1 - chance);
  const half = (z * Math.sqrt((p * (1 - p)) / n)) / (1 - chance);
  return { value, low: value - half, high: value + half };
}
