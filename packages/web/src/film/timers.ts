/** A time that runs, stands or has run out. Clock times are ms since 1970, so that a page that slept or was left counts right. */
export interface Timer {
  /** of the step it belongs to, and the words it is listed by */
  readonly id: string; readonly words: string;
  /** how long it is, s */
  readonly seconds: number;
  /** since when it runs; null while it stands */
  readonly since: number | null;
  /** what had gone when it last stood, ms */
  readonly gone: number;
  /** it has been told that it ran out */
  readonly told: boolean;
}

/** What is gone of a timer, ms; never more than it is long. */
export function goneOf(timer: Timer, now: number): number {
  const gone = timer.gone + (timer.since === null ? 0 : Math.max(0, now - timer.since));
  return Math.min(gone, timer.seconds * 1000);
}
export function leftOf(timer: Timer, now: number): number { return timer.seconds * 1000 - goneOf(timer, now); }
export const runs = (timer: Timer, now: number): boolean => timer.since !== null && leftOf(timer, now) > 0;
export const isOver = (timer: Timer, now: number): boolean => leftOf(timer, now) <= 0;

/** Starts the time of a step, or stops it, or goes on with it; one that has run out begins anew. */
export function toggled(timers: readonly Timer[], step: { readonly id: string; readonly words: string; readonly seconds: number }, now: number): Timer[] {
  const old = timers.find((t) => t.id === step.id && t.seconds === step.seconds), others = timers.filter((t) => t.id !== step.id);
  if (old === undefined || isOver(old, now)) return [...others, { ...step, since: now, gone: 0, told: false }];
  return [...others, runs(old, now) ? { ...old, since: null, gone: goneOf(old, now) } : { ...old, since: now }];
}

/** Those that have run out and were not told of, and the list with them told. */
export function ringing(timers: readonly Timer[], now: number): { readonly due: readonly Timer[]; readonly timers: readonly Timer[] } {
  const due = timers.filter((t) => !t.told && isOver(t, now));
  return { due, timers: due.length === 0 ? timers : timers.map((t) => (due.includes(t) ? { ...t, told: true } : t)) };
}

/** Time left as it is read across the room: whole seconds up, "7 s", "4:32 min", "3:59 h". A day and more in days and hours. */
export function clock(leftMs: number): { readonly number: string; readonly unit: 's' | 'min' | 'h' | 'd' } {
  const s = Math.max(0, Math.ceil(leftMs / 1000));
  if (s < 100) return { number: String(s), unit: 's' };
  const two = (n: number): string => String(n).padStart(2, '0');
  if (s < 3600) return { number: `${Math.floor(s / 60)}:${two(s % 60)}`, unit: 'min' };
  const minutes = Math.ceil(s / 60);
  if (minutes < 48 * 60) return { number: `${Math.floor(minutes / 60)}:${two(minutes % 60)}`, unit: 'h' };
  return { number: String(Math.ceil(minutes / 1440)), unit: 'd' };
}
