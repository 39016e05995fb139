import type { Assumed } from '@washline/engine';

/** How an assumption is said: its sentences by key, the engine's words, numbers and "to" of one language. */
export interface SayingAssumed {
  readonly sentences: Readonly<Record<string, string>>;
  readonly named: (word: string) => string;
  readonly number: (value: number) => string;
  readonly to: string;
}

const patternsOf = new WeakMap<object, readonly (readonly [RegExp, string])[]>();

/** Sentences by key; `*` in a key stands for the rest of it. The first that fits counts, so the exact ones stand before the wide ones. */
function sentenceOf(sentences: Readonly<Record<string, string>>, key: string): { readonly sentence: string; readonly rest: string } | undefined {
  let patterns = patternsOf.get(sentences);
  if (patterns === undefined) {
    patterns = Object.entries(sentences).map(([pattern, sentence]) => [new RegExp(`^${pattern.split('*').map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&')).join('(.+)')}$`), sentence] as const);
    patternsOf.set(sentences, patterns);
  }
  for (const [pattern, sentence] of patterns) {
    const match = pattern.exec(key);
    if (match) return { sentence, rest: match[1] ?? '' };
  }
  return undefined;
}

/** An assumption in plain words: `start/spirit` at 20 °C is "the spirit goes in at 20 °C (17 to 25)". A key without a sentence stands as it is. */
export function sayAssumed(assumed: Pick<Assumed, 'key' | 'value' | 'unit' | 'low' | 'high'>, saying: SayingAssumed): string {
  const [key = '', of = ''] = assumed.key.split('#');
  const value = valueOf(assumed, saying);
  const found = sentenceOf(saying.sentences, key);
  if (!found) return `${key}: ${value}`;
  const words: Readonly<Record<string, string>> = { value, 1: saying.named(found.rest.replace(/(^|\/)start\//, '')), of: of.split('/').at(-1) ?? '' };
  return found.sentence.replace(/\{(\w+)\}/g, (_whole, name: string) => words[name] ?? '').replace(/ {2,}/g, ' ').trim();
}

/** Value, unit and range; a share as per cent, a key of a table as words. */
function valueOf({ value, unit, low, high }: Pick<Assumed, 'value' | 'unit' | 'low' | 'high'>, { named, number, to }: SayingAssumed): string {
  if (typeof value !== 'number') return named(value.replace(/(\p{L})-(?=\p{L})/gu, '$1 '));
  const share = /^share\b/.test(unit);
  const shown = (amount: number): string => number(Number((share ? amount * 100 : amount).toPrecision(4)));
  const unitNamed = share ? `% ${named(unit.slice('share'.length).trim())}`.trim() : named(unit);
  return `${shown(value)} ${unitNamed}${low !== null && high !== null ? ` (${shown(low)} ${to} ${shown(high)})` : ''}`.replace(/ {2,}/g, ' ').trim();
}
