import { createEffect, createMemo, createSignal, getOwner, Index, runWithOwner, Show, onMount, type Accessor } from 'solid-js';
import { between, carried } from '../history.ts';
import { say } from '../language/language.ts';
import type * as engine from '../read.ts';
import type { State } from '../state.ts';
import type { Choice } from './Choice.tsx';
import { lieOver, Margin, type Entry, type Reserved } from './Margin.tsx';
import type * as notes from './Note.tsx';
import { linesOfPart, nearPart, setNearLine } from './near.ts';
import { measured } from './measured.ts';
import { letterAt } from './place.ts';
import { rowsOf, type Row } from './rows.ts';
import type { Told } from './told.ts';
import { Turns } from './Turns.tsx';
import { lineAt, typedLine, type Hold } from './typing.ts';

/** The spec as a ruled sheet: one text area, its mirror that sets headings and marks, and a margin with what was found at each line. */
export function Sheet(props: { readonly state: State; readonly entries: Accessor<readonly Entry[]>; readonly hold: Hold }) {
  let editor!: HTMLTextAreaElement, mirror!: HTMLDivElement;
  const { state } = props;
  const [line, setLine] = createSignal<number | null>(null);
  const [hovered, setHovered] = createSignal<number | null>(null);
  const [width, setWidth] = createSignal(0);
  const rows = createMemo<readonly Row[]>((before) => rowsOf(state.text(), state.now().document, state.now().reading.variant, before), []);
  // where a remedy would write, by line: the first of each
  const columns = createMemo(() => { const at = new Map<number, number>(); for (const e of props.entries()) if (e.line !== null && e.column !== null && !at.has(e.line)) at.set(e.line, e.column); return at; });
  const marks = createMemo(() => {
    const at = new Map<number, 'stop' | 'warn'>();
    for (const e of props.entries()) if (e.line !== null && e.severity !== 'note' && at.get(e.line) !== 'stop') at.set(e.line, e.severity === 'warn' ? 'warn' : 'stop');
    return at;
  });
  // a line looked at stands out in the drawing, a vessel looked at here
  createEffect(() => setNearLine(hovered() ?? line()));
  createEffect(() => { document.documentElement.classList.toggle('typing', props.hold.line() !== null); });
  const of = createMemo(() => { const part = nearPart(), { document: spec, reading } = state.now(); return part === null ? [] : linesOfPart(spec, reading.variant, part); });
  const edges = (n: number): string => { const lines = of(); return lines.includes(n) ? `${lines.includes(n - 1) ? '' : ' of-first'}${lines.includes(n + 1) ? '' : ' of-last'}` : ''; };
  const whereCaret = (): void => {
    if (document.activeElement?.closest('.turns') != null) return;
    setLine(document.activeElement === editor ? lineAt(editor.value, editor.selectionStart) : null);
    if (line() !== null) setNoteOf(line());
    props.hold.caretAt(line());
    choice()?.moved();
  };
  // what may be meant comes over the line when someone goes to the text
  const [choice, setChoice] = createSignal<Choice | null>(null), owner = getOwner();
  // what a line was understood as: the caret's line, or the one a button of its note is in; and the line under the pointer
  const [noteOf, setNoteOf] = createSignal<number | null>(null);
  const [noted, setNoted] = createSignal<{ readonly here: Accessor<Told | null>; readonly over: Accessor<Told | null>; readonly Note: typeof notes.Note } | null>(null);
  const [free, setFree] = createSignal<typeof engine.fromFree | null>(null);
  let noteBox!: HTMLDivElement, overBox!: HTMLDivElement;
  const reserve = createMemo<Reserved | null>(() => { const told = noted()?.here() ?? null; return told === null ? null : { line: told.line, node: noteBox }; }, null, { equals: false });
  const [grown, setGrown] = createSignal(0);
  createEffect(() => { const told = noted()?.over() ?? null; if (told !== null) { const list = overBox.closest('.scroll')?.querySelector<HTMLElement>('.margin'); if (list != null) measured(() => lieOver(overBox, told.line, mirror, list, props.entries())); } });
  let fetched = false;
  const fetchAll = async (): Promise<void> => {
    if (fetched) return;
    fetched = true;
    try {
      const [{ complete, fromFree, toldOf, wordsIn }, { makeChoice }, { Note, toldHere }] = await Promise.all([import('../read.ts'), import('./Choice.tsx'), import('./Note.tsx')]);
      // of a line that is being typed nothing is said
      const here = (): number | null => { const at = noteOf(); return at === props.hold.line() ? null : at; }, over = (): number | null => (hovered() === here() ? null : hovered());
      setFree(() => fromFree);
      setNoted(() => runWithOwner(owner, () => ({ Note, here: toldHere({ toldOf, wordsIn }, state, here), over: toldHere({ toldOf, wordsIn }, state, over) })) ?? null);
      setChoice(() => runWithOwner(owner, () => makeChoice({ state, complete, editor, mirror, taken: (at) => { props.hold.typed(at); } })) ?? null);
    } catch { fetched = false; }
  };
  /** The line under a pointer that can hover, from 1. */
  const over = (e: PointerEvent): void => {
    if (e.pointerType !== 'mouse') return;
    void fetchAll();
    const y = e.clientY - mirror.getBoundingClientRect().top, rows = mirror.children;
    let low = 0, high = rows.length - 1;
    while (low < high) { const middle = (low + high + 1) >> 1; if ((rows[middle] as HTMLElement).offsetTop <= y) low = middle; else high = middle - 1; }
    setHovered(rows.length === 0 ? null : low + 1);
  };
  const left = (e: FocusEvent): void => { if (!(e.currentTarget as HTMLElement).contains(e.relatedTarget as Node | null)) setNoteOf(null); };
  const typed = (text: string): void => {
    props.hold.typed(typedLine(state.text(), text, editor.selectionStart));
    state.type(text);
    whereCaret();
  };

  onMount(() => {
    new ResizeObserver(() => setWidth(mirror.clientWidth)).observe(mirror);
    document.addEventListener('selectionchange', whereCaret);
  });
  // The text area follows changes made elsewhere; its selection stays at the same letters.
  createEffect(() => {
    const text = state.text();
    if (editor.value === text) return;
    const { selectionStart, selectionEnd } = editor, splice = between(editor.value, text), splices = splice === null ? [] : [splice];
    editor.value = text;
    editor.setSelectionRange(carried(selectionStart, splices), carried(selectionEnd, splices));
  });
  createEffect(() => {
    const at = state.caret();
    if (at === null) return;
    queueMicrotask(() => { editor.setSelectionRange(at, at); whereCaret(); });
  });
  const key = (e: KeyboardEvent): void => {
    asIs = e.shiftKey;
    if (choice()?.key(e) === true) { e.preventDefault(); return; }
    const command = e.ctrlKey || e.metaKey, at = line();
    // Alt and an arrow turn the amount of the caret's line by a step of its jigger
    if (e.altKey && !command && (e.key === 'ArrowUp' || e.key === 'ArrowDown') && at !== null) { if (state.turnLine(at, e.key === 'ArrowUp' ? 1 : -1, e.shiftKey)) e.preventDefault(); return; }
    if (!command || e.altKey) return;
    const z = e.key.toLowerCase() === 'z';
    if (z && !e.shiftKey) { e.preventDefault(); state.undo(); }
    else if ((z && e.shiftKey) || e.key.toLowerCase() === 'y') { e.preventDefault(); state.redo(); }
  };
  // a recipe as anybody writes it becomes the text of a spec; a spec, and what is pasted with Shift held, stays as it is
  const [pasted, setPasted] = createSignal(false);
  let asIs = false;
  const paste = (e: ClipboardEvent): void => {
    const text = e.clipboardData?.getData('text/plain') ?? '', { selectionStart: from, selectionEnd: to } = editor, all = state.text();
    const whole = all.slice(0, from).trim() === '' && all.slice(to).trim() === '';
    setPasted(false);
    choice()?.close();
    if (asIs || !text.trim().includes('\n') && !/[.;]\s/.test(text) || (!whole && all.slice(all.lastIndexOf('\n', from - 1) + 1, from).trim() !== '')) return;
    const put = (insert: string): void => { state.apply([{ from, to, insert }], to); };
    const made = free();
    if (made !== null) { const spec = made(text, { whole }); if (spec !== null) { e.preventDefault(); put(spec); setPasted(true); } return; }
    e.preventDefault();
    void import('../read.ts').then(({ fromFree }) => { const spec = fromFree(text, { whole }); put(spec ?? text); return setPasted(spec !== null); });
  };
  const before = (e: InputEvent): void => {
    if (e.inputType === 'historyUndo') { e.preventDefault(); state.undo(); }
    if (e.inputType === 'historyRedo') { e.preventDefault(); state.redo(); }
  };
  return (
    <div class="scroll" onScroll={(e) => { e.currentTarget.dataset['moved'] = String(e.currentTarget.scrollTop > 2); }} classList={{ 'editing-name': line() !== null && rows()[(line() ?? 1) - 1]?.kind === 'name' }}>
      <Margin entries={props.entries} mirror={() => mirror} rows={rows} width={width} state={state} reserve={() => { grown(); return reserve(); }} />
      <div class="rows" onFocusOut={left}>
        <div class="mirror" ref={mirror} aria-hidden="true">
          <Index each={rows()}>{(row, i) => {
            // written only where it is another: there are as many as lines, and each is asked at every change
            const dress = createMemo(() => `row ${row().kind} ${marks().get(i + 1) ?? ''}${(line() === i + 1 || state.turned() === i + 1) && row().kind !== 'blank' && row().kind !== 'name' ? ' here' : ''}${edges(i + 1)}`);
            return <div class={dress()}><Set row={row()} /><Caret column={columns().get(i + 1) ?? null} text={row().text} width={width} /></div>;
          }}</Index>
        </div>
        <textarea
          class="editor" ref={editor} data-editor id="spec" aria-label={say('spec.the')} aria-describedby="spec-how spec-line" spellcheck={false} autocapitalize="off" autocomplete="off" wrap="soft"
          aria-autocomplete="list" aria-haspopup="listbox" aria-controls={choice()?.list() ?? undefined} aria-activedescendant={choice()?.active() ?? undefined}
          onInput={(e) => { typed(e.currentTarget.value); if (e.isComposing || !/^(insertText|delete|insertCompositionText)/.test(e.inputType)) choice()?.close(); else choice()?.typed(); }} onKeyDown={key} onKeyUp={() => { asIs = false; }} onPaste={paste} onBeforeInput={before} onFocus={() => { whereCaret(); void fetchAll(); }} onBlur={(e) => { if ((e.relatedTarget as Element | null)?.closest('.turns') == null) whereCaret(); }} onPointerMove={over} onPointerLeave={() => setHovered(null)}
        />
        {choice()?.view}
        <Turns state={state} line={line} rows={rows} width={width} mirror={() => mirror} />
        <div class="told-of" id="spec-line" ref={noteBox}><Show when={noted()?.here()}>{(told) => <Show when={noted()} keyed>{({ Note }) => <Note told={told()} state={state} onGrown={() => setGrown(grown() + 1)} />}</Show>}</Show></div>
        <div class="told-of over" aria-hidden="true" ref={overBox}><Show when={noted()?.over()}>{(told) => <Show when={noted()} keyed>{({ Note }) => <Note told={told()} state={state} onGrown={() => undefined} hovered />}</Show>}</Show></div>
      </div>
      <p class="aside" role="status" data-pasted>{pasted() ? say('pasted') : ''}</p>
      <p class="aside" id="spec-how">{say('spec.how')}</p>
    </div>
  );
}

