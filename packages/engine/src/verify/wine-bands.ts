import table from '../../../../data/physics/wines.json' with { type: 'json' };
import type { SpreadRow } from '../larder/types.ts';
import type { Colour, Wine } from './wines.ts';
import { wineDensity, winePH } from './wines.ts';

/** How measured wines of one colour, or of both, stand to the bands worked for each from the rest of its analysis. */
export interface WineGroup {
  readonly colour: Colour | 'both';
  readonly figure: 'density' | 'ph';
  readonly unit: string;
  readonly cases: number;
  /** wines whose measured value lies in their 95 % band, ends included */
  readonly inside: number;
  /** inside / cases; null without any */
  readonly share: number | null;
  /** worked at the medians less measured: mean, and root of the mean square; null without any */
  readonly bias: number | null;
  readonly rms: number | null;
}
export interface WineResult {
  readonly groups: readonly WineGroup[];
  readonly left_out: { readonly duplicates: number; readonly sugar: number };
}

/** What is not named in an analysis: the median and the 95 % points, for both inputs. */
interface Unnamed { readonly extract: readonly [number, number, number]; readonly cation: readonly [number, number, number] }

/** Share of the wines that a 95 % band may hold. @source none - definition */
export const WINE_SHARE: readonly [number, number] = [0.93, 0.97];

/**
 * The wines that can be judged: one of each that are the same in every column used, and none above 26 g/L of sugar, where this data contradicts itself.
 * @param wines as read
 * @returns those kept, in order, and how many were left out for each reason
 * @source uci-wine-2009 rows at 26.05, 31.6 and 65.8 g/L
 */
export function wineRowsKept(wines: readonly Wine[]): { readonly kept: readonly Wine[]; readonly left_out: WineResult['left_out'] } {
  const seen = new Set<string>();
  const kept: Wine[] = [];
  let duplicates = 0, sugar = 0;
  for (const wine of wines) {
    const key = Object.values(wine).join(' ');
    if (seen.has(key)) duplicates++;
    else if (wine.sugar > table.sugar_to_g_L.value) sugar++;
    else kept.push(wine);
    seen.add(key);
  }
  return { kept, left_out: { duplicates, sugar } };
}

/**
 * Does the 95 % band worked for each measured wine hold its density and its pH? The band comes from the wine's other columns and from two inputs of stated
 * spread: the extract that is not named, and the cations on its acids.
 * @param wines as analysed; duplicates and the sweetest are left out
 * @param spread a row of the spreads by key: `wine/red/extract`, `wine/red/net cation` and the same of white
 * @returns six groups: density (kg/m³) and pH of red, of white, of both
 * @source uci-wine-2009 wines; wines-measured spreads
 */
export function verifyWines(wines: readonly Wine[], spread: (key: string) => SpreadRow | undefined): WineResult {
  const { kept, left_out } = wineRowsKept(wines);
  const tallies = new Map<string, { colour: Colour | 'both'; figure: 'density' | 'ph'; cases: number; inside: number; sum: number; squares: number }>();
  for (const figure of ['density', 'ph'] as const) for (const colour of ['red', 'white', 'both'] as const) tallies.set(`${colour} ${figure}`, { colour, figure, cases: 0, inside: 0, sum: 0, squares: 0 });
  const unnamed = { red: unnamedOf('red', spread), white: unnamedOf('white', spread) };
  for (const wine of kept) {
    for (const figure of ['density', 'ph'] as const) {
      const { low, middle, high, measured } = bandOf(wine, figure, unnamed[wine.colour]);
      for (const colour of [wine.colour, 'both']) {
        const tally = tallies.get(`${colour} ${figure}`)!;
        tally.cases++;
        if (measured >= low && measured <= high) tally.inside++;
        tally.sum += middle - measured;
        tally.squares += (middle - measured) ** 2;
      }
    }
  }
  const groups = [...tallies.values()].map(({ colour, figure, cases, inside, sum, squares }) => ({
    colour, figure, unit: figure === 'density' ? 'kg/m3' : 'pH', cases, inside,
    share: cases > 0 ? inside / cases : null, bias: cases > 0 ? sum / cases : null, rms: cases > 0 ? Math.sqrt(squares / cases) : null,
  }));
  return { groups, left_out };
}

function unnamedOf(colour: Colour, spread: (key: string) => SpreadRow | undefined): Unnamed {
  const of = (input: string, middle: number): readonly [number, number, number] => {
    const row = spread(`wine/${colour}/${input}`);
    return row ? [row.a, middle, row.b] : [NaN, middle, NaN];
  };
  return { extract: of('extract', table[colour].extract), cation: of('net cation', table[colour].cation) };
}

function bandOf(wine: Wine, figure: 'density' | 'ph', { extract, cation }: Unnamed): { readonly low: number; readonly middle: number; readonly high: number; readonly measured: number } {
  const work = figure === 'density' ? wineDensity : winePH;
  const [low, middle, high] = (figure === 'density' ? extract : cation).map((value) => work(wine, value)) as [number, number, number];
  return { low, middle, high, measured: figure === 'density' ? wine.density : wine.ph };
}
