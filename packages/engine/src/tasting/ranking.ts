/**
 * Do tasters' rankings of several samples differ from chance? Friedman's statistic.
 * @param rankSums sum of ranks by sample
 * @param tasters how many ranked
 * @returns F, 0 where all sums are equal
 * @source iso-8587 eq. 2
 */
export function friedman(rankSums: readonly number[], tasters: number): number {
  const k = rankSums.length;
  const squares = rankSums.reduce((s, r) => s + r * r, 0);
  return (12 * squares) / (tasters * k * (k + 1)) - 3 * tasters * (k + 1);
}

/** Every order of 1..k. */
function orders(k: number): number[][] {
  if (k === 1) return [[1]];
  return orders(k - 1).flatMap((order) => Array.from({ length: k }, (_, i) => [...order.slice(0, i), k, ...order.slice(i)]));
}

/** How many of the (k!)^(n-1) rankings lead to each sum of squared rank sums, the first taster's order being fixed. */
function squaresOf(k: number, n: number): Map<number, number> {
  const perms = orders(k);
  let states = new Map<number, number>([[key(Array.from({ length: k }, (_, i) => i + 1)), 1]]);
  const sums = new Array<number>(k);
  for (let taster = 1; taster < n; taster++) {
    const next = new Map<number, number>();
    for (const [state, ways] of states) {
      const at = parts(state, k);
      for (const perm of perms) {
        for (let i = 0; i < k; i++) sums[i] = at[i]! + perm[i]!;
        const to = key(sums);
        next.set(to, (next.get(to) ?? 0) + ways);
      }
    }
    states = next;
  }
  const out = new Map<number, number>();
  for (const [state, ways] of states) {
    const squares = parts(state, k).reduce((s, r) => s + r * r, 0);
    out.set(squares, (out.get(squares) ?? 0) + ways);
  }
  return out;
}

/** Rank sums in order, six bits each: which sample has which does not matter. */
function key(sums: number[]): number {
  for (let i = 1; i < sums.length; i++) {
    const s = sums[i]!;
    let j = i - 1;
    while (j >= 0 && sums[j]! > s) { sums[j + 1] = sums[j]!; j--; }
    sums[j + 1] = s;
  }
  let value = 0;
  for (let i = 0; i < sums.length; i++) value = value * 64 + sums[i]!;
  return value;
}
function parts(value: number, k: number): number[] {
  const out = new Array<number>(k);
  for (let i = k - 1; i >= 0; i--) { out[i] = value % 64; value = Math.floor(value / 64); }
  return out;
}

/**
 * From which Friedman F on may a difference be claimed? Counted out, not approximated.
 * @param samples 3..5
 * @param tasters 2..12
 * @param alpha risk of claiming a difference that is none
 * @returns the least F that rankings by chance reach with at most that probability; undefined outside, or where none does
 * @source friedman1937 exact distribution
 */
export function friedmanCritical(samples: number, tasters: number, alpha: number): number | undefined {
  if (!(samples >= 3 && samples <= 5 && tasters >= 2 && tasters <= 12)) return undefined;
  const counts = [...squaresOf(samples, tasters)].sort((a, b) => b[0] - a[0]);
  const all = counts.reduce((s, [, ways]) => s + ways, 0);
  let tail = 0, critical: number | undefined;
  for (const [squares, ways] of counts) {
    tail += ways;
    if (tail / all > alpha * (1 + 1e-9)) break;
    critical = (12 * squares) / (tasters * samples * (samples + 1)) - 3 * tasters * (samples + 1);
  }
  return critical;
}

/**
 * How far must two rank sums lie apart to differ?
 * @param tasters,samples how many ranked how many
 * @param z standard deviate, 1.96 for 5 % two-sided
 * @returns least significant difference of rank sums
 * @source iso-8587 eq. 4
 */
export function rankSumDifference(tasters: number, samples: number, z: number): number {
  return z * Math.sqrt((tasters * samples * (samples + 1)) / 6);
}

/**
 * Page's L from which rankings may be said to follow an order foreseen.
 * @param samples,tasters how many were ranked by how many
 * @param z standard deviate, 1.645 for 5 % one-sided
 * @returns L by the normal approximation
 * @source iso-8587 eq. 3
 */
export function pageCritical(samples: number, tasters: number, z: number): number {
  const k = samples, n = tasters;
  return (n * k * (k + 1) ** 2) / 4 + z * Math.sqrt((n * k * k * (k + 1) * (k * k - 1)) / 144);
}
