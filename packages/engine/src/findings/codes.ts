import table from '../../../../data/findings.json' with { type: 'json' };

/** One row of the table of findings: its limit, in which unit, how far it may go, and whose rule it is. */
export interface CodeRow {
  readonly code: string;
  /** the strongest it can be: some never stop a drink */
  readonly most: 'stop' | 'warn' | 'note';
  /** about harm: stays in the exit status, accepted or not */
  readonly harm: boolean;
  readonly unit: string;
  /** it is enough that the thing is there: the margin says how much of it, not how far beyond a limit */
  readonly presence?: boolean;
  /** the limit the margin is counted from, where it is one number */
  readonly limit?: number;
  /** degrees: further limits with words of their own */
  readonly degrees?: readonly { readonly name: string; readonly limit: number }[];
  readonly source: string;
}

/** All findings the engine can raise, by code. @source none - definition */
export const CODES: Readonly<Record<string, CodeRow>> = Object.fromEntries((table.codes as unknown as CodeRow[]).map((r) => [r.code, r]));

/** Every name a finding may have, its limit worked out or not. @source none - definition */
export const CODE_NAMES: readonly string[] = [...new Set([...table.named, ...Object.keys(CODES)])];
