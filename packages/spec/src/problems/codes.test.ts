import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PROBLEM_CODES } from './codes.ts';

const sentences = JSON.parse(readFileSync(new URL('../../../../messages/en/problems.json', import.meta.url), 'utf8')) as Record<string, string>;

test('every code has a sentence and every sentence a code', () => { expect(Object.keys(sentences).sort()).toEqual(Object.keys(PROBLEM_CODES).sort()); });
test.each(Object.entries(PROBLEM_CODES))('%s fills its sentence with words it carries', (code, words) => {
  for (const match of (sentences[code] ?? '').matchAll(/\{(\w+)(?::\d+)?\}/g)) expect(words as readonly string[]).toContain(match[1]);
});
