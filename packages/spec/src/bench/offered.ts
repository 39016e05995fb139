import { fold } from '../names/fold.ts';
import { parseBench } from './bench.ts';
import { BENCH_ROWS, type BenchRow } from './draft.ts';
import { partOf } from './parts.ts';

/** A line that a bench may have, as an example, and the rows of the tables that it goes before, named as an input names its own (`units bar spoon`). */
export interface BenchLine { readonly text: string; readonly rows: readonly string[] }

/**
 * Which lines may a bench have that it has not yet?
 * @param text the bench as it stands
 * @param language of the examples; English where there is no other
 * @returns an example of each, in the order of `data/bench.json`
 * @source none - definition
 */
export function benchLines(text: string, language: 'en' | 'de'): BenchLine[] {
  const said = new Set(text.split('\n').map((line) => fold(line.slice(0, Math.max(0, line.indexOf(':'))).trim()))), answered = new Set(rowsOf(text));
  // height and air pressure answer the same
  return BENCH_ROWS.filter((row) => !row.words.some((word) => said.has(fold(word)))).map((row) => lineOf(row, language)).filter(({ rows }) => !rows.every((row) => answered.has(row)));
}

const known = { en: new Map<BenchRow, BenchLine>(), de: new Map<BenchRow, BenchLine>() };
/** The example of a row in a language; read once. */
function lineOf(row: BenchRow, language: 'en' | 'de'): BenchLine {
  let line = known[language].get(row);
  if (line === undefined) {
    const text = language === 'de' ? row.beispiel ?? row.example : row.example;
    line = { text, rows: [...rowsOf(text), ...(row.judges ?? []).map((key) => `spreads ${key}`)] };
    known[language].set(row, line);
  }
  return line;
}

/** The rows that a bench goes before. */
function rowsOf(text: string): string[] {
  const { values, spreads, units } = parseBench(text).bench;
  return [...[...values.keys()].map((key) => `assumptions ${key}`), ...[...spreads.keys()].map((key) => `spreads ${key}`), ...[...units.keys()].map((key) => `units ${key}`)];
}

/**
 * A bench with a line more, where tools and places stand: above the shelf, if that is what it ends with.
 * @returns the whole text, and where in it the first number of the line stands, to be typed over
 * @source none - definition
 */
export function withBenchLine(text: string, line: string): { readonly text: string; readonly from: number; readonly to: number } {
  const lines = text.trimEnd().split('\n'), parts = lines.map((one) => { const bare = one.trim(); return bare.endsWith(':') ? partOf(bare.slice(0, -1)) : null; });
  const last = parts.findLastIndex((part) => part !== null), above = parts[last] === 'shelf' ? last : lines.length;
  const before = lines.slice(0, above), rest = lines.slice(above);
  while (before.length > 0 && before.at(-1)!.trim() === '') before.pop();
  const head = before.length === 0 ? '' : `${before.join('\n')}\n`, number = /[-−]?\d+(?:[.,]\d+)?/.exec(line), at = head.length + (number?.index ?? line.length);
  return { text: `${head}${line}\n${rest.length > 0 ? `\n${rest.join('\n')}\n` : ''}`, from: at, to: at + (number?.[0].length ?? 0) };
}
