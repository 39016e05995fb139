import { Z95 } from '../numeric/index.ts';

/** Mean of the positive half of a standard normal, over the whole. */
const HALF = 1 / Math.sqrt(2 * Math.PI);

/** Deviations below this have no fourth power in double precision: what little there is then has plain ends. */
const LEAST = 1e-70;

/** Cumulants of the sum of what each input does; squares of what lies below and above; of what both sides do alike and differently, and of the latter's squares. */
const MEAN = 0, VARIANCE = 1, THIRD = 2, FOURTH = 3, LOW2 = 4, HIGH2 = 5, BENT = 6, STRAIGHT = 7, STRAIGHT2 = 8;

/** Sums that a figure's ends follow from, one call an input. */
export class EndSums {
  /** numbers by their names above; in an array they are added to where they stand */
  private readonly t = new Float64Array(9);

  clear(): void { this.t.fill(0); }

  /** What an input does at its own 2.5 (`down`) and 97.5 % point (`up`), signed differences from the nominal; straight in between on either side. */
  add(down: number, up: number): void {
    const a = -down / Z95, b = up / Z95;
    const a2 = a * a, b2 = b * b;
    const m1 = (b - a) * HALF, m2 = (a2 + b2) / 2, m3 = (b2 * b - a2 * a) * 2 * HALF, m4 = 1.5 * (a2 * a2 + b2 * b2), square = m1 * m1;
    const { t } = this;
    t[MEAN]! += m1;
    t[VARIANCE]! += m2 - square;
    t[THIRD]! += m3 - 3 * m1 * m2 + 2 * square * m1;
    t[FOURTH]! += m4 - 4 * m1 * m3 - 3 * m2 * m2 + 12 * square * m2 - 6 * square * square;
    const lower = down < up ? down : up, upper = down < up ? up : down;
    if (lower < 0) t[LOW2]! += lower * lower;
    if (upper > 0) t[HIGH2]! += upper * upper;
    const half = (up - down) / 2, mean = (up + down) / 2, s = half * half;
    t[BENT]! += mean * mean; t[STRAIGHT]! += s; t[STRAIGHT2]! += s * s;
  }

  /** How bent the figure is: what both sides do alike over what they do differently; 0 for a straight one. */
  get bend(): number { const { t } = this; return t[STRAIGHT]! > 0 ? Math.sqrt(t[BENT]! / t[STRAIGHT]!) : t[BENT]! > 0 ? Infinity : 0; }

  /** Distance of the ends from the nominal: below (0 or less) and above (0 or more). */
  ends(out: Float64Array): void {
    const { t } = this, s = Math.sqrt(Math.max(0, t[VARIANCE]!));
    let low = -Math.sqrt(t[LOW2]!), high = Math.sqrt(t[HIGH2]!);
    if (s > LEAST) {
      const one = t[STRAIGHT]! > 0 ? t[STRAIGHT2]! / (t[STRAIGHT]! * t[STRAIGHT]!) : 1;  // 1 where one input makes the whole
      const alone = one * one;
      const g = t[THIRD]! / (s * s * s), k = t[FOURTH]! / (s * s * s * s);
      const side = (z: number) => t[MEAN]! + s * (z + ((z * z - 1) * g) / 6 + ((z * z * z - 3 * z) * k) / 24 - ((2 * z * z * z - 5 * z) * g * g) / 36);
      low = alone * low + (1 - alone) * side(-Z95);
      high = alone * high + (1 - alone) * side(Z95);
    }
    out[0] = Math.min(0, low);
    out[1] = Math.max(0, high);
  }

  /**
   * The ends that figure `k` has with every of `n` inputs but one, -1 for none left out; the sums are of those parts.
   * `down` and `up`: what each input does to each figure, a row of inputs a figure.
   */
  without(left: number, { down, up }: { readonly down: Float64Array; readonly up: Float64Array }, n: number, k: number, out: Float64Array): void {
    this.clear();
    for (let i = 0, at = k * n; i < n; i++, at++) if (i !== left && (down[at] !== 0 || up[at] !== 0)) this.add(down[at]!, up[at]!);
    this.ends(out);
  }
}
