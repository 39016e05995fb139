import type { Bindings } from '../types.ts';
import { clearingDose, juiceShare, milkForPunch, wholePieces } from '../../clarity/index.ts';

/** Clearing: doses and shares. */
export const clarity: Bindings = {
  agar_for_750_g_juice: (i) => clearingDose(i.number('juice_g'), i.maybe('pct') ?? 0.2),
  gelatin_for_1_kg_juice: (i) => clearingDose(1000 * i.number('kg'), i.number('pct')),
  juice_fraction_after_spin_gel_hydration: (i) => juiceShare(i.number('juice_mL'), i.number('agar_water_mL')),
  agar_in_that_mix: (i) => (100 * i.number('agar_g')) / i.number('total_mL'),
  milk_for_2_l_punch_at_1: (i) => milkForPunch(i.number('punch_L')),
  limes_for_500_ml_juice: (i) => wholePieces(i.number('mL'), i.number('mL_per')),
};
