/** How good a number is, strongest first. */
export type Grade = 'defined' | 'measured' | 'own' | 'compiled' | 'reviewed' | 'predicted' | 'trade' | 'memory';

/** Grades in order of strength; a figure takes the weakest that matters to it. */
export const GRADES: readonly Grade[] = ['defined', 'measured', 'own', 'compiled', 'reviewed', 'predicted', 'trade', 'memory'];

/** A key of `data/sources.tsv`, or `common-practice`, `memory`, `label`, `written`. */
export type SourceKey = string;

/**
 * How far the true value may lie from the nominal one.
 * `normal`: sd in the value's unit. `lognormal`: cv as a share. `range`: the 2.5 and 97.5 % points, absolute, in the value's unit
 * (a split normal whose median is the value). `min` and `max` bound every kind.
 */
export type Spread = (
  | { readonly kind: 'exact' }
  | { readonly kind: 'normal'; readonly sd: number }
  | { readonly kind: 'lognormal'; readonly cv: number }
  | { readonly kind: 'range'; readonly low: number; readonly high: number }
) & { readonly min?: number; readonly max?: number };
