/** Patterns made ready, by the table they stand in. */
const ready = new WeakMap<Readonly<Record<string, string>>, readonly (readonly [string, RegExp, string])[]>();

/** `*` stands for some of a key; the last one, and one before the end of a word, for as much as there is. */
function expression(pattern: string): RegExp {
  const parts = pattern.split('*').map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${parts.map((part, i) => part + (i === parts.length - 1 ? '' : i === parts.length - 2 ? '(.*)' : '(.+?)')).join('')}$`);
}

/**
 * The sentence of the first pattern that fits a key, with what its `*` stand for. Exact patterns stand before wide ones.
 * @param barred only patterns with a bar in them
 */
export function matched(table: Readonly<Record<string, string>>, key: string, barred = false): { readonly sentence: string; readonly parts: readonly string[] } | undefined {
  let patterns = ready.get(table);
  if (!patterns) { patterns = Object.entries(table).map(([pattern, sentence]) => [pattern, expression(pattern), sentence] as const); ready.set(table, patterns); }
  for (const [pattern, expression, sentence] of patterns) {
    if (barred !== pattern.includes('|')) continue;
    const match = expression.exec(key);
    if (match) return { sentence, parts: match.slice(1) };
  }
  return undefined;
}
