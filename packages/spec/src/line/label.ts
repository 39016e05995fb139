/** What the command `lines` shows of one action; null where not written. */
export interface Label {
  readonly kind: 'measure' | 'fill' | 'step' | 'garnish' | 'unread';
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string | null;
  readonly ingredient: string | null;
  readonly strength: number | null;
  readonly verb: string | null;
  readonly seconds: number | null;
  readonly celsius: number | null;
}
export const EMPTY: Label = { kind: 'unread', low: null, high: null, unit: null, ingredient: null, strength: null, verb: null, seconds: null, celsius: null };

/** Thirds and sixths are shown to four places. */
export const shown = (value: number | null | undefined): number | null => (value === null || value === undefined || !Number.isFinite(value) ? null : Math.round(value * 10000) / 10000);
