import { words, type WordRow } from '../vocabulary/vocabulary.ts';

/** Treatments by folded phrase (`fresh`, `freshlysqueezed` …). */
export const treatments: ReadonlyMap<string, WordRow> = words('treatment');
export const isTreatmentFold = (folded: string): boolean => treatments.has(folded);

/** What a treatment says about the start temperature, °C; common practice, no source. */
const CELSIUS: Readonly<Record<string, number>> = { chilled: 4, frozen: -18, room: 20, hot: 88, boiling: 98, lukewarm: 37 };
export function treatmentCelsius(row: WordRow): number | undefined {
  if (row.key === 'chilled' && /^ice|^iced|eis/.test(row.written)) return 0;
  return CELSIUS[row.key];
}
/** Treatments whose words may be left out of a name in front without changing what it is. */
export const PLAIN: ReadonlySet<string> = new Set(['fresh', 'squeezed', 'chilled', 'frozen', 'room', 'hot', 'boiling', 'lukewarm', 'large-t', 'organic', 'homemade']);
