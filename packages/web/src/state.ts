import { batch, createMemo, createSignal, type Accessor } from 'solid-js';
import type { Splice } from '@washline/engine';
import { keepDraft, keptDraft } from './device.ts';
import { between, carried, done, EMPTY, redone, spliced, undone, type History } from './history.ts';
import { DEMO, DEMO_READ, unread } from './demo.ts';
import type { Read } from './read.ts';

export type Reader = (text: string, why?: string) => Read;

export interface State {
  readonly text: Accessor<string>;
  readonly now: Accessor<Read>;
  /** the engine, once it has come */
  readonly reader: Accessor<Reader | null>;
  /** where the caret should go after a change made outside the editor */
  readonly caret: Accessor<number | null>;
  readonly canUndo: Accessor<boolean>;
  readonly canRedo: Accessor<boolean>;
  readonly isDemo: Accessor<boolean>;
  type(text: string): void;
  apply(splices: readonly Splice[], caret?: number): void;
  undo(): void;
  redo(): void;
  toDemo(): void;
}

/** One text, one reading of it, one stack of splices. */
export function makeState(): State {
  const kept = keptDraft();
  const [text, setText] = createSignal(kept?.text ?? DEMO);
  const [history, setHistory] = createSignal<History>(kept?.history ?? EMPTY);
  const [caret, setCaret] = createSignal<number | null>(null, { equals: false });
  let count = 0;
  const [reader, setReader] = createSignal<Reader | null>(null);
  // The engine and its tables come after the first picture.
  requestAnimationFrame(() => setTimeout(() => { void import('./read.ts').then((engine) => setReader(() => engine.read)); }));
  const now = createMemo<Read>(() => {
    const engine = reader(), spec = text();
    if (engine === null && spec !== DEMO) return unread(spec);
    const fresh = engine === null ? DEMO_READ : engine(spec);
    count += 1;
    const root = document.documentElement;
    root.dataset['read'] = String(count);
    root.dataset['problems'] = String(fresh.problems.length);
    return fresh;
  });
  let saving = 0;
  const put = (next: string, past: History, at: number | null): void => {
    batch(() => { setText(next); setHistory(past); if (at !== null) setCaret(at); });
    clearTimeout(saving);
    saving = window.setTimeout(() => keepDraft({ text: next, history: past }), 250);
  };
  addEventListener('pagehide', () => keepDraft(text() === DEMO && history().undo.length === 0 ? null : { text: text(), history: history() }));
  return {
    text, now, reader, caret,
    canUndo: () => history().undo.length > 0, canRedo: () => history().redo.length > 0, isDemo: () => text() === DEMO,
    type(next) {
      const splice = between(text(), next);
      if (splice !== null) put(next, done(history(), text(), [splice], true, Date.now()), null);
    },
    apply(splices, at) {
      const before = text();
      put(spliced(before, splices), done(history(), before, splices, false, Date.now()), carried(at ?? splices[0]?.to ?? 0, splices));
    },
    undo() { const moved = undone(text(), history()); if (moved !== null) put(moved.text, moved.history, moved.caret); },
    redo() { const moved = redone(text(), history()); if (moved !== null) put(moved.text, moved.history, moved.caret); },
    toDemo() {
      const splice = between(text(), DEMO);
      if (splice !== null) put(DEMO, done(history(), text(), [splice], false, Date.now()), 0);
    },
  };
}
