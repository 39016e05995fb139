import type { Bindings } from '../types.ts';
import { meltForHeat, shakenDilutionByRule, stirredDilutionByRule } from '../../ice/by-rule.ts';

/** Rules of thumb and sums for ice; `note` says stirred or shaken where the inputs do not. */
export const ice: Bindings = {
  stirred_dilution: (i) => stirredDilutionByRule(i.number('abv')),
  shaken_dilution: (i) => shakenDilutionByRule(i.number('abv')),
  final_abv_shaken_25: (i) => {
    const strength = i.number('abv');
    return strength / (1 + (/stirred/.test(i.text('style') ?? i.note) ? stirredDilutionByRule : shakenDilutionByRule)(strength));
  },
  melt_to_chill_100_g_water_20_to_0_c_with_200: (i) => {
    const capacity = i.maybe('cp_w') ?? 4.186, from = i.maybe('t_water', 't_start') ?? 20;
    return meltForHeat(i.number('water_g') * capacity * from, i.number('ice_g'), i.number('t_ice'), 0, i.number('L'), i.number('cp_ice'), capacity);
  },
  melt_to_chill_90_g_of_20_wt_spirit_cp_4_2_fr: (i) =>
    meltForHeat(i.number('g') * i.number('cp') * i.number('dT'), 0, 0, i.number('Tf'), i.number('L'), 0, i.number('cp_w')),
};
