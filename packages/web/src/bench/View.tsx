import { createEffect, createMemo, createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import MINE from '../../../../demo/my.bench?raw';
import { language, say, turn } from '../language/language.ts';
import type * as engine from '../read.ts';
import type { ViewProps } from '../views/view.ts';
import { ownOf } from './answer.ts';
import './bench.css';

/** So long after the last letter it is read, ms: a half-typed number would be read as another. */
const SETTLED_MS = 400;

/** What somebody owns and how well it measures, as a text of its own: kept on this device, read with every drink, written into none. */
export default function BenchView({ state }: ViewProps) {
  const [text, setText] = createSignal(state.bench());
  createEffect(() => {
    const next = text();
    if (next === state.bench()) return;
    const timer = setTimeout(() => state.setBench(next), SETTLED_MS);
    onCleanup(() => clearTimeout(timer));
  });
  onCleanup(() => { if (text() !== state.bench()) state.setBench(text()); });
  const problems = createMemo(() => { turn(); return text() === state.bench() ? state.now().benchProblems ?? [] : []; });
  const own = createMemo(() => ownOf(state.now()));
  // what may still be said: first what this very drink would take
  let editor!: HTMLTextAreaElement;
  const [may, setMay] = createSignal<Pick<typeof engine, 'benchLines' | 'rowsTaken' | 'withBenchLine'> | null>(null);
  onMount(() => { void import('../read.ts').then(({ benchLines, rowsTaken, withBenchLine }) => setMay({ benchLines, rowsTaken, withBenchLine })); });
  const all = createMemo(() => may()?.benchLines(text(), language()) ?? []);
  // asked anew with every reading
  const used = createMemo(() => { state.now(); return may()?.rowsTaken(); });
  const lines = createMemo(() => { const taken = all().filter(({ rows }) => rows.some((row) => used()?.has(row))); return { taken, others: all().filter((line) => !taken.includes(line)) }; });
  const add = (line: string): void => {
    const next = may()?.withBenchLine(text(), line);
    if (next === undefined) return;
    setText(next.text);
    editor.focus();
    editor.setSelectionRange(next.from, next.to);
  };
  const Lines = (of: { readonly head: string; readonly list: readonly { readonly text: string }[] }) => (
    <Show when={of.list.length > 0}><h3>{of.head}</h3><ul class="may"><For each={of.list}>{(line) => <li><button type="button" data-may onClick={() => add(line.text)}>{line.text}</button></li>}</For></ul></Show>
  );
  return (
    <section class="bench" id="bench" tabindex="-1" aria-labelledby="bench-head">
      <h2 id="bench-head">{say('bench')}</h2>
      <p>{say('bench.what')}</p>
      <textarea
        ref={editor} data-bench rows={Math.max(14, text().split('\n').length + 2)} spellcheck={false} autocapitalize="off" autocomplete="off" wrap="soft" aria-labelledby="bench-head" aria-describedby="bench-said"
        aria-invalid={problems().length > 0} value={text()} onInput={(e) => setText(e.currentTarget.value)}
      />
      <div id="bench-said" role="status">
        <Show when={problems().length > 0} fallback={<p>{text().trim() === '' ? say('bench.none') : own() === 0 ? say('bench.unused') : say(own() === 1 ? 'bench.one' : 'bench.many', { count: own() })}</p>}>
          <ul><For each={problems()}>{(p) => <li data-problem={p.code}><b>{say('bench.line', { line: p.where.line })}</b> {p.message}</li>}</For></ul>
        </Show>
      </div>
      <Show when={text().trim() === ''}><button type="button" onClick={() => setText(MINE)}>{say('bench.example')}</button></Show>
      <div class="offered">
        <Lines head={say('bench.takes')} list={lines().taken} />
        <Lines head={say('bench.may')} list={lines().others} />
      </div>
    </section>
  );
}
