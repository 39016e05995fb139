import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { density } from '../verify/bindings/density.ts';
import { freezing } from '../verify/bindings/freezing.ts';
import { gauging } from '../verify/bindings/gauging.ts';
import { solutes } from '../verify/bindings/solutes.ts';
import { sugar } from '../verify/bindings/sugar.ts';
import { thermal } from '../verify/bindings/thermal.ts';
import { viscosity } from '../verify/bindings/viscosity.ts';
import type { Bindings, CaseFile } from '../verify/types.ts';
import { verify } from '../verify/verify.ts';

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(`../../../../cases/${name}`, import.meta.url), 'utf8'));
const file = read('published.json') as CaseFile;
const explained = new Set((read('explained.json') as { explained: { group: string }[] }).explained.map((one) => one.group));

// each row of cases/published.json names its print and its tolerance
describe.each([['density', density], ['gauging', gauging], ['sugar', sugar], ['solutes', solutes], ['freezing', freezing], ['heat', thermal], ['viscosity', viscosity]] as [string, Bindings][])('printed rows of %s', (_name, bindings) => {
  const groups = [...new Set(file.cases.map((one) => one.group))].filter((group) => Object.hasOwn(bindings, group) && !explained.has(group));
  test.each(groups)('%s', (group) => {
    const { passed, failed, skipped, groups: rows } = verify(file, [group], bindings);
    expect({ failed, skipped }, JSON.stringify(rows.map((row) => row.worst))).toEqual({ failed: 0, skipped: [] });
    expect(passed).toBe(file.cases.filter((one) => one.group === group).length);
  });
});
