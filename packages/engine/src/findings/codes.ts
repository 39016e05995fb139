import table from '../../../../data/findings.json' with { type: 'json' };
import type { Grade } from '../provenance/types.ts';

/** One row of the table of findings: its limits, in which unit its margin is, how far it may go, and whose rule it is. */
export interface CodeRow {
  readonly code: string;
  /** the strongest it can be: some never stop a drink */
  readonly most: 'stop' | 'warn' | 'note';
  /** about harm: stays in the exit status, accepted or not */
  readonly harm: boolean;
  readonly unit: string;
  /** it is enough that the thing is there: the margin says how much of it, not how far beyond a limit */
  readonly presence?: boolean;
  /** the numbers it hangs on, by name: read with `limit` */
  readonly limits?: Readonly<Record<string, { readonly value: number; readonly unit: string; readonly source: string; readonly grade: Grade; readonly why: string }>>;
  readonly source: string;
}

/** All findings the engine can raise, by code. @source none - definition */
export const CODES: Readonly<Record<string, CodeRow>> = Object.fromEntries((table.codes as unknown as CodeRow[]).map((r) => [r.code, r]));

/** Every name a finding may have, its limit worked out or not. @source none - definition */
export const CODE_NAMES: readonly string[] = [...new Set([...table.named, ...Object.keys(CODES)])];
