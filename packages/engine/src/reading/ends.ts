import { Z95 } from '../numeric/index.ts';

/** Mean of the positive half of a standard normal, over the whole. */
const HALF = 1 / Math.sqrt(2 * Math.PI);

/** Deviations below this have no fourth power in double precision: what little there is then has plain ends. */
const LEAST = 1e-70;

/** Cumulants of the sum of what each input does; squares of what lies below and above; of what both sides do alike and differently, and of the latter's squares. */
const MEAN = 0, VARIANCE = 1, THIRD = 2, FOURTH = 3, LOW2 = 4, HIGH2 = 5, BENT = 6, STRAIGHT = 7, STRAIGHT2 = 8;

/** So many numbers a figure. */
const OF_ONE = 9;

/** Sums that the ends of figures follow from, one call an input and figure; of one figure where no other number is said. */
export class EndSums {
  /** by figure the numbers named above; in an array they are added to where they stand */
  private readonly t: Float64Array;

  constructor(figures = 1) { this.t = new Float64Array(OF_ONE * figures); }

  clear(): void { this.t.fill(0); }

  /**
   * What an input does to figure `k` at its own 2.5 (`downs[at]`) and 97.5 % point (`ups[at]`), signed differences from the nominal; straight in between on either side.
   * They are left where they stand: as arguments both would be put on the heap.
   */
  addAt(downs: Float64Array, ups: Float64Array, at: number, k: number): void {
    const down = downs[at]!, up = ups[at]!, a = -down / Z95, b = up / Z95;
    const a2 = a * a, b2 = b * b;
    const m1 = (b - a) * HALF, m2 = (a2 + b2) / 2, m3 = (b2 * b - a2 * a) * 2 * HALF, m4 = 1.5 * (a2 * a2 + b2 * b2), square = m1 * m1;
    const { t } = this, o = OF_ONE * k;
    t[o + MEAN]! += m1;
    t[o + VARIANCE]! += m2 - square;
    t[o + THIRD]! += m3 - 3 * m1 * m2 + 2 * square * m1;
    t[o + FOURTH]! += m4 - 4 * m1 * m3 - 3 * m2 * m2 + 12 * square * m2 - 6 * square * square;
    const lower = down < up ? down : up, upper = down < up ? up : down;
    if (lower < 0) t[o + LOW2]! += lower * lower;
    if (upper > 0) t[o + HIGH2]! += upper * upper;
    const half = (up - down) / 2, mean = (up + down) / 2, s = half * half;
    t[o + BENT]! += mean * mean; t[o + STRAIGHT]! += s; t[o + STRAIGHT2]! += s * s;
  }

  /** `addAt` of the one figure. */
  add(down: number, up: number): void { this.addAt(Float64Array.of(down), Float64Array.of(up), 0, 0); }

  /** How bent a figure is: what both sides do alike over what they do differently; 0 for a straight one. */
  bend(k = 0): number { const { t } = this, straight = t[OF_ONE * k + STRAIGHT]!, bent = t[OF_ONE * k + BENT]!; return straight > 0 ? Math.sqrt(bent / straight) : bent > 0 ? Infinity : 0; }

  /** Distance of the ends from the nominal: below (0 or less) and above (0 or more). */
  ends(out: Float64Array, k = 0): void {
    const { t } = this, o = OF_ONE * k, mean = t[o + MEAN]!, straight = t[o + STRAIGHT]!, s = Math.sqrt(Math.max(0, t[o + VARIANCE]!));
    let low = -Math.sqrt(t[o + LOW2]!), high = Math.sqrt(t[o + HIGH2]!);
    if (s > LEAST) {
      const one = straight > 0 ? t[o + STRAIGHT2]! / (straight * straight) : 1;         // 1 where one input makes the whole
      const alone = one * one;
      const g = t[o + THIRD]! / (s * s * s), q = t[o + FOURTH]! / (s * s * s * s);
      low = alone * low + (1 - alone) * (mean + s * expanded(-Z95, g, q));
      high = alone * high + (1 - alone) * (mean + s * expanded(Z95, g, q));
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
    for (let i = 0, at = k * n; i < n; i++, at++) if (i !== left && (down[at] !== 0 || up[at] !== 0)) this.addAt(down, up, at, 0);
    this.ends(out);
  }
}

/** Deviations from the mean at a point `z` of a normal, by third and fourth cumulant over the deviation. @source cornish-fisher-1938 */
function expanded(z: number, third: number, fourth: number): number {
  return z + ((z * z - 1) * third) / 6 + ((z * z * z - 3 * z) * fourth) / 24 - ((2 * z * z * z - 5 * z) * third * third) / 36;
}
