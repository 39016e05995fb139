/** How often something is so among makers, with its sampling error, one standard deviation. */
export interface Chance { readonly odds: number; readonly error: number }

/**
 * A share found in draws, with its sampling error.
 * @param found how many, 0 to `n`
 * @param n how many were drawn; with none of them the share is 0, its error the widest
 * @returns `odds` as counted; `error` of the share as the rule of succession has it, so that none or all found is not taken for certain
 * @source laplace-succession posterior of a share under a flat prior
 */
export function shareOf(found: number, n: number): Chance {
  const p = (found + 1) / (n + 2);
  return { odds: n > 0 ? found / n : 0, error: Math.sqrt((p * (1 - p)) / (n + 3)) };
}

/**
 * How often a margin lies beyond its limit; makers for whom it cannot be known are left out.
 * @param record rows of `width` numbers
 * @param column which
 * @source none - definition
 */
export function beyond(record: Float64Array, width: number, column: number): Chance {
  let found = 0, known = 0;
  for (let at = column; at < record.length; at += width) {
    const v = record[at]!;
    if (Number.isNaN(v)) continue;
    known++;
    if (v > 0) found++;
  }
  return shareOf(found, known);
}

/**
 * How often any of some margins lies beyond its limit; what cannot be known stops nobody.
 * @param record rows of `width` numbers, one for each of `makers`
 * @source none - definition
 */
export function anyBeyond(record: Float64Array, width: number, makers: number, columns: readonly number[]): Chance {
  let found = 0;
  for (let r = 0; r < makers; r++) for (const i of columns) if (record[r * width + i]! > 0) { found++; break; }
  return shareOf(found, makers);
}
