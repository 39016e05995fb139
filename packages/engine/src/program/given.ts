import type { Document, Given, Path } from '../document/types.ts';
import type { AssumptionRow, Tables } from '../larder/types.ts';
import { reach } from '../numeric/index.ts';
import type { Spread } from '../provenance/types.ts';
import { spreadAbout, type Input, type Role } from './inputs.ts';

/** Heat a gram of a vessel takes up, kJ/K: steel of shakers and blenders, glass of mixing glasses. @source memory 0.50 and 0.84 J/(g K) */
const PER_GRAM: Readonly<Record<string, number>> = { 'vessel/shaker heat': 0.0005, 'vessel/mixing glass heat': 0.00084 };

/** One fact for several rows: a glass weighs what it weighs, whichever it was taken for. */
const WIDE = ['glass/mass', 'siphon/gross volume'];

/** What the head gives for a row of the assumptions; undefined where it says nothing of it. */
export function givenFor(document: Pick<Document, 'given'>, key: string): Given | undefined {
  if (!document.given) return undefined;
  return document.given.find((g) => g.key === key || (WIDE.includes(g.key) && key.startsWith(`${g.key}/`)));
}

/** The number as the row counts it: kPa as hPa, per cent as a share, grams of a vessel as the heat it takes. */
export function asRow(given: Given, key: string, row: AssumptionRow): number {
  const { value } = given;
  if (row.unit === 'kJ/K') return value * (PER_GRAM[key] ?? PER_GRAM['vessel/shaker heat']!);
  if (row.unit === 'hPa') return value * 10;
  return value;
}

/** Which row of the spreads says how well such a number is known once somebody wrote it down. */
function rowOf(unit: string): string {
  if (unit === '°C') return 'given/temperature';
  if (unit === 'mL') return 'given/volume';
  if (unit === 'hPa') return 'given/air pressure';
  return unit === 'g' || unit.startsWith('g in') ? 'given/mass' : 'given/share';
}

/** A fact of the head as an input: no longer assumed, as sure as one who measured it. @source none - definition */
export function givenInput(tables: Pick<Tables, 'spread'>, inputKey: string, key: string, row: AssumptionRow, given: Given, role: Role): Input {
  const name = rowOf(row.unit), spread = tables.spread(name);
  if (!spread) throw new Error(`no spread row ${name}`);
  const value = asRow(given, key, row), at: Path = ['head', key];
  const own = spreadAbout(spread, value), half = row.low !== null && row.high !== null ? (row.high - row.low) / 4 : Infinity;
  // one who looked is at least twice as sure as one who did not
  const surer: Spread = reach(own, value).high - reach(own, value).low > 2 * half ? { kind: 'range', low: value - half, high: value + half } : own;
  return { key: inputKey, value, unit: row.unit, spread: { ...surer, min: row.unit === '°C' ? -273 : 0 }, grade: 'trade', source: 'written', role, at, row: `spreads ${name}`, from: 'written' };
}
