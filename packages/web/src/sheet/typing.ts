import { createSignal, type Accessor } from 'solid-js';

/** How long a line may stand still before it counts as written. */
export const IDLE_MS = 1500;

/** Which line of a text an offset stands in, from 1. */
export const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;

/**
 * The line that is being typed, from 1: the one that two texts differ in, if the caret stands in it. Null where more than one line changed, as
 * after a paste, or where the change is elsewhere.
 */
export function typedLine(before: string, after: string, caret: number): number | null {
  const a = before.split('\n'), b = after.split('\n');
  if (a.length !== b.length) return null;
  const changed = b.flatMap((line, i) => (line === a[i] ? [] : [i + 1]));
  const [line] = changed;
  return line !== undefined && changed.length === 1 && line === lineAt(after, caret) ? line : null;
}

export interface Hold { readonly line: Accessor<number | null>; typed(line: number | null): void; caretAt(line: number | null): void }

/** Holds back what is found at the line being typed until the caret leaves it or nothing is typed for a while. */
export function createHold(): Hold {
  const [line, setLine] = createSignal<number | null>(null);
  let timer = 0;
  const release = (): void => { clearTimeout(timer); setLine(null); };
  return {
    line,
    typed(at) { clearTimeout(timer); setLine(at); if (at !== null) timer = window.setTimeout(release, IDLE_MS); },
    caretAt(at) { if (line() !== null && at !== line()) release(); },
  };
}
