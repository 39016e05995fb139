import { createRoot, createSignal, type Accessor } from 'solid-js';
import { keepFilming, keptFilming, type Filming } from './kept.ts';
import { ring } from './ring.ts';
import { isOver, ringing, runs, type Timer } from './timers.ts';

/** So long the sheet stays turned when a time has run out unheard, ms. */
const TURNED_MS = 1500;
const TICK_MS = 100;

export interface Keeping {
  readonly filming: Accessor<Filming>;
  change(part: Partial<Filming>): void;
  /** ms since 1970; goes on while a time runs */
  readonly now: Accessor<number>;
  /** the sheet is turned to its inverse: a time has run out and is not to be heard */
  readonly turned: Accessor<boolean>;
  /** what ran out last */
  readonly over: Accessor<readonly Timer[]>;
}

let kept: Keeping | null = null;
/** One filming on this device: its times run on while another view stands. */
export function keeping(): Keeping { return kept ??= createRoot(make); }

function make(): Keeping {
  const [filming, setFilming] = createSignal(keptFilming());
  const [now, setNow] = createSignal(Date.now());
  const [turned, setTurned] = createSignal(false);
  const [over, setOver] = createSignal<readonly Timer[]>([]);
  let ticking = 0, turning = 0;
  const change = (part: Partial<Filming>): void => {
    const next = { ...filming(), ...part };
    setFilming(next);
    keepFilming(next);
    tick();
  };
  const tick = (): void => {
    const at = Date.now(), { due, timers } = ringing(filming().timers, at);
    setNow(at);
    clearTimeout(ticking);
    if (due.length > 0) {
      const next = { ...filming(), timers };
      setFilming(next);
      keepFilming(next);
      setOver(due);
      if (next.rings) ring();
      else turn();
    }
    if (timers.some((t) => runs(t, at) || (!t.told && isOver(t, at)))) ticking = window.setTimeout(tick, TICK_MS);
  };
  const root = document.documentElement;
  const turn = (): void => {
    const stood = root.dataset['sheet'] ?? 'light';
    if (!turned()) root.dataset['sheet'] = stood === 'dark' ? 'light' : 'dark';
    setTurned(true);
    clearTimeout(turning);
    turning = window.setTimeout(() => { root.dataset['sheet'] = root.dataset['sheet'] === 'dark' ? 'light' : 'dark'; setTurned(false); }, TURNED_MS);
  };
  document.addEventListener('visibilitychange', tick);
  tick();
  return { filming, change, now, turned, over };
}
