import { batch, createEffect, createMemo, createSignal, type Accessor } from 'solid-js';
import type { Splice } from '@washline/engine';
import { keepBench, keepDraft, keptBench, keptDraft } from './device.ts';
import { between, carried, done, EMPTY, lineAfter, redone, spliced, undone, type History } from './history.ts';
import { DEMO, DEMO_READ, unread } from './demo.ts';
import { createHands, type Run } from './hands/run.ts';
import { language, name } from './language/language.ts';
import type * as engineOf from './read.ts';
import type { Depth, Read, Reading } from './read.ts';

export type Reader = (text: string, why?: string, depth?: Depth) => Read;
type Engine = Pick<typeof engineOf, 'read' | 'readLater' | 'readMinutes' | 'hold' | 'learn' | 'isGerman' | 'takeHold' | 'reach' | 'turnLine' | 'turnsLine' | 'typedAmount' | 'amountAt' | 'setBench'>;

/** So long after the last change the ranges are made whole. */
const SETTLED_MS = 250;

export interface State {
  readonly text: Accessor<string>;
  readonly now: Accessor<Read>;
  /** has no change come for a moment? */
  readonly settled: Accessor<boolean>;
  /** the engine, once it has come */
  readonly reader: Accessor<Reader | null>;
  /** reads a text with half an hour in its glass, once the engine has come */
  readonly later: Accessor<((text: string) => Reading) | null>;
  /** reads a text at every whole minute of it, once the engine has come */
  readonly minutes: Accessor<((text: string) => Reading) | null>;
  /** the last run of many hands; its text says of what it is */
  readonly hands: Accessor<Run | null>;
  /** reads two texts side by side, once the engine has come */
  readonly against: Accessor<Engine['hold'] | null>;
  /** where the caret should go after a change made outside the editor */
  readonly caret: Accessor<number | null>;
  /** the line that undoing or redoing would bring; null where there is nothing to */
  readonly undoes: Accessor<string | null>;
  readonly redoes: Accessor<string | null>;
  readonly isDemo: Accessor<boolean>;
  /** what somebody owns, as a text; '' where nothing is said */
  readonly bench: Accessor<string>;
  setBench(text: string): void;
  /** the line a hand is turning, from 1 */
  readonly turned: Accessor<number | null>;
  /** turns the amount of a line by steps of its jigger; false where it has none */
  turnLine(line: number, steps: number, fine: boolean): boolean;
  /** can the amount of a line be turned? */
  turns(line: number): boolean;
  /** an amount of the drawing as it is written, to be typed over; null where it is none, or before the engine has come */
  amount(of: string): { readonly value: number; readonly unit: string | null } | null;
  /** puts a typed number in the place of an amount; false where it is none */
  typeAmount(of: string, text: string): boolean;
  /** takes hold of a level of the drawing; null where nothing moves it, or before the engine has come */
  hold(of: string): Hand | null;
  type(text: string): void;
  apply(splices: readonly Splice[], caret?: number): void;
  undo(): void;
  redo(): void;
  toDemo(): void;
  /** puts another text in the place of this one, as one thing done; false where it is the same */
  open(text: string): boolean;
}

/** A level held by a pointer or a key: text and drawing follow at once; let go, it is one thing that was done. */
export interface Hand {
  /** the line as it stands; of the whole drink what it is multiplied by */
  words(): string;
  /** where the level stands, mm or mL */
  value(): number;
  /** brings the level as near as its steps allow, mm or mL */
  to(value: number, fine: boolean): void;
  by(steps: number, fine: boolean): void;
  /** so many steps from where it was taken */
  at(steps: number, fine: boolean): void;
  keep(): void;
  drop(): void;
}

