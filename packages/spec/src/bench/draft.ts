import type { AssumptionRow, Bench, BenchTools, Given, SpreadRow, UnitRow } from '@washline/engine';
import table from '../../../../data/bench.json' with { type: 'json' };
import { fold, foldTyped } from '../names/fold.ts';
import type { Width } from './row.ts';

/** A row of `data/bench.json`: what a line of the bench may say. */
export interface BenchRow {
  readonly words: readonly string[]; readonly of: string; readonly min: number; readonly max: number; readonly example: string;
  /** the same in German, where it is another */
  readonly beispiel?: string;
  readonly unit?: string; readonly special?: string; readonly none?: Readonly<Record<string, string>>;
  readonly tool?: 'scale_g' | 'fineScale_g';
  /** spreads of what is done with a tool that has no row of its own */
  readonly judges?: readonly string[];
  readonly sets?: readonly (Width & { readonly key: string })[];
  readonly spreads?: readonly { readonly key: string; readonly per: number; readonly sd: number }[];
}
export const BENCH_ROWS = table.rows as unknown as readonly BenchRow[];
const byWord = new Map(BENCH_ROWS.flatMap((row) => row.words.flatMap((word) => [[fold(word), row], [foldTyped(word), row]] as const)));

/** The row a word of a line means. */
export const benchRow = (word: string): BenchRow | undefined => byWord.get(fold(word));
export const BENCH_WORDS: readonly string[] = BENCH_ROWS.flatMap((row) => row.words);

/** A bench while it is read. */
export interface Draft {
  readonly values: Map<string, AssumptionRow>; readonly spreads: Map<string, SpreadRow>; readonly units: Map<string, UnitRow>;
  readonly given: Given[];
  readonly tools: { -readonly [K in keyof BenchTools]: BenchTools[K] } & { siphons: Bench['tools']['siphons'][number][] };
}
export const newDraft = (): Draft => ({ values: new Map(), spreads: new Map(), units: new Map(), given: [], tools: { siphons: [] } });
