import table from '../../../../data/heard.json' with { type: 'json' };

const BEGINNINGS = table.rows.map((r) => r.key);

/**
 * Whether the text is read for words that replace an assumption: those are shown, the others are not promised.
 * @source none - tested row by row
 */
export function heard(key: string): boolean { return BEGINNINGS.some((b) => key.startsWith(b)); }