/** One text, one reading of it, one stack of splices. */
export function makeState(): State {
  const kept = keptDraft();
  const [text, setText] = createSignal(kept?.text ?? DEMO);
  const [history, setHistory] = createSignal<History>(kept?.history ?? EMPTY);
  const [caret, setCaret] = createSignal<number | null>(null, { equals: false });
  let count = 0;
  const [bench, setBench] = createSignal(keptBench());
  const [engine, setEngine] = createSignal<Engine | null>(null);
  const [learnt, setLearnt] = createSignal(false);
  const reader = createMemo<Reader | null>(() => { const whole = engine(), spoken = language(); learnt(); return whole === null ? null : (spec, why, depth) => whole.read(spec, why, spoken, depth); });
  const later = createMemo(() => { const whole = engine(), spoken = language(); bench(); return whole === null ? null : (spec: string) => whole.readLater(spec, spoken); });
  const minutes = createMemo(() => { const whole = engine(), spoken = language(); bench(); return whole === null ? null : (spec: string) => whole.readMinutes(spec, spoken); });
  const hands = createHands(text, language, () => engine() !== null, bench);
  // The engine and its tables come after the first picture.
  requestAnimationFrame(() => setTimeout(() => { void import('./read.ts').then(({ read, readLater, readMinutes, hold: held, learn, isGerman, takeHold, reach, turnLine, turnsLine, typedAmount, amountAt, setBench: toBench }) => { toBench(bench()); return setEngine({ read, readLater, readMinutes, hold: held, learn, isGerman, takeHold, reach, turnLine, turnsLine, typedAmount, amountAt, setBench: toBench }); }); }));
  // the frame of a change has new values with the ranges before, the next one ranges by differences; a moment later they are whole
  const [depth, setDepth] = createSignal<Depth>('whole');
  // what a hand has looked at is not read again when it comes there
  const tried = new Map<string, Read>();
  const now = createMemo<Read>(() => {
    const reads = reader(), spec = text(), plain = bench().trim() === '';
    // what the page was built with was read without a bench
    if (reads === null && (spec !== DEMO || !plain)) return unread(spec);
    const fresh = reads === null ? DEMO_READ : (depth() === 'carried' ? tried.get(spec) : undefined) ?? reads(spec, undefined, depth());
    if (!fresh.carried) count += 1;
    const root = document.documentElement;
    root.dataset['read'] = String(count);
    root.dataset['problems'] = String(fresh.problems.length);
    return fresh;
  });
  // German sentences come when someone reads German, or when a spec is German and is to be added to in German.
  createEffect(() => {
    const whole = engine(), spoken = language();
    if (whole === null || (spoken === 'en' && (learnt() || !whole.isGerman(now())))) return;
    void whole.learn('de').then((values) => { if (spoken === 'de') name(values); return setLearnt(true); });
  });
  let saving = 0, settling = 0, painted = 0;
  const [turned, setTurned] = createSignal<number | null>(null);
  const put = (next: string, past: History, at: number | null, kept = true): void => {
    batch(() => { setText(next); setHistory(past); setDepth('carried'); if (at !== null) setCaret(at); });
    clearTimeout(settling);
    settling = window.setTimeout(() => setDepth('whole'), SETTLED_MS);
    cancelAnimationFrame(painted);
    painted = requestAnimationFrame(() => setTimeout(() => { if (text() === next && now().carried) setDepth('quick'); }));
    clearTimeout(saving);
    if (!kept) return;
    saving = window.setTimeout(() => keepDraft({ text: next, history: past }), 250);
  };
  addEventListener('pagehide', () => keepDraft(text() === DEMO && history().undo.length === 0 ? null : { text: text(), history: history() }));
  const open = (other: string): boolean => {
    const splice = between(text(), other);
    if (splice !== null) put(other, done(history(), text(), [splice], false, Date.now()), 0);
    return splice !== null;
  };
  const hold = (of: string): Hand | null => {
    const whole = engine(), start = text();
    if (whole === null) return null;
    tried.clear();
    const held = whole.takeHold({ text: start, now: now() }, of, (spec) => { const one = whole.read(spec, undefined, language(), 'carried'); tried.set(spec, one); return one; });
    if (held === null) { tried.clear(); return null; }
    let steps = 0, fine = false, here = held.at(0, false);
    const go = (to: number, finely: boolean): void => {
      if (to === steps && finely === fine) return;
      steps = to; fine = finely; here = held.at(to, finely);
      batch(() => { setTurned(here.line); put(spliced(start, here.splices), history(), null, false); });
    };
    return {
      words: () => here.words,
      value: () => here.value,
      to: (value, finely) => { go(whole.reach(held, value, finely === fine ? steps : 0, finely), finely); },
      at: (many, finely) => { if (!held.at(many, finely).over) go(many, finely); },
      by: (more, finely) => { const from = finely === fine ? steps : 0; if (!held.at(from + more, finely).over) go(from + more, finely); },
      keep: () => { tried.clear(); setTurned(null); if (text() !== start) put(text(), done(history(), start, here.splices, false, Date.now()), null); },
      drop: () => { tried.clear(); setTurned(null); if (text() !== start) put(start, history(), null); },
    };
  };
  return {
    text, now, settled: () => depth() === 'whole', reader, later, minutes, hands, against: () => { bench(); return engine()?.hold ?? null; }, caret, turned, hold,
    turns: (line) => engine()?.turnsLine(now(), line) === true,
    amount: (of) => engine()?.amountAt(now(), of) ?? null,
    typeAmount(of, typed) {
      const splices = engine()?.typedAmount(now(), of, typed) ?? null, before = text();
      if (splices !== null && spliced(before, splices) !== before) put(spliced(before, splices), done(history(), before, splices, false, Date.now()), null);
      return splices !== null;
    },
    turnLine(line, by, finely) {
      const splices = engine()?.turnLine(now(), line, by, finely) ?? [], before = text();
      if (splices.length > 0) put(spliced(before, splices), done(history(), before, splices, false, Date.now()), null);
      return splices.length > 0;
    },
    undoes: () => { const last = history().undo.at(-1); return last === undefined ? null : lineAfter(text(), last.back); },
    redoes: () => { const last = history().redo.at(-1); return last === undefined ? null : lineAfter(text(), last.forward); },
    isDemo: () => text() === DEMO,
    bench,
    setBench(next) {
      keepBench(next);
      tried.clear();
      engine()?.setBench(next);
      batch(() => { setDepth('whole'); setBench(next); });
    },
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
    toDemo() { open(DEMO); },
    open,
  };
}
