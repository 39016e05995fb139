import table from '../../../../data/physics/proteases.json' with { type: 'json' };

type Row =
  | { readonly form: 'arrhenius'; readonly A_per_min: number; readonly Ea_J_mol: number }
  | { readonly form: 'eyring'; readonly dH: number; readonly dS: number }
  | { readonly form: 'dz'; readonly at_C: number; readonly D_min: number; readonly z_K: number }
  | { readonly form: 'halves'; readonly at_C: readonly number[]; readonly half_min: readonly number[] }
  | { readonly form: 'unknown' };
type Enzyme = Row & { readonly from_C?: number; readonly to_C?: number; readonly source: string; readonly fruit: readonly string[] };

const ENZYMES = table.enzymes as unknown as Readonly<Record<string, Enzyme>>;
const R = 8.314462618;
const BOLTZMANN_PER_PLANCK = 2.0836619e10; // 1/(K s), exact constants
const KELVIN = 273.15;

/** Decades of activity to lose before gelatin is safe from an enzyme: one hundredth left. @source common-practice judged */
export const NEEDED_DECADES = table.needed_decades.value;

/** First-order rate in 1/min at a temperature; NaN where nothing is known. */
function rate(row: Enzyme, celsius: number): number {
  const T = celsius + KELVIN;
  switch (row.form) {
    case 'arrhenius': return row.A_per_min * Math.exp(-row.Ea_J_mol / (R * T));
    case 'eyring': return 60 * BOLTZMANN_PER_PLANCK * T * Math.exp(row.dS / R - (1000 * row.dH) / (R * T));
    case 'dz': return (Math.LN10 / row.D_min) * 10 ** ((celsius - row.at_C) / row.z_K);
    case 'halves': {
      const [a, b] = row.at_C as [number, number], [ka, kb] = row.half_min.map((min) => Math.LN2 / min) as [number, number];
      return ka * Math.exp((Math.log(kb / ka) * (1 / (a + KELVIN) - 1 / T)) / (1 / (a + KELVIN) - 1 / (b + KELVIN)));
    }
    case 'unknown': return NaN;
  }
}

/**
 * Decimal reduction time of an enzyme in min: how long a temperature takes to leave a tenth. NaN where nothing is known (ficin, opuntin, the weak ones).
 * enzyme: `bromelain`, `papain`, `actinidin`, `zingibain`; celsius: measured at 50-67 bromelain, 60-90 papain, 50-70 actinidin, 5-30 zingibain, else extrapolated.
 * @source bromelain-juice-2000, papain-1979, actinidin-2018, ginger-2005
 */
export function reductionTime(enzyme: string, celsius: number): number {
  const row = ENZYMES[enzyme];
  return row ? Math.LN10 / rate(row, celsius) : NaN;
}

/** Decades of activity lost in a hold. seconds: 0 and up. NaN where nothing is known. @source bromelain-juice-2000, papain-1979, actinidin-2018, ginger-2005 */
export function decadesLost(enzyme: string, celsius: number, seconds: number): number {
  return seconds / 60 / reductionTime(enzyme, celsius);
}

/**
 * Share of an enzyme's activity left after a hold, 1 to 0. In water extracts it is hardier than in juice (87 % after 30 min at 60 °C was printed), so 0 is no promise.
 * @source bromelain-juice-2000, papain-1979, actinidin-2018, ginger-2005
 */
export function proteaseLeft(enzyme: string, celsius: number, seconds: number): number {
  return 10 ** -decadesLost(enzyme, celsius, seconds);
}

/** Decades still missing until gelatin is safe: positive is digested. NaN where nothing is known. @source common-practice two decades needed */
export function inactivationMargin(enzyme: string, celsius: number, seconds: number): number {
  return NEEDED_DECADES - decadesLost(enzyme, celsius, seconds);
}

/**
 * Share left after a treatment that is only named: canned none, pasteurised at most 17 %, boiled as a minute at 100 °C; 1 for `fresh` and words unknown here.
 * @source bromelain-2020 pilot line, 83 % lost at 90 °C; common-practice canned
 */
export function treatedLeft(enzyme: string, treatment: string): number {
  if (treatment === 'canned') return table.treatments.canned.left;
  if (treatment === 'pasteurised') return table.treatments.pasteurised.left;
  if (treatment === 'boiled') return proteaseLeft(enzyme, table.treatments.boiled.celsius, table.treatments.boiled.seconds);
  return 1;
}

/** The enzyme of a fruit by its plain name (`pineapple`, `kiwi`, `ginger`); undefined for a fruit without. @source proteases-overview */
export function enzymeOf(fruit: string): string | undefined {
  return Object.keys(ENZYMES).find((key) => ENZYMES[key]!.fruit.includes(fruit));
}
