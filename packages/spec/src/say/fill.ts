import { ENGLISH, type Messages } from './messages.ts';

/** Fills `{word}` and `{word:1}` (digits after the point) in a sentence; an unknown word stays as it is. */
export function fill(sentence: string, words: Readonly<Record<string, string | number>>, messages: Pick<Messages, 'values' | 'decimal'> = ENGLISH): string {
  return sentence.replace(/\{([a-z0-9_]+)(?::(\d))?\}/gi, (whole, word: string, digits: string | undefined) => {
    const value = words[word];
    if (value === undefined) return whole;
    return clean(typeof value === 'number' ? number(value, digits === undefined ? undefined : Number(digits), messages.decimal) : messages.values[value] ?? value);
  });
}

/** A number as read aloud: three figures unless digits are asked for, a true minus. */
export function number(value: number, digits?: number, decimal: '.' | ',' = '.'): string {
  if (!Number.isFinite(value)) return '?';
  const auto = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  const text = digits === undefined ? String(Number(value.toFixed(auto))) : value.toFixed(digits);
  return text.replace(/^-/, '−').replace('.', decimal);
}

/** Names without control and bidirectional characters: the one way any name of a spec is printed. */
export function clean(text: string): string {
  // eslint-disable-next-line no-control-regex
  return text.replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '');
}
