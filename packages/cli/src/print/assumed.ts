import { readFileSync } from 'node:fs';
import type { Assumed } from '@washline/engine';
import { ROOT } from '../root.ts';
import { number } from './numbers.ts';

let patterns: readonly (readonly [RegExp, string])[] | undefined;

/** Sentences by key; `*` in a key stands for the rest of it. The first that fits counts, so the exact ones stand before the wide ones. */
function sentenceOf(key: string): { readonly sentence: string; readonly rest: string } | undefined {
  patterns ??= Object.entries(JSON.parse(readFileSync(new URL('messages/en/assumed.json', ROOT), 'utf8')) as Record<string, string>)
    .map(([pattern, sentence]) => [new RegExp(`^${pattern.split('*').map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&')).join('(.+)')}$`), sentence] as const);
  for (const [pattern, sentence] of patterns) {
    const match = pattern.exec(key);
    if (match) return { sentence, rest: match[1] ?? '' };
  }
  return undefined;
}

/** An assumption in plain words: `start/spirit` at 20 °C is "the spirit goes in at 20 °C (17 to 25)". A key without a sentence stands as it is. */
export function sayAssumed(assumed: Pick<Assumed, 'key' | 'value' | 'unit' | 'low' | 'high'>): string {
  const [key = '', of = ''] = assumed.key.split('#');
  const value = valueOf(assumed);
  const found = sentenceOf(key);
  if (!found) return `${key}: ${value}`;
  const words: Readonly<Record<string, string>> = { value, 1: found.rest.replace(/(^|\/)start\//, ''), of: of.split('/').at(-1) ?? '' };
  return found.sentence.replace(/\{(\w+)\}/g, (_whole, name: string) => words[name] ?? '').replace(/ {2,}/g, ' ').trim();
}

/** Value, unit and range; a share as per cent, a key of a table as words. */
function valueOf({ value, unit, low, high }: Pick<Assumed, 'value' | 'unit' | 'low' | 'high'>): string {
  if (typeof value !== 'number') return value.replace(/(\p{L})-(?=\p{L})/gu, '$1 ');
  const share = /^share\b/.test(unit);
  const shown = (amount: number): string => number(Number((share ? amount * 100 : amount).toPrecision(4)));
  const named = share ? `% ${unit.slice('share'.length).trim()}`.trim() : unit;
  return `${shown(value)} ${named}${low !== null && high !== null ? ` (${shown(low)} to ${shown(high)})` : ''}`.replace(/ {2,}/g, ' ').trim();
}
