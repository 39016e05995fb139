import type { Binding, Bindings, Inputs } from '../types.ts';
import { friedman, friedmanCritical, leastRight, pageCritical, rankSumDifference, tellingShare } from '../../tasting/index.ts';

function chance(i: Inputs, otherwise: number): number {
  const text = i.text('p');
  const fraction = /^(\d+)\/(\d+)$/.exec(text ?? '');
  return fraction ? Number(fraction[1]) / Number(fraction[2]) : i.maybe('p') ?? otherwise;
}
const critical = (alpha: number): Binding => (i) => friedmanCritical(i.number('k'), i.number('n'), i.maybe('alpha') ?? alpha);

/** Panels: how many right answers, how large a difference of ranks. */
export const tasting: Bindings = {
  triangle: (i) => leastRight(i.number('n'), i.number('alpha'), chance(i, 1 / 3)),
  paired_duo_trio_one_sided: (i) => leastRight(i.number('n'), i.number('alpha'), chance(i, 1 / 2)),
  paired_two_sided_minimum_agreeing: (i) => leastRight(i.number('n'), i.number('alpha'), chance(i, 1 / 2), 2),
  pd_lower_limit: (i) => {
    const share = tellingShare(i.number('n'), i.number('x'), chance(i, /triangle/.test(i.note) ? 1 / 3 : 1 / 2), i.number('z'));
    // one-sided deviates ask for the lower limit, two-sided ones for both
    return i.number('z') < 1.8 ? share.low : [share.low, share.high];
  },
  friedman_5_critical_value_exact: critical(0.05),
  friedman_1_critical_value_exact: critical(0.01),
  friedman: (i) => {
    const sums = i.raw('rank_sums');
    return Array.isArray(sums) && sums.every((s) => typeof s === 'number') ? friedman(sums, i.number('n')) : undefined;
  },
  rank_sum_lsd: (i) => rankSumDifference(i.number('n'), i.number('k'), i.number('z')),
  page_5_critical_l: (i) => pageCritical(i.number('k'), i.number('n'), i.number('z')),
};
