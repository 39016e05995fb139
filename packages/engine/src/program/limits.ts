import table from '../../../../data/findings.json' with { type: 'json' };

/** A judged number of a finding: where it is raised, how gravely, or what its remedy aims at. */
interface Limit { readonly value: number; readonly unit: string; readonly source: string; readonly grade: string; readonly why: string }

// without a cast: the compiler holds every limit of the table to its shape
const ROWS: readonly { readonly code: string; readonly limits?: Readonly<Record<string, Limit | undefined>> }[] = table.codes;
const LIMITS = new Map(ROWS.map((row) => [row.code, row.limits]));

/**
 * A limit of a finding, in the unit its row states.
 * @param code of the finding whose row holds it
 * @param name of the limit in that row; a name that is not there is a slip in the source and throws
 * @source none - table data/findings.json, a source beside each value
 */
export function limit(code: string, name: string): number {
  const row = LIMITS.get(code)?.[name];
  if (!row) throw new Error(`no limit ${name} of ${code} in data/findings.json`);
  return row.value;
}
