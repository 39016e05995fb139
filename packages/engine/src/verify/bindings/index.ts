import type { Bindings } from '../types.ts';
import { density } from './density.ts';
import { gauging } from './gauging.ts';
import { sugar } from './sugar.ts';
import { solutes } from './solutes.ts';
import { freezing } from './freezing.ts';
import { thermal } from './thermal.ts';
import { viscosity } from './viscosity.ts';
import { measures } from './measures.ts';
import { acids } from './acids.ts';
import { gas } from './gas.ts';
import { texture } from './texture.ts';
import { clarity } from './clarity.ts';
import { glass } from './glass.ts';
import { keeping } from './keeping.ts';
import { ice } from './ice.ts';
import { tasting } from './tasting.ts';
import { label } from './label.ts';
import { batch } from './batch.ts';

/** Group of published cases to the engine function that answers it: one table, put together from the domains. */
export const BINDINGS: Bindings = {
  ...density, ...gauging, ...sugar, ...solutes, ...freezing, ...thermal, ...viscosity, ...measures,
  ...acids, ...gas, ...texture, ...clarity, ...glass, ...keeping,
  ...ice, ...tasting, ...label, ...batch,
};

/** Domain of a group that is not bound, to say where it will be; first match counts. */
export const DOMAINS: readonly (readonly [string, RegExp])[] = [
  ['acids', /(^|_)(ph|pk|pk\d|ta|buffer|acid|acids|citric|protons|orange|grapefruit|lemon|lime)(_|$)|standard_buffer|neutral_phosphate/],
  ['gas', /co2|n2o|n2_|bunsen|beer_|henry|gas_volume|overrun/],
  ['texture', /gelatin|agar|silver|gold|platinum|dried_white|bloom|water_for_90/],
  ['clarity', /juice_fraction|fat_volume|milk_|limes_for/],
  ['ice', /^ice_|dilution|shaken|stirred|melt_to_chill/],
  ['glass', /brimful|height_for|iso_tasting|capacity/],
  ['keeping', /food_code|water_activity|supersaturated|saturation|cooling|date_mark|egg|botulinum|monocytogenes/],
  ['labelling', /standard_drink|units_in|drinks_in|energy|tolerance|labelled|must_a/],
  ['sensory', /triangle|paired|pd_|friedman|rank_sum|page_/],
  ['costing', /cost|price|^par$|variance/],
];
