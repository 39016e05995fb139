import { fold, foldTyped } from '../names/fold.ts';
import { unitForms, foldUnit, unitRow } from '../vocabulary/units.ts';
import { compact } from '../vocabulary/vocabulary.ts';

let known: ReadonlyMap<string, { readonly key: string; readonly of: string }> | undefined;
function table(): ReadonlyMap<string, { readonly key: string; readonly of: string }> {
  if (known !== undefined) return known;
  const made = new Map<string, { key: string; of: string }>();
  for (const [key, of, languages] of compact.given) for (const list of Object.values(languages)) for (const written of list) {
    for (const folded of [fold(written), foldTyped(written)]) made.set(folded, { key, of });
  }
  return (known = made);
}

/** What a line of the head gives: `value` in mL, g, °C, kPa or as a share; null where its number or unit does not fit. */
export interface GivenAt { readonly key: string; readonly word: string; readonly value: number | null; readonly valueFrom: number; readonly written: string }

/** Reads `room: 22 °C`, `a lime gives: 28 ml`; null for a line that begins with none of the words of `given.tsv`. */
export function givenOf(line: string): GivenAt | null {
  const colon = line.indexOf(':');
  if (colon <= 0 || colon > 40) return null;
  const word = line.slice(0, colon).trim(), found = table().get(fold(word));
  if (found === undefined) return null;
  let at = colon + 1;
  while (/\s/.test(line.charAt(at))) at++;
  const written = line.slice(at).trimEnd();
  return { key: found.key, word, value: valueOf(written, found.of), valueFrom: at, written };
}

/** A number with a unit of the wanted kind. */
function valueOf(text: string, of: string): number | null {
  const match = /^(?:about |ca\.? |etwa |~ ?)?([-−–]?)\s?(\d+(?:[.,]\d+)?)\s*(\D.*)?$/i.exec(text);
  if (match === null) return null;
  const number = Number((match[2] ?? '').replace(',', '.')) * (match[1] === '' ? 1 : -1), unit = (match[3] ?? '').trim();
  if (of === '°C') return temperature(number, unit);
  if (number < 0) return null;
  if (of === 'times') return /^(times(?: its (?:mass|weight))?|mal(?: (?:ihr|sein)e?s? gewicht)?|g per g|g je g)$/i.test(unit) ? number : null;
  if (of === 'share') return /^(%|per cent|percent|prozent)$/i.test(unit) ? number / 100 : null;
  if (of === '%') return /^(%|per cent|percent|prozent)$/i.test(unit) ? number : null;
  if (of === 'kPa' && /^(hpa|mbar)$/i.test(unit)) return number / 10;
  const form = unitForms(foldUnit(unit))?.find((one) => one.of === of), row = form === undefined ? undefined : unitRow(form.unit, null);
  return row === undefined ? null : number * row.factor;
}

function temperature(number: number, unit: string): number | null {
  if (/^(°\s?c|c|celsius|grad|°)$/i.test(unit)) return number;
  return /^(°\s?f|f|fahrenheit)$/i.test(unit) ? ((number - 32) * 5) / 9 : null;
}
