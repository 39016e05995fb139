import type { UnitRow } from '@washline/engine';

/** Where a unit is looked for when the system asked for has no reading of its own. */
const NEXT: Readonly<Record<string, readonly string[]>> = { uk: ['metric'], au: ['metric', 'uk'], 'us-1910': ['us'], us: [], metric: [] };

interface Reading { readonly system: string; readonly assumed: boolean; readonly row: UnitRow }

/** The readings of every unit, from the packed rows. @source none - definition */
export function unitTable(text: string): ReadonlyMap<string, readonly Reading[]> {
  const table = new Map<string, Reading[]>();
  for (const line of text.split('\n')) {
    const [unit = '', system = '', assumed, of, factor, low, high, defined, source = ''] = line.split('\t');
    const row: UnitRow = { unit, of: of as UnitRow['of'], factor: Number(factor), low: Number(low || factor), high: Number(high || factor), defined: defined === 'yes', source };
    const readings = table.get(unit) ?? [];
    readings.push({ system, assumed: assumed === 'yes', row });
    table.set(unit, readings);
  }
  return table;
}

/** One unit in one system: its own reading, then that of a related system, then the one taken when none is written. @source none - definition */
export function unitOf(table: ReadonlyMap<string, readonly Reading[]>, unit: string, system: string | null): UnitRow | undefined {
  const readings = table.get(unit);
  if (!readings) return undefined;
  for (const wanted of system === null ? [] : [system, ...(NEXT[system] ?? [])]) {
    const found = readings.find((reading) => reading.system === wanted);
    if (found) return found.row;
  }
  return (readings.find((reading) => reading.assumed) ?? readings[0])?.row;
}
