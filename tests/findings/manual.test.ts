import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ROWS } from './battery.ts';

const text = (name: string) => readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
const page = text('docs/manual/findings.md');
const sentences = JSON.parse(text('messages/en/findings.json')) as Record<string, Record<string, string>>;
const titles = new Map(text('data/sources.tsv').split('\n').map((line) => { const cells = line.split('\t'); return [cells[0]!, cells[1] ?? '']; }));
const rows = ROWS;

/** The page's entry of a code: from its heading to the next. */
const entry = (code: string) => page.split(/^### /m).find((part) => part.startsWith(`\`${code}\``))?.split(/^## /m)[0] ?? '';

it('every entry of the page is a code, and every code has one entry', () => {
  expect([...page.matchAll(/^### `([a-z-]+)`$/gm)].map((m) => m[1]).sort()).toEqual(rows.map((r) => r.code).sort());
});

describe.each(rows.map((r) => [r.code, r] as const))('%s', (code, row) => {
  const own = entry(code);
  it('is told in its own sentences, and no others', () => {
    const quoted = [...own.matchAll(/^> (\w+: .+)$/gm)].map((m) => m[1]);
    expect(quoted).toEqual(Object.entries(sentences[code]!).map(([severity, sentence]) => `${severity.split('.')[0]}: ${sentence}`));
  });
  it('says what it means, what to do, its limit, unit, how far it goes and whose rule it is', () => {
    expect(own).toMatch(/\*\*What to do\.\*\* .{20,}/);
    expect(own).toMatch(/\*\*Limit\.\*\* .{20,}/);
    const source = row.source === 'none' ? 'by definition' : row.source === 'common-practice' ? 'common practice of the trade, no source' : titles.get(row.source);
    expect(own).toContain(`Unit \`${row.unit}\`; goes as far as ${row.most}${row.harm ? '; about harm' : ''}; source: ${source}.`);
  });
});
