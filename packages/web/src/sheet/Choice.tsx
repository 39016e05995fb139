import type { Completions } from '@washline/spec';
import { createEffect, createSignal, For, Show, type JSX } from 'solid-js';
import '../style/choice.css';
import { language, say } from '../language/language.ts';
import type * as engine from '../read.ts';
import type { State } from '../state.ts';
import { kindOf } from './kinds.ts';
import { letterAt } from './place.ts';
import { lineAt } from './typing.ts';

export interface Choice {
  /** after a letter: what may be meant */
  typed(): void;
  /** true where the key was for the list */
  key(event: KeyboardEvent): boolean;
  close(): void;
  /** the caret went elsewhere than where the list was asked for */
  moved(): void;
  /** the id of the list and of its active row, null where there is none */
  readonly list: () => string | null;
  readonly active: () => string | null;
  readonly view: JSX.Element;
}
interface Given { readonly state: State; readonly complete: typeof engine.complete; readonly editor: HTMLTextAreaElement; readonly mirror: HTMLElement; readonly taken: (line: number) => void }

/** As many rows as leave the sheet in sight: fewer, taller ones under a thumb. */
const rowsAtMost = (): number => (matchMedia('(max-width: 699px)').matches ? 4 : 8);

/** So long after the frame of a letter, ms: its ranges come first. */
const AFTER_MS = 20;

/** What may be meant by the words before the caret, in a list at them. It never stands over the line that is typed. */
export function makeChoice({ state, complete, editor, mirror, taken }: Given): Choice {
  const [found, setFound] = createSignal<Completions | null>(null);
  const [active, setActive] = createSignal<number | null>(null);
  let list: HTMLUListElement | undefined, asked = -1, composing = false, waiting = 0, after = 0;
  editor.addEventListener('compositionstart', () => { composing = true; close(); });
  editor.addEventListener('compositionend', () => { composing = false; });
  const rest = (): void => { cancelAnimationFrame(waiting); clearTimeout(after); waiting = after = 0; };
  const close = (): void => { rest(); setFound(null); setActive(null); };
  const ask = (all: boolean): void => {
    const { selectionStart: at, selectionEnd } = editor;
    if (composing || at !== selectionEnd || document.activeElement !== editor) { close(); return; }
    asked = at;
    const next = complete(state.now(), at, language(), rowsAtMost(), all);
    // Enter ends a line until a row is chosen: the list is in nobody's way who did not ask for it
    setActive(next !== null && all ? 0 : null);
    setFound(next);
  };
  /** The frame of a letter belongs to the drawing: what may be meant comes after it, unless a key asks for it before. */
  const later = (): void => { rest(); waiting = requestAnimationFrame(() => { after = window.setTimeout(due, AFTER_MS); }); };
  const due = (): void => { if (waiting === 0) return; rest(); ask(false); };
  const take = (n: number): void => {
    const now = found(), one = now?.list[n];
    if (now === null || one === undefined) return;
    close();
    // the splice leaves out what stands already: what was typed stays where it is right
    state.apply([{ from: now.from, to: one.to, insert: one.insert }], one.to);
    editor.focus({ preventScroll: true });
    taken(lineAt(state.text(), now.from));
  };
  const put = (): void => {
    const now = found(), rows = mirror.parentElement;
    if (now === null || list === undefined || rows === null) return;
    const text = state.text(), line = lineAt(text, asked), start = text.lastIndexOf('\n', asked - 1) + 1;
    const row = mirror.children[line - 1] as HTMLElement | undefined;
    if (row === undefined) return;
    const at = letterAt(row, asked - start + 1), begin = letterAt(row, now.from - start + 1) ?? at, own = rows.getBoundingClientRect(), side = rows.parentElement?.getBoundingClientRect() ?? own;
    if (at === null || begin === null) return;
    const { width, height } = list.getBoundingClientRect(), view = visualViewport, bottom = Math.min(view === null ? innerHeight : view.offsetTop + view.height, matchMedia('(min-width: 1100px)').matches ? side.bottom : Infinity);
    const whole = row.getBoundingClientRect(), above = whole.bottom + height + 4 > bottom && whole.top - height - 4 > (view?.offsetTop ?? 0);
    const left = Math.max(0, Math.min((Math.abs(begin.top - at.top) < 2 ? begin.left : own.left + 20) - own.left - 9, side.width - width - 10));
    list.style.left = `${left}px`;
    list.style.top = `${above ? whole.top - own.top - height - 3 : whole.bottom - own.top + 3}px`;
  };
  createEffect(() => { if (found() !== null) queueMicrotask(put); });
  const idOf = (n: number | null): string | null => (n === null ? null : `choice-${n}`);
  return {
    close,
    typed: later,
    moved: () => { if (found() !== null && (editor.selectionStart !== asked || document.activeElement !== editor)) close(); },
    key(event) {
      if (event.isComposing || composing) return false;
      due();
      if (event.ctrlKey && event.key === ' ') { ask(true); return true; }
      const now = found();
      if (now === null || event.ctrlKey || event.metaKey || event.altKey) return false;
      const count = now.list.length, at = active();
      switch (event.key) {
        case 'ArrowDown': setActive(at === null ? 0 : (at + 1) % count); return true;
        case 'ArrowUp': setActive(at === null ? count - 1 : (at + count - 1) % count); return true;
        case 'Enter': if (at === null || event.shiftKey) { close(); return false; } take(at); return true;
        case 'Tab': if (event.shiftKey) { close(); return false; } take(at ?? 0); return true;
        case 'Escape': close(); return true;
        default: return false;
      }
    },
    list: () => (found() === null ? null : 'choice'),
    active: () => (found() === null ? null : idOf(active())),
    view: <>
      <Show when={found()}>{(now) => (
        <ul class="choice" role="listbox" id="choice" aria-label={say('choice')} ref={(node) => { list = node; }} onPointerDown={(e) => e.preventDefault()} onMouseDown={(e) => e.preventDefault()}>
          <For each={now().list}>{(one, n) => (
            <li role="option" id={`choice-${n()}`} aria-selected={active() === n()} onClick={() => take(n())}><b>{one.name}</b> <span>{kindOf(one, language())}</span></li>
          )}</For>
        </ul>
      )}</Show>
      <p class="aside" role="status">{found() === null ? '' : say('choice.open', { count: found()?.list.length ?? 0 })}</p>
    </>,
  };
}
