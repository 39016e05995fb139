import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

// Every sentence there is in one language is there in the other, with the same gaps.
const path = (name: string) => new URL(`../../${name}`, import.meta.url);
type Sentences = Readonly<Record<string, unknown>>;
const json = (name: string) => JSON.parse(readFileSync(path(name), 'utf8')) as Sentences;

/** Sentences by the way to them: `fat-set-hard/stop`. */
function flat(all: Sentences, before = ''): [string, string][] {
  return Object.entries(all).flatMap(([key, one]): [string, string][] => (typeof one === 'string' ? [[before + key, one]] : flat(one as Sentences, `${before}${key}/`)));
}
const gaps = (sentence: string): string[] => [...new Set([...sentence.matchAll(/\{([a-z0-9_]+)(?::\d)?\}/gi)].map((match) => match[1] ?? ''))].sort();

const FILES = [
  ...readdirSync(path('messages/en')).map((name) => [`messages/en/${name}`, `messages/de/${name}`] as const),
  ['packages/drawing/src/words.en.json', 'packages/drawing/src/words.de.json'] as const,
  ['packages/web/src/language/en.json', 'packages/web/src/language/de.json'] as const,
  ['packages/web/src/language/kinds.en.json', 'packages/web/src/language/kinds.de.json'] as const,
];

describe.each(FILES)('%s and %s', (english, german) => {
  const en = flat(json(english)), de = flat(json(german));
  it('have the same keys', () => { expect(de.map(([key]) => key).sort()).toEqual(en.map(([key]) => key).sort()); });
  it('have the same gaps', () => {
    const other = new Map(de);
    expect(en.filter(([key, sentence]) => other.has(key) && String(gaps(other.get(key) ?? '')) !== String(gaps(sentence))).map(([key]) => key)).toEqual([]);
  });
  it('say something, in marks that are closed', () => {
    for (const [key, sentence] of de) {
      expect(sentence.trim(), key).not.toBe('');
      expect(sentence.split('„').length, key).toBe(sentence.split('“').length);
    }
  });
});
