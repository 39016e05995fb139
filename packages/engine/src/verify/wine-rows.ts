import type { Colour, Wine } from './wines.ts';

/** Columns of a file of wines, the name they have where the data was published, and the least and most that can be meant. */
const COLUMNS = {
  fixed: ['fixed_acidity_g_l', 'fixed acidity', 0, 30], volatile: ['volatile_acidity_g_l', 'volatile acidity', 0, 10], citric: ['citric_g_l', 'citric acid', 0, 30],
  sugar: ['residual_sugar_g_l', 'residual sugar', 0, 400], chlorides: ['chlorides_g_l', 'chlorides', 0, 10], sulphates: ['sulphates_g_l', 'sulphates', 0, 10],
  density: ['density_g_ml', 'density', 0.9, 1.2], ph: ['ph', 'pH', 1, 7], strength: ['alcohol_pct_vol', 'alcohol', 0, 25],
} as const;
type Name = keyof typeof COLUMNS;

/** What is wrong with a file of wines, and where. */
export type WineProblem =
  | { readonly code: 'wine-column'; readonly column: string }
  | { readonly code: 'wine-value'; readonly column: string; readonly line: number; readonly value: string }
  | { readonly code: 'wine-none' };

/** A line of a table as its cells, quotes taken off. */
function cellsOf(line: string, separator: string): string[] {
  return line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
}

/**
 * Measured wines out of a table with commas or semicolons: a head with the names of the columns in any order, then a wine a line. Further columns are passed over.
 * @param text of the file
 * @param colour of all its wines where no column says it
 * @returns the wines, or the first thing that is wrong: a column that is missing, a value that is no number or cannot be meant, no wine at all
 * @source uci-wine-2009 columns
 */
export function winesOf(text: string, colour?: Colour): readonly Wine[] | WineProblem {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const separator = (lines[0] ?? '').includes(';') ? ';' : ',';
  const head = cellsOf(lines[0] ?? '', separator);
  const placeOf = (...names: readonly string[]): number => head.findIndex((cell) => names.includes(cell));
  const places = Object.entries(COLUMNS).map(([name, [ours, published, least, most]]) => ({ name: name as Name, column: ours, place: placeOf(ours, published), least, most }));
  const coloured = placeOf('colour', 'color');
  if (coloured < 0 && colour === undefined) return { code: 'wine-column', column: 'colour' };
  for (const { column, place } of places) if (place < 0) return { code: 'wine-column', column };
  const wines: Wine[] = [];
  for (const [i, line] of lines.entries()) {
    if (i === 0 || line.trim() === '') continue;
    const cells = cellsOf(line, separator);
    const own = coloured < 0 ? colour : cells[coloured];
    if (own !== 'red' && own !== 'white') return { code: 'wine-value', column: 'colour', line: i + 1, value: own ?? '' };
    const values: Partial<Record<Name, number>> = {};
    for (const { name, column, place, least, most } of places) {
      const written = cells[place] ?? '';
      const value = written === '' ? NaN : Number(written);
      if (!(value >= least && value <= most)) return { code: 'wine-value', column, line: i + 1, value: written };
      values[name] = name === 'density' ? 1000 * value : value;
    }
    wines.push({ colour: own, ...(values as Record<Name, number>) });
  }
  return wines.length > 0 ? wines : { code: 'wine-none' };
}
