// How far a number is shifted: three of its residuals, by the first rule of residuals.json that fits its file and place.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { rowsOf } from './numbers.mjs';

const { rules } = JSON.parse(readFileSync(join(root, 'tools/sabotage/residuals.json'), 'utf8'));
const escape = (text) => text.replace(/[.+^${}()|[\]\\]/g, '\\$&');
/** `*` is any run of characters, `a|b` either. */
export const pattern = (glob) => new RegExp(`^(?:${escape(glob).replaceAll('\\|', '|').replaceAll('*', '.*')})$`);
for (const rule of rules) { rule.files = pattern(rule.file); rule.places = pattern(rule.place ?? '*'); }

/** What one unit of the last printed digit is worth. */
function lastDigit(written) {
  const [, digits = '', power = '0'] = /\.?(\d*)(?:e([+-]?\d+))?$/.exec(written.includes('.') ? written.slice(written.indexOf('.')) : `.${written.replace(/^-?\d+/, '')}`) ?? [];
  return 10 ** (Number(power) - digits.length);
}

/** A value of the nearest object above the number that has one under a key that begins so. */
function beside(number, start) {
  for (const node of [...(number.above ?? [])].reverse()) for (const [key, value] of Object.entries(node)) if (key.startsWith(start) && typeof value === 'number') return value;
  return NaN;
}

let spreads;
/** The spread the larder's own table gives a column of a class, as a share or in the unit of the column. */
function larderSpread(number) {
  spreads ??= new Map(rowsOf('data/spreads.tsv').map((row) => [row.key, row]));
  const category = number.row.category ?? rowsOf('data/larder/ingredients.tsv').find((row) => row.id === number.row.id)?.category;
  const row = spreads.get(`larder/${number.row.id}/${number.column}`) ?? spreads.get(`larder/${category}/${number.column}`);
  if (!row) return NaN;
  if (row.kind === 'lognormal cv') return Number(row.a) * Math.abs(number.value);
  return row.kind === 'normal sd' ? Number(row.a) : NaN;
}

const last = (number) => Number(number.path?.at(-1));
const KINDS = {
  absolute: (rule) => rule.absolute,
  relative: (rule, number) => rule.relative * Math.abs(number.value),
  /** a term of a power series: what it must do to the figure, over the reach of its power */
  series: ({ series: { moves, base, plus = 0 } }, number) => moves / base ** (last(number) + plus),
  /** a term of a fit whose largest error and end are stated beside it; where no end is, the spread is 95 % of the term itself */
  fitted: ({ fitted: { per, plus } }, number) => {
    const [spread, to] = [beside(number, 'spread'), beside(number, 'to')];
    return to < 1 ? (spread * per) / to ** (last(number) + plus) : spread / 1.96;
  },
  beside: (rule, number) => beside(number, rule.beside) * (rule.of === 'share' ? Math.abs(number.value) : 1) / (rule.over ?? 1),
  /** the row's own ends are 95 % points */
  ends: (rule, number) => {
    const [low, high] = number.path ? [beside(number, 'low'), beside(number, 'high')] : [Number(number.row.low || NaN), Number(number.row.high || NaN)];
    return (high - low) / 3.92;
  },
  spread: (rule, number) => {
    const { kind, a, b } = number.row;
    return kind === 'normal sd' || kind === 'lognormal cv' ? 0.2 * Number(a) : (Number(b) - Number(a)) / 3.92;
  },
  larder: (rule, number) => larderSpread(number),
  exact: (rule, number) => Math.max(1e-6 * Math.abs(number.value), Math.min(lastDigit(number.written), Math.abs(number.value) || 1)) / 3,
};

/** By how much the number is shifted, and why so much. */
export function shiftOf(number) {
  for (const rule of rules) {
    if (!rule.files.test(number.file) || !rule.places.test(number.place)) continue;
    const kind = Object.keys(KINDS).find((key) => key in rule);
    const residual = KINDS[kind](rule, number);
    if (residual > 0) return { by: 3 * residual, rule };
  }
  throw new Error(`no rule gives a residual for ${number.file} ${number.place}`);
}
KINDS.digit = (rule, number) => lastDigit(number.written) / 2;
