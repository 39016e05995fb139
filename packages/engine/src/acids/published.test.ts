import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { acids } from '../verify/bindings/acids.ts';
import type { CaseFile } from '../verify/types.ts';
import { verify } from '../verify/verify.ts';

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(`../../../../cases/${name}`, import.meta.url), 'utf8'));
const file = read('published.json') as CaseFile;
const explained = new Set((read('explained.json') as { explained: { group: string }[] }).explained.map((one) => one.group));

// each row of cases/published.json names its print and its tolerance
const groups = [...new Set(file.cases.map((one) => one.group))].filter((group) => Object.hasOwn(acids, group) && !explained.has(group));
test.each(groups)('printed rows of %s', (group) => {
  const { passed, failed, skipped, groups: rows } = verify(file, [group], acids);
  expect({ failed, skipped }, JSON.stringify(rows.map((row) => row.worst))).toEqual({ failed: 0, skipped: [] });
  expect(passed).toBe(file.cases.filter((one) => one.group === group).length);
});
