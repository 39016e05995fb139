export type CaseKind = 'nature' | 'rule' | 'code';
export type CaseValue = number | string | boolean | null | readonly CaseValue[];

/** One published value: what was given, what is printed, how far off is still agreement. */
export interface Case {
  readonly id: string; readonly group: string; readonly kind: CaseKind;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly value: CaseValue; readonly unit?: string | null;
  /** absolute, in the unit; null: equal */
  readonly tol?: number | null;
  /** `value` is [low, high] and must contain the result */
  readonly within?: boolean;
  readonly source?: string; readonly status?: string; readonly note?: string;
}
export interface CaseFile { readonly cases: readonly Case[] }

/** What the engine answers for the inputs of a case; undefined where it takes none of them. */
export type Answer = number | string | boolean | readonly (number | string | boolean)[] | undefined;
export type Binding = (inputs: Inputs, unit: string) => Answer;
/** Group to engine function. */
export type Bindings = Readonly<Record<string, Binding>>;

export interface Worst { readonly id: string; readonly value: CaseValue; readonly got: CaseValue; readonly off: number | null }
export interface GroupResult {
  readonly group: string; readonly kind: CaseKind; readonly source: string;
  readonly cases: number; readonly within: number; readonly worst: Worst | null; readonly rms: number | null;
}
export interface VerifyResult {
  readonly groups: readonly GroupResult[]; readonly passed: number; readonly failed: number;
  readonly skipped: readonly { readonly id: string; readonly why: string }[];
}

/** A case's inputs, read by any of the names that mean the same. */
export interface Inputs {
  /** first of the names that holds a number, else undefined */
  readonly maybe: (...names: string[]) => number | undefined;
  /** the same, but the case is skipped where there is none */
  readonly number: (...names: string[]) => number;
  readonly text: (...names: string[]) => string | undefined;
  readonly has: (name: string) => boolean;
  readonly raw: (name: string) => unknown;
  readonly all: Readonly<Record<string, unknown>>;
  /** what the case says of itself in words, empty where nothing */
  readonly note: string;
}
