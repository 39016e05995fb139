// The table of units in the manual says what the engine uses. `UPDATE=1` writes it anew.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { tables } from '@washline/tables';
import { expect, it } from 'vitest';

const file = fileURLToPath(new URL('../../docs/manual/units.md', import.meta.url));
const SYSTEMS = [null, 'us', 'uk', 'metric', 'au'];

/** A unit in a system, four figures, with its range where it is vague. */
function said(unit: string, system: string | null): string {
  const row = tables.unit(unit, system);
  if (!row) throw new Error(`no unit ${unit}`);
  const number = (value: number): string => String(Number(value.toPrecision(4)));
  return `${number(row.factor)} ${row.of === 'ml' ? 'mL' : row.of}${row.low < row.high ? ` (${number(row.low)} to ${number(row.high)})` : ''}`;
}

it('each row of the table of units is what the engine uses', () => {
  const page = readFileSync(file, 'utf8');
  const rows = [...page.matchAll(/^\| `([a-z-]+)` \|.*\|$/gm)];
  expect(rows.length).toBeGreaterThan(15);
  let written = page;
  for (const [line, unit = ''] of rows) {
    const now = `| \`${unit}\` | ${SYSTEMS.map((system) => said(unit, system)).join(' | ')} |`;
    if (process.env['UPDATE'] === '1') written = written.replace(line, now);
    else expect(line).toBe(now);
  }
  if (written !== page) writeFileSync(file, written);
});
