/** A number of a line of the bench, in °C, mL, g, mm, hPa or m; `of` null where no unit was written. `off`: it stood behind ±. */
export interface Atom { readonly value: number; readonly low: number | null; readonly high: number | null; readonly of: string | null; readonly at: number; readonly text: string; readonly off: boolean }

/** What a unit measures, its factor, and what is added before that. */
const UNITS: ReadonlyMap<string, readonly [of: string, factor: number, before: number]> = new Map(([
  ['°c', '°C', 1], ['c', '°C', 1], ['°', '°C', 1], ['°f', '°C', 5 / 9, -32], ['f', '°C', 5 / 9, -32],
  ['ml', 'mL', 1], ['cl', 'mL', 10], ['dl', 'mL', 100], ['l', 'mL', 1000], ['oz', 'mL', 29.5735295625],
  ['g', 'g', 1], ['mg', 'g', 0.001], ['kg', 'g', 1000], ['mm', 'mm', 1], ['cm', 'mm', 10],
  ['hpa', 'hPa', 1], ['mbar', 'hPa', 1], ['bar', 'hPa', 1000], ['kpa', 'hPa', 10], ['m', 'm', 1], ['ft', 'm', 0.3048],
] as [string, string, number, number?][]).map(([unit, of, factor, before = 0]) => [unit, [of, factor, before]] as const));
const ONE = /(±\s*|\+\/-\s*)?(?<![\p{L}\d.,])([-−–]?\d{1,6}(?:[.,]\d{1,4})?)\s*(°\s?[CF]?|hPa|mbar|bar|kPa|ml|cl|dl|mm|cm|mg|kg|ft|oz|[lgmcf])?(?![\p{L}\d])/giu;
/** What stands between the numbers of a list, and of a range. */
const LIST = /^\s*(?:[/,]|to|bis|\.\.|–|-)\s*$/i, RANGE = /^\s*(?:to|bis|\.\.|–)\s*$/i;

/**
 * The numbers of a line with their units, in order. A number of a list without a unit takes that of the next ("15 / 30 / 45 ml");
 * "18 to 22 °C" is one number with its ends.
 * @param text of one line
 * @returns in °C, mL, g, mm, hPa or m; behind ± a width
 * @source none - definition
 */
export function atoms(text: string): Atom[] {
  const found = [...text.matchAll(ONE)].map((match) => ({
    raw: Number((match[2] ?? '').replace(/[−–]/, '-').replace(',', '.')), unit: (match[3] ?? '').toLowerCase().replace(/\s/g, ''), off: match[1] !== undefined, at: match.index, end: match.index + match[0].trimEnd().length,
  }));
  for (let i = found.length - 2; i >= 0; i--) {
    const one = found[i]!, next = found[i + 1]!;
    if (one.unit === '' && !one.off && !next.off && LIST.test(text.slice(one.end, next.at))) one.unit = next.unit;
  }
  const out: Atom[] = [];
  for (let i = 0; i < found.length; i++) {
    const one = found[i]!, next = found[i + 1];
    const [of, factor, before] = UNITS.get(one.unit) ?? [null, 1, 0];
    const inUnit = (raw: number): number => (one.off ? raw : raw + before) * factor;
    const ranged = next !== undefined && !one.off && !next.off && next.unit === one.unit && next.raw > one.raw && RANGE.test(text.slice(one.end, next.at));
    const [low, high] = ranged ? [inUnit(one.raw), inUnit(next.raw)] : [null, null];
    out.push({ value: ranged ? (low! + high!) / 2 : inUnit(one.raw), low, high, of, at: one.at, text: text.slice(one.at, ranged ? next.end : one.end), off: one.off });
    if (ranged) i++;
  }
  return out;
}
