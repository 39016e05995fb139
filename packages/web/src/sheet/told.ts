import { sayAssumed, understood } from '@washline/spec';
import type { Splice } from '@washline/engine';
import type { Read } from '../read.ts';

export interface Assumption { readonly what: string; readonly words: string; readonly splices: readonly Splice[] }
/** What a line was understood as, one action after another, and what was assumed for it. */
export interface Told { readonly line: number; readonly read: readonly string[]; readonly assumed: readonly Assumption[] }
export interface ToldIn { readonly language: 'en' | 'de'; readonly sentences: Readonly<Record<string, string>>; readonly named: (word: string) => string }

/** What is to be told of a line, from 1; null of a blank line, a heading or a note with nothing assumed. What is of no line is told of the name. */
export function toldOf(now: Read, line: number, { language, sentences, named }: ToldIn): Told | null {
  const actions = now.document.sections.flatMap((section) => section.lines).find((one) => one.line === line)?.actions ?? [];
  const first = now.document.text.split('\n').findIndex((one) => one.trim() !== '') + 1;
  const number = (value: number): string => String(value).replace('.', language === 'de' ? ',' : '.').replace(/^-/, '−');
  const assumed = now.reading.assumed.filter((one) => (one.where.line ?? first) === line).map((one): Assumption => ({ what: kept(sayAssumed(one, { sentences, named: (word) => (word === 'mL' ? 'ml' : named(word)), number, to: language === 'de' ? 'bis' : 'to' })), words: one.say, splices: one.splices }));
  return actions.length === 0 && assumed.length === 0 ? null : { line, read: actions.map((action) => kept(understood(action, language))), assumed };
}
/** A number and its unit stay on one line. */
const kept = (text: string): string => text.replace(/(\d) (?=°C|%|ml\b|mm\b|cl\b|oz\b|g\b|s\b|min\b|h\b|bar\b|kJ\b)/g, '$1\u00a0');
