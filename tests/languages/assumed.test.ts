import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadLanguage, messagesIn, readText, splice } from '@washline/spec';
import { tables } from '@washline/tables';
import short from '../reading/assumed-specs.json' with { type: 'json' };

// In a spec whose head says that it is German, the words that replace an assumption are German, and replace it.
await loadLanguage('de');
const { written } = messagesIn('de');
const read = (text: string) => readText(text, { tables, language: 'de', quick: true });

/** Words of English that no German line holds. */
const ENGLISH = /\b(?:at|over|with|through|into|the|cubes?|by weight|by volume|glass|shake|stir|strain|rest|chill|room|fridge|weighs|gives|keeps|holds)\b/;

describe('the words that replace an assumption, in German', () => {
  it('each of the table of assumptions has them', () => {
    const [, ...rows] = readFileSync(new URL('../../data/assumptions.tsv', import.meta.url), 'utf8').split('\n').filter((row) => row !== '');
    const says = [...new Set(rows.map((row) => (row.split('\t')[7] ?? '').replace(/[-−]?\d+(?:\.\d+)?/g, '#')))].filter((say) => say !== '');
    expect(says.filter((say) => written[say] === undefined)).toEqual([]);
  });
  it.each(short.texts.map((text) => [text.split('\n')[0] ?? '', text.replace('\n', '\nlanguage: de\n')] as const))('%s', (_name, text) => {
    const before = read(text), faults: string[] = [];
    for (const one of before.reading.assumed) {
      if (one.splices.length === 0) continue;
      const after = read(splice(text, one.splices));
      const put = one.splices.map((s) => s.insert).join(' | ');
      if (ENGLISH.test(put)) faults.push(`English: ${one.key}: ${put}`);
      const fresh = after.problems.filter((p) => !before.problems.some((q) => q.code === p.code)).map((p) => p.code);
      if (fresh.length > 0 || after.reading.assumed.some((other) => other.key === one.key)) faults.push(`${one.key} (${fresh.join()}): ${put}`);
    }
    expect(faults).toEqual([]);
  });
});
