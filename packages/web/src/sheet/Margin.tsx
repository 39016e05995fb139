import type { Splice } from '@washline/engine';
import { counted } from '@washline/drawing';
import { createEffect, createMemo, createSignal, For, Show, type Accessor } from 'solid-js';
import { presentRun } from '../hands/run.ts';
import { say } from '../language/language.ts';
import type { State } from '../state.ts';
import { measured } from './measured.ts';
import type { Row } from './rows.ts';
import { firstSentence } from './sentences.ts';

/** One thing found: at a line, or of the whole drink (null). */
export interface Entry {
  readonly key: string; readonly code: string; readonly severity: 'stop' | 'warn' | 'note' | 'problem';
  readonly message: string; readonly line: number | null;
  /** where the remedy would write, from 1; null where it writes elsewhere */
  readonly column: number | null;
  readonly odds: number | null;
  readonly fix: { readonly say: string; readonly splices: readonly Splice[] } | null;
}

/** Findings at their lines. Where two would meet, the later one moves down. */
export function Margin(props: { readonly entries: Accessor<readonly Entry[]>; readonly mirror: () => HTMLElement; readonly rows: Accessor<readonly Row[]>; readonly width: Accessor<number>; readonly state: State; readonly reserve: Accessor<Reserved | null> }) {
  let list!: HTMLOListElement;
  const keys = createMemo(() => props.entries().map(({ key }) => key)), byKey = createMemo(() => new Map(props.entries().map((e) => [e.key, e])));
  createEffect(() => {
    const entries = props.entries();
    const reserve = props.reserve();
    props.width(); props.rows(); props.state.hands();
    measured(() => settle(list, props.mirror(), entries, reserve));
  });
  return (
    <ol class="margin" ref={list} id="findings" aria-label={say('findings')} tabindex="-1">
      <For each={keys()}>{(key) => {
        // what is still found keeps its place in the page, with its focus, whatever its words are now
        const entry = createMemo<Entry>((last) => byKey().get(key) ?? last, byKey().get(key) as Entry), line = (): number | null => entry().line;
        return <Found entry={entry()} state={props.state} line={line() === null ? '' : props.rows()[(line() ?? 1) - 1]?.text ?? ''} onOpen={() => measured(() => settle(list, props.mirror(), props.entries(), props.reserve()))} />;
      }}</For>
    </ol>
  );
}

/** Room at a line for what is told of it: behind what was found there. */
export interface Reserved { readonly line: number; readonly node: HTMLElement }

/** Measures, and gives back what puts all in place. */
function settle(list: HTMLElement, mirror: HTMLElement, entries: readonly Entry[], reserve: Reserved | null): () => void {
  let free = 4, kept = reserve;
  const items = [...list.children] as HTMLElement[];
  const wide = getComputedStyle(list).position === 'absolute';
  const rowOf = (line: number | null): HTMLElement | undefined => (line === null ? undefined : mirror.children[line - 1] as HTMLElement | undefined);
  const tops = entries.map((e) => rowOf(e.line)?.offsetTop ?? 4), heights = items.map((i) => i.offsetHeight);
  const own = reserve === null ? undefined : rowOf(reserve.line), at = own?.offsetTop ?? 4, under = at + (own?.offsetHeight ?? 0), height = reserve?.node.offsetHeight ?? 0;
  const told = (): void => {
    if (kept === null) return;
    const top = wide ? Math.max(free, at + 2) : under;
    kept.node.style.top = `${top}px`;
    if (wide && height > 0) free = top + height + 8;
    kept = null;
  };
  return () => {
    for (const [i, item] of items.entries()) {
      if (kept !== null && (entries[i]?.line ?? 0) > kept.line) told();
      const top = Math.max(free, (tops[i] ?? 4) + 2);
      const said = wide ? `${top}px` : '';
      if (item.style.top !== said) item.style.top = said;
      free = top + (heights[i] ?? 0) + 8;
    }
    told();
  };
}

/** What is told of a line under the pointer moves nothing: it lies over what stands lower, behind what was found at its own line. */
export function lieOver(node: HTMLElement, line: number, mirror: HTMLElement, list: HTMLElement, entries: readonly Entry[]): () => void {
  const row = mirror.children[line - 1] as HTMLElement | undefined, items = [...list.children] as HTMLElement[];
  const found = entries.flatMap((e, i) => { const item = items[i]; return e.line === line && item !== undefined ? [item.offsetTop + item.offsetHeight + 4] : []; });
  const top = Math.max((row?.offsetTop ?? 4) + 2, ...found);
  return () => { node.style.top = `${top}px`; };
}

function Found(props: { readonly entry: Entry; readonly state: State; readonly line: string; readonly onOpen: () => void }) {
  const [open, setOpen] = createSignal(false);
  const said = (): { head: string; rest: string } => firstSentence(props.entry.message);
  const long = (): boolean => said().rest.length > 88;
  // of how many hands it is so; what is so of all of them or none needs no count
  const often = (): string => {
    const run = presentRun(props.state), found = run?.hands.findings.find((f) => f.code === props.entry.code && (f.line ?? null) === props.entry.line);
    return run === null || found === undefined || found.odds === 1 ? '' : say('hands.margin', { count: counted(found.odds * run.hands.makers), of: counted(run.hands.makers) });
  };
  const apply = (): void => { const { fix } = props.entry; if (fix !== null) props.state.apply(fix.splices); };
  return (
    <li class={`finding ${props.entry.severity}`} data-finding={props.entry.severity === 'problem' ? undefined : props.entry.code} data-problem={props.entry.severity === 'problem' ? props.entry.code : undefined}>
      <Show when={props.line !== ''}><span class="at">{props.line}</span></Show>
      <Mark severity={props.entry.severity} />
      <span class="head"><span class="aside">{say(props.entry.severity)}: </span>{said().head}</span>
      <Show when={often()}>{(count) => <span class="often">{count()}</span>}</Show>
      <Show when={said().rest !== ''}><p classList={{ cut: long() && !open() }}>{said().rest}</p></Show>
      <Show when={long()}><button type="button" class="more" aria-expanded={open()} onClick={() => { setOpen(!open()); queueMicrotask(props.onOpen); }}>{say(open() ? 'less' : 'more')}</button></Show>
      <Show when={props.entry.fix}>{(fix) => (
        <button type="button" class="fix" data-remedy={props.entry.code} onClick={apply}>
          <svg width="9" height="6" aria-hidden="true"><path d="M0.5 5.5 4.5 0.5 8.5 5.5" fill="none" stroke="currentColor" stroke-width="1.5" stroke-linecap="round" /></svg>{fix().say}
        </button>
      )}</Show>
    </li>
  );
}

/** A solid upright block, an open triangle, a dot on a leader: told apart without colour. */
function Mark(props: { readonly severity: Entry['severity'] }) {
  return (
    <svg class="mark" aria-hidden="true">
      <Show when={props.severity === 'stop' || props.severity === 'problem'}><rect x="3" y="-2" width="5.5" height="18" fill="var(--signal)" /></Show>
      <Show when={props.severity === 'warn'}><path d="M6 2 10.8 11.5H1.2Z" fill="none" stroke="var(--signal)" stroke-width="1.5" stroke-linejoin="round" /></Show>
      <Show when={props.severity === 'note'}><path d="M0 7H10" stroke="var(--ink2)" stroke-width=".8" /><circle cx="11" cy="7" r="2.4" fill="var(--ink)" /></Show>
    </svg>
  );
}
