import { counted } from '@washline/drawing';
import type { EachHandAnswer, MessageLanguage, SaidHands } from '@washline/spec';
import { createEffect, createSignal, on, onCleanup, type Accessor } from 'solid-js';
import { say } from '../language/language.ts';
import type { State } from '../state.ts';

/** What the worker is asked; a newer `id` ends an older run. */
export interface Asked { readonly id: number; readonly text: string; readonly language: MessageLanguage; readonly bench?: string; readonly makers: number; readonly seed: number; readonly profile: string }
/** What it tells: bands, odds and what matters; every hand's level (mm) and whether it holds; how long it took, ms. */
export interface Told extends Pick<EachHandAnswer, 'levels' | 'holds' | 'moves'> { readonly id: number; readonly hands: SaidHands; readonly problems: number; readonly ms: number }
/** A run with the text it is of. */
export interface Run extends Omit<Told, 'id'> { readonly text: string; readonly language: MessageLanguage }

/** The hands of the command line when nothing else is asked there. */
const DEFAULT = { makers: 10_000, seed: 1, profile: 'home' } as const;
/** So long after the last change they are drawn, ms. */
const SETTLED_MS = 450;

/**
 * Many hands for the present text, run in a worker a moment after the last change, once the engine has come; the last run stays until the next is there
 * (its `text` says of what it is). Where no worker can be had there is none.
 */
export function createHands(text: Accessor<string>, language: Accessor<MessageLanguage>, here: Accessor<boolean>, bench: Accessor<string>): Accessor<Run | null> {
  const [run, setRun] = createSignal<Run | null>(null);
  let worker: Worker | null = null, id = 0, asked: Asked | null = null;
  const ask = (): void => {
    if (worker === null) {
      worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<Told>) => { if (asked !== null && data.id === id) setRun({ ...data, text: asked.text, language: asked.language }); };
    }
    asked = { id: ++id, text: text(), language: language(), ...(bench().trim() === '' ? {} : { bench: bench() }), ...DEFAULT };
    worker.postMessage(asked, { transfer: [] });
  };
  // hands at another bench are other hands
  createEffect(on(bench, () => setRun(null), { defer: true }));
  createEffect(on([text, language, here, bench], () => {
    if (!here()) return;
    // what runs is of another text by now
    id += 1;
    const timer = setTimeout(ask, SETTLED_MS);
    onCleanup(() => clearTimeout(timer));
  }));
  return run;
}

/** How many of a run hold; null where nothing is known of the drink. */
export function holding(run: Run): number | null {
  return (run.hands.figures['volume']?.p50 ?? 0) > 0 ? Math.round((1 - run.hands.fails.odds) * run.hands.makers) : null;
}

/** The run of the present text; null while it is not there. */
export function presentRun(state: Pick<State, 'hands' | 'text'>): Run | null { const run = state.hands(); return run !== null && run.text === state.text() ? run : null; }

/** What the view answers in the foot. */
export function handsAnswer(state: State): string {
  const run = presentRun(state), hold = run === null ? null : holding(run);
  return run === null || hold === null ? '' : say('hands.answer', { hold: counted(hold), of: counted(run.hands.makers) });
}
