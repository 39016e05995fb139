import type { Splice } from '@washline/engine';

/** One thing that was done: splices in the text as it then stood, and those that take it back. */
export interface Edit { readonly forward: readonly Splice[]; readonly back: readonly Splice[]; readonly typed: boolean; readonly at: number }
export interface History { readonly undo: readonly Edit[]; readonly redo: readonly Edit[] }

export const EMPTY: History = { undo: [], redo: [] };
const KEPT = 500;

/** The text after splices that do not overlap and count in the text before any of them. */
export function spliced(text: string, splices: readonly Splice[]): string {
  let out = '', at = 0;
  for (const s of inOrder(splices)) { out += text.slice(at, s.from) + s.insert; at = s.to; }
  return out + text.slice(at);
}

/** The splices that take others back, counted in the text after them. */
export function inverse(text: string, splices: readonly Splice[]): Splice[] {
  let shift = 0;
  return inOrder(splices).map((s) => {
    const from = s.from + shift;
    shift += s.insert.length - (s.to - s.from);
    return { from, to: from + s.insert.length, insert: text.slice(s.from, s.to) };
  });
}

function inOrder(splices: readonly Splice[]): Splice[] { return [...splices].sort((a, b) => a.from - b.from || a.to - b.to); }

/** The one splice between two texts: what lies between their common beginning and end. Null when they are equal. */
export function between(before: string, after: string): Splice | null {
  if (before === after) return null;
  const most = Math.min(before.length, after.length);
  let from = 0;
  while (from < most && before[from] === after[from]) from += 1;
  let tail = 0;
  while (tail < most - from && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1;
  return { from, to: before.length - tail, insert: after.slice(from, after.length - tail) };
}

/** Adds an edit. Letters typed one after another within a second are one step. */
export function done(history: History, text: string, splices: readonly Splice[], typed: boolean, now: number): History {
  const edit: Edit = { forward: splices, back: inverse(text, splices), typed, at: now };
  const last = history.undo.at(-1);
  const joined = last !== undefined && typed && last.typed && now - last.at < 1000 ? join(last, edit) : null;
  const undo = joined === null ? [...history.undo, edit] : [...history.undo.slice(0, -1), joined];
  return { undo: undo.slice(-KEPT), redo: [] };
}

function join(a: Edit, b: Edit): Edit | null {
  const p = a.forward[0], q = b.forward[0];
  if (a.forward.length !== 1 || b.forward.length !== 1 || p === undefined || q === undefined) return null;
  if (q.from !== q.to || q.from !== p.from + p.insert.length || q.insert.includes('\n')) return null;
  const forward = { from: p.from, to: p.to, insert: p.insert + q.insert };
  const taken = a.back[0];
  if (taken === undefined) return null;
  return { forward: [forward], back: [{ from: p.from, to: p.from + forward.insert.length, insert: taken.insert }], typed: true, at: b.at };
}

export interface Moved { readonly text: string; readonly history: History; readonly caret: number }

export function undone(text: string, history: History): Moved | null {
  const edit = history.undo.at(-1);
  if (edit === undefined) return null;
  return { text: spliced(text, edit.back), history: { undo: history.undo.slice(0, -1), redo: [...history.redo, edit] }, caret: caretAfter(edit.back) };
}

export function redone(text: string, history: History): Moved | null {
  const edit = history.redo.at(-1);
  if (edit === undefined) return null;
  return { text: spliced(text, edit.forward), history: { undo: [...history.undo, edit], redo: history.redo.slice(0, -1) }, caret: caretAfter(edit.forward) };
}

function caretAfter(splices: readonly Splice[]): number {
  let shift = 0, at = 0;
  for (const s of inOrder(splices)) { at = s.from + shift + s.insert.length; shift += s.insert.length - (s.to - s.from); }
  return at;
}

/** The line that an edit is felt at, as its splices would leave it: what taking it back or doing it again brings. Empty for a line that goes. */
export function lineAfter(text: string, splices: readonly Splice[]): string {
  const first = inOrder(splices)[0];
  if (first === undefined) return '';
  const next = spliced(text, splices), from = next.slice(0, first.from).search(/[^\r\n]*$/);
  return /^[^\r\n]*/.exec(next.slice(from))?.[0].trim() ?? '';
}

/** Where a place in the text lies after splices. */
export function carried(place: number, splices: readonly Splice[]): number {
  let shift = 0;
  for (const s of inOrder(splices)) {
    if (s.to <= place) shift += s.insert.length - (s.to - s.from);
    else if (s.from < place) return s.from + shift + s.insert.length;
  }
  return place + shift;
}
