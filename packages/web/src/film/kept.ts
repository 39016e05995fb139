import type { Timer } from './timers.ts';

/** What was poured at a step: the number in the unit of its line, and the words of the action it was poured for. */
export interface Shot { readonly id: string; readonly words: string; readonly value: number }
/** What this device keeps of a filming: the step that stands and its place, the times, whether it rings, what was really poured, and by drink the text as shot that this makes. */
export interface Filming { readonly at: string; readonly place: number; readonly timers: readonly Timer[]; readonly rings: boolean; readonly shots: readonly Shot[]; readonly texts: Readonly<Record<string, string>> }

const KEY = 'washline/film';
export const NONE: Filming = { at: '', place: 0, timers: [], rings: false, shots: [], texts: {} };

/** What is kept; a device that keeps nothing, or keeps it spoilt, begins at the first step. */
export function keptFilming(): Filming {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Partial<Filming> | null;
    if (kept === null) return NONE;
    return {
      at: typeof kept.at === 'string' ? kept.at : '', place: finite(kept.place) ? kept.place : 0, rings: kept.rings === true,
      texts: Object.fromEntries(Object.entries(kept.texts ?? {}).filter(([, text]) => typeof text === 'string')),
      timers: Array.isArray(kept.timers) ? kept.timers.filter(isTimer) : [], shots: Array.isArray(kept.shots) ? kept.shots.filter(isShot) : [],
    };
  } catch { return NONE; }
}

export function keepFilming(filming: Filming): void {
  try { localStorage.setItem(KEY, JSON.stringify(filming)); } catch { /* holds until the page is left */ }
}

const finite = (n: unknown): n is number => typeof n === 'number' && Number.isFinite(n);
const isTimer = (t: Partial<Timer> | null): t is Timer => t !== null && typeof t.id === 'string' && typeof t.words === 'string' && finite(t.seconds) && t.seconds > 0 && (t.since === null || finite(t.since)) && finite(t.gone) && typeof t.told === 'boolean';
const isShot = (s: Partial<Shot> | null): s is Shot => s !== null && typeof s.id === 'string' && typeof s.words === 'string' && finite(s.value) && s.value >= 0;
