import en from './words.en.json' with { type: 'json' };

const table: Readonly<Record<string, string>> = en;

/** A phrase of the drawing with its gaps filled; `{name}` is a gap. A key the table does not have shows as itself. */
export function words(key: string, gaps: Readonly<Record<string, string | number>>): string {
  return (table[key] ?? key).replace(/\{(\w+)\}/g, (_, gap: string) => String(gaps[gap] ?? ''));
}
