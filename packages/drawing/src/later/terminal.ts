import type { Reading } from '../reading.ts';
import { decimalsFor, leastDecimals, shown, unitShown } from '../pen/numbers.ts';
import { words } from '../words.ts';
import { between, coursesOf, reachOf, type Course } from './course.ts';

/** Rows of a curve, and columns for the numbers at its left. */
const ROWS = 6, NUMBERS = 7;
/** What is drawn: how it warms and how it waters. */
const DRAWN: readonly Course['name'][] = ['temperature', 'strength'];

/**
 * Half an hour in the glass in characters: temperature and strength side by side, the median in the band of its ranges, time to the right.
 * `width` in characters, at least 60; `ascii` keeps to ASCII but for words and units. Empty where nothing is told.
 */
export function terminalLater(reading: Reading, size: { readonly width: number; readonly ascii?: boolean }): string[] {
  const list = coursesOf(reading).filter((course) => DRAWN.includes(course.name));
  const across = Math.floor((size.width - 2 * (list.length - 1)) / Math.max(1, list.length)) - NUMBERS - 4;
  const drawn = list.map((course) => one(course, Math.min(26, across), size.ascii === true));
  return (drawn[0] ?? []).map((_, row) => drawn.map((lines) => lines[row] ?? '').map((line, i) => (i < drawn.length - 1 ? line.padEnd(Math.max(...drawn[i]!.map((l) => l.length)) + 2) : line)).join('').trimEnd());
}

function one(course: Course, columns: number, ascii: boolean): string[] {
  const [low, high] = reachOf(course), { points } = course, last = points.at(-1)!.minutes, unit = points[0]!.figure.unit;
  const digits = Math.max(...points.map(({ figure: f }) => decimalsFor(f.low, f.high, leastDecimals(f.unit))));
  const [median, band, axis, corner, floor] = ascii ? ['*', ':', '|', '+', '-'] : ['●', '░', '┤', '└', '─'];
  const rowOf = (value: number): number => Math.min(ROWS - 1, Math.max(0, Math.floor(((high - value) / Math.max(high - low, 1e-9)) * ROWS)));
  const cells = Array.from({ length: ROWS }, () => new Array<string>(columns).fill(' '));
  for (let k = 0; k < columns; k += 1) {
    const minutes = (k / (columns - 1)) * last, a = between(course, minutes, 'high'), m = between(course, minutes, 'value'), b = between(course, minutes, 'low');
    if (a === null || m === null || b === null) continue;
    for (let row = rowOf(a); row <= rowOf(b); row += 1) cells[row]![k] = band;
    cells[rowOf(m)]![k] = median;
  }
  const label = (row: number): string => (row === 0 ? shown(high, digits) : row === ROWS - 1 ? shown(low, digits) : '').replace('−', ascii ? '-' : '−').padStart(NUMBERS);
  const end = words('minutes', { minutes: last }), start = words('poured', {});
  return [
    `${' '.repeat(NUMBERS + 1)}${words(`course.${course.name}`, {})}, ${unitShown(unit)}`,
    ...cells.map((line, row) => `${label(row)} ${axis}${line.join('')}`),
    `${' '.repeat(NUMBERS + 1)}${corner}${floor.repeat(columns)}`,
    `${' '.repeat(NUMBERS + 2)}${start}${' '.repeat(Math.max(1, columns - start.length - end.length))}${end}`,
  ];
}
