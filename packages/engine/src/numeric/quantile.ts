/**
 * The k-th smallest of the first `n` entries, by selection: the entries are moved about.
 * @param a numbers without NaN
 * @param k 0 to n - 1
 * @source hoare1961 find, with the median of three
 */
function select(a: Float64Array, n: number, k: number): number {
  let low = 0, high = n - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    const p = a[low]!, q = a[middle]!, r = a[high]!;
    const pivot = p < q ? (q < r ? q : p < r ? r : p) : (p < r ? p : q < r ? r : q);
    let i = low, j = high;
    while (i <= j) {
      while (a[i]! < pivot) i++;
      while (a[j]! > pivot) j--;
      if (i <= j) { const t = a[i]!; a[i] = a[j]!; a[j] = t; i++; j--; }
    }
    if (k <= j) high = j; else if (k >= i) low = i; else return a[k]!;
  }
  return a[k]!;
}

/** So few are sorted; of more only the ones asked for are looked for. */
const FEW = 1000;

/**
 * Quantiles of a column of a record, straight between neighbours (the definition of most tables: rank 1 + (n - 1) p).
 * @param record rows of `width` numbers
 * @param column which
 * @param shares 0..1
 * @returns one a share, NaN entries left out; NaN when nothing is left
 * @source hyndman-fan-1996 definition 7
 */
export function quantiles(record: Float64Array, width: number, column: number, shares: readonly number[]): number[] {
  const rows = width > 0 ? record.length / width : 0;
  const a = new Float64Array(rows);
  let n = 0;
  for (let r = 0; r < rows; r++) { const v = record[r * width + column]!; if (!Number.isNaN(v)) a[n++] = v; }
  const sorted = n <= FEW;
  if (sorted) a.subarray(0, n).sort();
  return shares.map((p) => {
    if (n === 0) return NaN;
    const rank = (n - 1) * p, k = Math.floor(rank);
    const low = sorted ? a[k]! : select(a, n, k);
    if (k + 1 >= n || rank === k) return low;
    if (sorted) return low + (rank - k) * (a[k + 1]! - low);
    let next = Infinity;
    for (let i = k + 1; i < n; i++) if (a[i]! < next) next = a[i]!;
    return low + (rank - k) * (next - low);
  });
}