function Set(props: { readonly row: Row }) {
  const key = (): number => props.row.text.indexOf(':') + 1;
  const from = (): number => Math.max(0, props.row.text.indexOf(props.row.strong));
  return (
    <Show when={props.row.kind === 'heading' || props.row.kind === 'key'} fallback={props.row.text === '' ? '\u200B' : props.row.text}>
      <Show when={props.row.kind === 'heading'} fallback={<><i>{props.row.text.slice(0, key())}</i>{props.row.text.slice(key())}</>}>
        {props.row.text.slice(0, from())}<b>{props.row.strong}</b>{props.row.text.slice(from() + props.row.strong.length)}
        <Show when={props.row.letter !== ''}><span class="letter">{props.row.letter}</span></Show>
      </Show>
    </Show>
  );
}

/** The proof-reader's caret under the place where a remedy would write, a column from 1; none where nothing would. */
function Caret(props: { readonly column: number | null; readonly text: string; readonly width: Accessor<number> }) {
  return (
    <Show when={props.column !== null}>
      {(() => {
        let node!: HTMLSpanElement;
        createEffect(() => {
          const column = props.column ?? 1;
          void props.text; props.width();
          measured(() => placed(node, column));
        });
        return <span class="caret" ref={node}><svg width="9" height="6" aria-hidden="true"><path d="M0.5 5.5 4.5 0.5 8.5 5.5" fill="none" stroke="currentColor" stroke-width="1.4" stroke-linecap="round" /></svg></span>;
      })()}
    </Show>
  );
}

/** Measures where a caret belongs, and gives back what puts it there. */
function placed(node: HTMLElement, column: number): () => void {
  const row = node.parentElement, at = row === null ? null : letterAt(row, column), own = row?.getBoundingClientRect();
  return () => { if (at !== null && own !== undefined) { node.style.left = `${at.left - own.left - 4}px`; node.style.bottom = 'auto'; node.style.top = `${at.bottom - own.top - 3}px`; } };
}
