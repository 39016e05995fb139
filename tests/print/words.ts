import { nameOf, sheet } from './cells.ts';
import type { Row } from './cells.ts';

const number = (row: Row, column: string): number => (row[column] ? Number(row[column]) : NaN);

/** What cannot be in a row that has a value and its ends. */
export function outOfOrder(row: Row): string[] {
  const [value, low, high] = [number(row, 'value'), number(row, 'low'), number(row, 'high')];
  const name = row['written'] ?? nameOf(row);
  if (low > high) return [`${name}: from ${low} to ${high}`];
  return value < low - 1e-9 || value > high + 1e-9 ? [`${name}: ${value} is not from ${low} to ${high}`] : [];
}

const NUMERALS: Readonly<Record<string, number>> = { dozen: 12, 'half-dozen': 6, once: 1, twice: 2, thrice: 3, couple: 2 };
/** The number a key says: `7`, `3/4`, `dozen`; NaN for a vague one. */
function said(key: string): number {
  const [over = '', under = ''] = key.split('/');
  if (/^[\d.]+$/.test(over)) return under === '' ? Number(over) : /^\d+$/.test(under) ? Number(over) / Number(under) : NaN;
  return NUMERALS[key] ?? NaN;
}

/** What cannot be in a row of the vocabulary's words: ends out of order, a numeral that is not the number its key says. */
export function impossibleWord(row: Row): string[] {
  // a word for how much is meant ("scant", "generous") has ends beside 1, not around it
  const wrong = row['group'] === 'approx' ? [] : outOfOrder(row);
  if (number(row, 'low') > number(row, 'high')) wrong.push(`${row['written']}: from ${row['low']} to ${row['high']}`);
  if ((row['group'] === 'numeral' || row['group'] === 'fraction') && Math.abs(said(row['key'] ?? '') - number(row, 'value')) > 0.00006) wrong.push(`${row['written']}: ${row['value']} is not ${row['key']}`);
  return wrong;
}

/** The factor of a unit written as a product of numbers: `231*16.387064/128`. */
function factor(text: string): number {
  const [first = '', ...rest] = text.split(/(?=[*/])/);
  return rest.reduce((value, part) => (part[0] === '*' ? value * Number(part.slice(1)) : value / Number(part.slice(1))), Number(first));
}
const units = new Map(sheet('units.tsv').map((row) => [`${row['unit']} ${row['system']}`, row]));

/** Two customs stand under one word, as the definitions beside them say: a cup of 250 or half an imperial pint, a measure of 25 or 35 mL by law. */
const TWO_CUSTOMS = new Set(['cup uk', 'measure uk', 'double uk']);

/** How a row of the vocabulary's units differs from the sheet of units: what a word measures is said in both, by one definition or one custom. */
export function differsFromUnits(row: Row): string[] {
  const held = units.get(`${row['unit']} ${row['system']}`);
  const wrong: string[] = [];
  const [low, high] = [number(row, 'low'), number(row, 'high')];
  if (low > high) wrong.push(`${row['written']}: from ${low} to ${high}`);
  if (!held || (row['factor'] ?? '') === '' || held['of'] !== row['of'] || row['of'] === 'count' || TWO_CUSTOMS.has(`${row['unit']} ${row['system']}`)) return wrong;
  const between = Number(row['factor']) >= number(held, 'low') && Number(row['factor']) <= number(held, 'high');
  if (!between && Math.abs(Number(row['factor']) / factor(held['factor'] ?? '') - 1) > 3e-7) wrong.push(`${row['written']}: ${row['factor']} is not ${held['factor']} ${held['definition']}`);
  if (row['factor'] && (number(row, 'factor') < low || number(row, 'factor') > high)) wrong.push(`${row['written']}: ${row['factor']} is not from ${low} to ${high}`);
  for (const end of ['low', 'high']) if (row[end] && held[end] && row[end] !== held[end]) wrong.push(`${row['written']}: ${end} ${row[end]} is not ${held[end]}`);
  return wrong;
}
