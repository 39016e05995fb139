import type { Bindings, Inputs } from '../types.ts';
import { canGrow, coolingFails, eggMinutesMissing, lastDay, needsAssessment } from '../../keeping/index.ts';

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** Day of the week by its name or its first letters. */
function dayOf(i: Inputs): string | undefined {
  const word = (i.text('day1', 'made') ?? '').toLowerCase();
  const made = word.length < 2 ? -1 : DAYS.findIndex((day) => day.toLowerCase().startsWith(word.slice(0, 3)));
  return made < 0 ? undefined : DAYS[lastDay(made)];
}

const grows = (organism: string) => (i: Inputs) => canGrow(organism, i.maybe('t_C', 'C'), i.maybe('pH'), i.maybe('aw'));

/** Food code, eggs, growth. */
export const keeping: Bindings = {
  fda_food_code_table: (i) => {
    const which = i.text('table');
    return which === 'A' || which === 'B' ? (needsAssessment(which, i.number('aw'), i.number('pH')) ? 'PA' : 'non-TCS') : undefined;
  },
  cooling_stage_check: (i) => {
    const stage = coolingFails(i.number('start_C'), i.number('t_2h_C'), i.number('t_6h_C'));
    return stage === 0 ? 'pass' : `fail (stage ${stage})`;
  },
  date_mark: dayOf,
  egg_white_pasteurisation_57_c_3_5_min: (i) => (eggMinutesMissing('white', i.number('C', 't_C'), i.number('min')) <= 0 ? 'pass' : 'fail'),
  c_botulinum_a_b_can_grow_at_ph_4_5: grows('C. botulinum A and B'),
  l_monocytogenes_can_grow_at_4_c: grows('L. monocytogenes'),
};
