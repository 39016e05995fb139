import type { Answer, Binding, Bindings, Inputs } from '../types.ts';
import { convert, DROPS_PER_ML, roundTo, UNITS } from '../../units/index.ts';
import type { UnitName } from '../../units/index.ts';

/** Unit meant by the name of an input. */
const NAMES: Readonly<Record<string, UnitName>> = {
  floz: 'us_fl_oz', fl_oz: 'us_fl_oz', us_floz: 'us_fl_oz', us_fl_oz: 'us_fl_oz', oz_us: 'us_fl_oz', imperial_floz: 'imperial_fl_oz', imp_floz: 'imperial_fl_oz',
  pint: 'imperial_pint', imperial_pint: 'imperial_pint', us_pint: 'us_pint', gill: 'imperial_gill', tsp: 'us_tsp', tbsp: 'us_tbsp', cup: 'us_cup', quart: 'us_quart', gallon: 'us_gallon',
  mL: 'ml', ml: 'ml', cl: 'cl', dl: 'dl', L: 'l', g: 'g', oz: 'oz', lb: 'lb', grain: 'grain',
};
/** Unit meant by the unit of a result. */
const RESULTS: Readonly<Record<string, UnitName>> = { mL: 'ml', ml: 'ml', 'fl oz': 'us_fl_oz', 'US fl oz': 'us_fl_oz', cl: 'cl', L: 'l', g: 'g', oz: 'oz' };

/** The one given amount in the unit of the result, `step` rounding it as a card does. */
function amount(i: Inputs, unit: string, step?: number): Answer {
  const to = RESULTS[unit];
  for (const [name, from] of Object.entries(NAMES)) {
    const value = i.maybe(name);
    if (value === undefined || to === undefined || UNITS[from].of !== UNITS[to].of) continue;
    const converted = convert(value, from, to);
    return step === undefined ? converted : roundTo(converted, step);
  }
  return undefined;
}
const plain: Binding = (i, unit) => amount(i, unit);

/** Conversions by definition. */
export const measures: Bindings = {
  '2_us_fl_oz': plain,
  imperial_pint: plain,
  us_tsp: plain,
  us_cup: plain,
  '45_ml_in_us_fl_oz': (i, unit) => amount(i, unit, 0.25),
  drops_in_1_ml_water_dropper: (i) => DROPS_PER_ML * i.number('mL', 'ml'),
  lemon_juice_citric_from_g_oz: (i) => i.number('g_per_floz') / convert(1, 'us_fl_oz', 'l'),
  fat_volume_1_75_fl_oz_in_750_ml: (i) => (100 * convert(i.number('fl_oz', 'floz'), 'us_fl_oz', 'ml')) / i.number('spirit_mL', 'mL'),
};
