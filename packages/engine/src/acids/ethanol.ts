import table from '../../../../data/physics/acids.json' with { type: 'json' };
import { ACIDS, ethanolShift, STEPS } from './constants.ts';
import type { AcidConstants } from './constants.ts';

const { limit_pct, read_to_pct, share } = table.ethanol;

/** The share of the rule that holds: a model input, median and 95 % ends; the sides are even. @source prenesti-2012 table 4, the ends met by lactic and succinic acid */
export const ETHANOL_SHIFT: { readonly value: number; readonly low: number; readonly high: number } = share;
/** % vol up to which a food acid was read, and up to which the rule goes. @source prenesti-2012 12 % vol; casein-ethanol-2006 60 % vol */
export const ETHANOL_SHIFT_READ = read_to_pct, ETHANOL_SHIFT_LIMIT = limit_pct;

/**
 * Constants in a liquid with ethanol: those of `water` with every step of every acid raised by `ethanolShift`, written into `k`. pKw and the activities
 * stay those of water: what a meter set in water shows. One exponential; allocates nothing.
 * k: to be filled, from `constantsAt` or `constantsOf`; water: from the same, at the temperature meant (20 °C for a figure); pct: % vol, 0 to 60, read for
 * a food acid at 12 alone; share: of the rule, `ETHANOL_SHIFT`.
 * @source prenesti-2012 table 4 at 12 % vol; judged beyond
 */
export function constantsInto(k: AcidConstants, water: AcidConstants, pct: number, share = 1): void {
  const shift = ethanolShift(pct, share);
  k.lift = shift === 0 ? 1 : Math.exp(Math.LN10 * shift);
  const less = 1 / k.lift;
  for (let i = 0; i < ACIDS * STEPS; i++) k.K[i] = water.K[i]! * less;
}

/**
 * Most that ethanol raises a pK: that of benzoic acid, which shuns water; food acids move less. weight: % by weight, 0 to 65 (held at the ends), ± 0.013.
 * @source benzoic-ethanol table 1, a cubic fitted here
 */
export function ethanolShiftBound(weight: number): number {
  const [a, b, c] = table.benzoic.coef as [number, number, number];
  const w = Math.min(Math.max(weight, 0), table.benzoic.to_pct);
  return w * (a + w * (b + w * c));
}
