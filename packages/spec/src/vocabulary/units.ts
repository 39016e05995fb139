import type { UnitRow } from '@washline/engine';
import { compact } from './vocabulary.ts';

export interface UnitForm { readonly unit: string; readonly of: string; readonly language: string; readonly system: string; readonly mark: '' | 'a' | 'o'; readonly written: string }

const forms = new Map<string, UnitForm[]>();

/** Unit words as compared: lower case but for T, accents, points, blanks and hyphens out. */
export function foldUnit(text: string): string {
  if (text === 'T') return 'T';
  if (/^[\x20-\x7e]*$/.test(text)) return text.toLowerCase().replace(/[\s.\-']/g, '');
  return text.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '').replace(/[\s.\-‐’']/g, '').replace(/ß/g, 'ss').replace(/º/g, '°');
}

for (const [unit, of, , , , system, , mark, languages] of compact.units) {
  for (const [language, list] of Object.entries(languages)) {
    for (const written of list) {
      const key = written === "'" ? "'" : foldUnit(written);
      if (key === '') continue;
      const form: UnitForm = { unit, of, language, system, mark: mark as UnitForm['mark'], written };
      const known = forms.get(key);
      if (known === undefined) forms.set(key, [form]);
      else known.push(form);
    }
  }
}

const starts = new Set<string>();
for (const key of forms.keys()) starts.add(key.slice(0, 2));
/** False where no unit begins with a word's first two letters. */
export const mayBeUnit = (folded: string): boolean => folded.length < 2 || starts.has(folded.slice(0, 2));

/** Every unit a written form may mean, by its compared form. */
export const unitForms = (key: string): readonly UnitForm[] | undefined => forms.get(key);

/**
 * One unit's factor to ml, g, pieces … in one system of measures, with its range.
 *
 * @param unit a key of `data/vocabulary/units.tsv`
 * @param system `us`, `uk`, `au`, `metric`, `us-1910`, or null for the assumed one
 * @returns the row, its factor the middle of the range where the table gives only a range; undefined for an unknown unit or one without a factor
 * @source none - definition
 */
export function unitRow(unit: string, system: string | null): UnitRow | undefined {
  const key = `${unit}|${system ?? ''}`;
  const known = factors.get(key);
  if (known !== undefined) return known === null ? undefined : known;
  const made = makeRow(unit, system);
  if (factors.size < 2000) factors.set(key, made ?? null);
  return made;
}
const factors = new Map<string, UnitRow | null>();
function makeRow(unit: string, system: string | null): UnitRow | undefined {
  const rows = compact.units.filter((row) => row[0] === unit);
  if (unit === 'celsius' || unit === 'fahrenheit') return undefined;
  const row = (system === null ? undefined : rows.find((other) => other[5] === system)) ?? rows.find((other) => other[7] === 'a') ?? rows.find((other) => other[7] === '') ?? rows[0];
  if (row === undefined) return undefined;
  const [, of, factor, low, high, , status] = row;
  const middle = typeof factor === 'number' ? factor : low !== null && high !== null ? (low + high) / 2 : null;
  if (middle === null || !UNIT_OF.has(of)) return undefined;
  return { unit, of: of as UnitRow['of'], factor: middle, low: low ?? middle, high: high ?? middle, defined: status === 'defined', source: status === 'defined' ? 'hb44' : 'common-practice' };
}
const UNIT_OF = new Set(['ml', 'g', 'piece', 'mm', 's', '%', 'kPa', 'share']);

/** Units that a line of `measures:` or an unnamed kitchen may read in several ways. */
export function systemsOf(unit: string): readonly string[] {
  return [...new Set(compact.units.filter((row) => row[0] === unit && row[7] !== '').map((row) => row[5]))];
}
