import { foldTyped } from '../names/fold.ts';
import { words, type WordRow } from '../vocabulary/vocabulary.ts';

/** Treatments by folded phrase (`fresh`, `freshlysqueezed` …). */
export const treatments: ReadonlyMap<string, WordRow> = inflected(words('treatment'));
/** German treatments stand in one form; before a noun they take endings ("heißes Wasser", "gekühlter Sekt"). */
function inflected(rows: ReadonlyMap<string, WordRow>): ReadonlyMap<string, WordRow> {
  const all = new Map(rows);
  for (const [folded, row] of rows) {
    if (row.language !== 'de' || /\s/.test(row.written) || /(?:e|er|es|en|em)$/.test(foldTyped(row.written)) && !/(?:gefroren|geschmolzen|unterkuhlt)$/.test(folded)) continue;
    for (const ending of ['e', 'er', 'es', 'en', 'em']) if (!all.has(folded + ending)) all.set(folded + ending, row);
  }
  return all;
}
export const isTreatmentFold = (folded: string): boolean => treatments.has(folded);

/** What a treatment says about the start temperature, °C; common practice, no source. */
const CELSIUS: Readonly<Record<string, number>> = { chilled: 4, frozen: -18, room: 20, hot: 88, boiling: 98, lukewarm: 37, warm: 45 };
export function treatmentCelsius(row: WordRow): number | undefined {
  if (row.key === 'chilled' && /^ice|^iced|eis/.test(row.written)) return 0;
  return CELSIUS[row.key];
}
/** Treatments whose words may be left out of a name in front without changing what it is. */
export const PLAIN: ReadonlySet<string> = new Set(['fresh', 'squeezed', 'chilled', 'frozen', 'room', 'hot', 'boiling', 'lukewarm', 'warm', 'large-t', 'organic', 'homemade']);
