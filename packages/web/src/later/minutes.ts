import { thenOf, type Drawable } from '@washline/drawing';
import { createEffect, createMemo, createSignal, on, onCleanup } from 'solid-js';
import type { Reading } from '../read.ts';
import type { State } from '../state.ts';

/** So long after the last change the minutes are told anew: never in the frame of a keystroke. */
const SETTLED_MS = 300;
/** The rule's length, whole minutes. */
export const LAST_MIN = 30;

/** The drink at the minute that the rule stands at; told once a text when the rule is first moved, and anew a moment after a change. */
export function makeMinutes(state: State) {
  const [minute, setMinute] = createSignal(0), [told, setTold] = createSignal<{ readonly text: string; readonly reading: Reading } | null>(null);
  const tell = (): void => {
    const reads = state.minutes(), text = state.text();
    if (reads !== null && told()?.text !== text) setTold({ text, reading: reads(text) });
  };
  createEffect(on([state.text, state.minutes, () => minute() > 0], ([, , asked]) => {
    if (!asked) return;
    const timer = setTimeout(tell, told() === null ? 0 : SETTLED_MS);
    onCleanup(() => clearTimeout(timer));
  }));
  /** null as poured, and while the minutes of a changed text are not told yet */
  const drawn = createMemo<Drawable | null>(() => { const one = told(); return minute() === 0 || one === null || one.text !== state.text() ? null : thenOf(one.reading, minute()); });
  return { minute, drawn, to: (next: number) => { setMinute(Math.max(0, Math.min(LAST_MIN, Math.round(next)))); if (minute() > 0) tell(); } };
}
export type Minutes = ReturnType<typeof makeMinutes>;
