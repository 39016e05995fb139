import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lines } from './lines.ts';

// Every labelled line of cases/lines: printed lines of 1917 (Bullock, The Ideal Bartender, public domain) and lines written for the sets.
const folder = new URL('../../../../cases/lines/', import.meta.url);
interface Labelled { text: string; kind: string; low: number | null; high: number | null; unit: string | null; ingredient: string | null; strength: number | null; verb: string | null; seconds: number | null; celsius: number | null }

const wordsOf = (text: string | null): string[] => (text === null ? [] : text.toLowerCase().split(/[\s,]+/).filter((word) => word !== ''));

for (const file of readdirSync(folder).filter((name) => name.endsWith('.json'))) {
  const set = (JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as { lines: Labelled[] }).lines;
  describe(file, () => {
    const kept = set.filter((line) => line.text.trim() !== '').map((line) => [line.text.slice(0, 80), line] as const);
    const holds = (label: Labelled): void => {
      const read = lines(label.text)[0];
      if (read === undefined) throw new Error('no reading');
      const { text: _text, problem: _problem, ingredient, ...rest } = read;
      const { text: _label, ingredient: wanted, ...fields } = label;
      expect({ ...rest, strength: rest.strength === null ? null : Math.round(rest.strength * 1e4) / 1e4 }).toEqual(fields);
      // a reading with extra words from the line is not wrong; a missing core word is
      expect(ingredient === null).toBe(wanted === null);
      expect(wordsOf(ingredient)).toEqual(expect.arrayContaining(wordsOf(wanted)));
    };
    // while code is mutated, thousands of tests are one: the first line that differs is enough
    if (process.env['WASHLINE_MUTATION'] === undefined) test.each(kept)('%s', (_, label) => { holds(label); });
    else test('every line', () => { for (const [, label] of kept) holds(label); });
  });
}

test('a blank line gives no reading', () => { expect(lines('   \n\n60 ml gin\n')).toHaveLength(1); });
test('an unread line carries its problem and its column', () => {
  const read = lines('  60 ml');
  expect(read[0]).toMatchObject({ kind: 'unread', problem: { code: 'no-thing', column: 3 } });
});
test('lines that count on are a numbered list, others are not', () => {
  expect(lines('1. 5 oz gin').map((one) => one.problem?.code)).toEqual(['list-number']);
  expect(lines('1. 50 ml gin\n2. 20 ml lime juice').map((one) => one.low)).toEqual([50, 20]);
});
