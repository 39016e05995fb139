import type { Bindings } from '../types.ts';
import { juiceCost, parLevel, pourCost, priceFor, usageVariance } from '../../batch/index.ts';

/** Costs and amounts: sums of the trade. */
export const batch: Bindings = {
  pour_cost: (i) => pourCost(i.number('cost'), i.number('price')),
  price_for_20_at_cost_3_10: (i) => priceFor(i.number('cost'), i.number('target'), i.maybe('tax') ?? 0),
  cost_of_lime_juice_per_30_ml: (i) => juiceCost(i.number('mL'), i.number('price_per_fruit'), i.number('mL_per_fruit'), i.maybe('waste') ?? 0),
  par: (i) => {
    const each = i.maybe('mL_per_drink');
    if (each === undefined) return parLevel(i.number('mL_per_day'), i.number('lead_days'), i.number('review_days'), i.maybe('safety') ?? 0);
    return each * ((i.maybe('rehearsal') ?? 0) + (i.maybe('hero') ?? 0) + (i.maybe('retakes') ?? 0) + (i.maybe('tasting') ?? 0));
  },
  variance: (i) => usageVariance(i.number('actual'), i.number('theoretical')),
};
