import { createEffect, createMemo, createSignal, For, Show, type Accessor } from 'solid-js';
import '../style/note.css';
import english from '../../../../messages/en/assumed.json';
import { language, say, turn } from '../language/language.ts';
import type * as engine from '../read.ts';
import type { State } from '../state.ts';
import type { Told } from './told.ts';

/** So many assumptions before the rest is asked for. */
const FIRST = 2;
let german: Readonly<Record<string, string>> | null = null;
const [learnt, setLearnt] = createSignal(0);
function sentences(): Readonly<Record<string, string>> {
  learnt();
  if (language() === 'de' && german === null) void import('../../../../messages/de/assumed.json').then((all) => { german = all.default; return setLearnt(1); });
  return language() === 'de' && german !== null ? german : english;
}
/** What is told of a line now; null while nothing is. */
export function toldHere({ toldOf, wordsIn }: Pick<typeof engine, 'toldOf' | 'wordsIn'>, state: State, line: Accessor<number | null>): Accessor<Told | null> {
  return createMemo<Told | null>(() => {
    const at = line();
    turn();
    const values = wordsIn(language());
    return at === null ? null : toldOf(state.now(), at, { language: language(), sentences: sentences(), named: (word) => values[word] ?? word });
    // what says the same is the same: a button that has the focus stays
  }, null, { equals: (a, b) => JSON.stringify(a) === JSON.stringify(b) });
}

/** What a line was understood as and what was assumed for it, with the words that would replace it: pressed, they are written. */
export function Note(props: { readonly told: Told; readonly state: State; readonly onGrown: () => void; readonly hovered?: boolean }) {
  const [open, setOpen] = createSignal(false);
  createEffect((before: number | undefined) => { const { line } = props.told; if (line !== before) setOpen(false); return line; });
  const shown = (): Told['assumed'] => (open() ? props.told.assumed : props.told.assumed.slice(0, FIRST));
  createEffect(() => { shown(); queueMicrotask(props.onGrown); });
  const left = (): number => props.told.assumed.length - FIRST;
  const apply = (splices: Told['assumed'][number]['splices']): void => { props.state.apply(splices); document.getElementById('spec')?.focus({ preventScroll: true }); };
  return (
    <>
      <For each={props.told.read}>{(one, i) => <p class="read"><Show when={i() === 0}><span>{say('read.as')} </span></Show>{one}</p>}</For>
      <Show when={shown().length > 0}>
        <p class="assumed">{say('read.assumed')}</p>
        <ul>
          <For each={shown()}>{(one) => (
            <li>{one.what}<Show when={one.words !== '' && one.splices.length > 0} fallback={<Show when={one.words !== ''}><span class="words">{one.words}</span></Show>}>
              <button type="button" class="fix" onClick={() => apply(one.splices)}><svg width="9" height="6" aria-hidden="true"><path d="M0.5 5.5 4.5 0.5 8.5 5.5" fill="none" stroke="currentColor" stroke-width="1.5" stroke-linecap="round" /></svg><span class="aside">{say('read.write')} </span>{one.words}</button>
            </Show></li>
          )}</For>
        </ul>
        <Show when={left() > 0}><Show when={!props.hovered} fallback={<p>{say('read.left', { count: left() })}</p>}><button type="button" class="more" aria-expanded={open()} onClick={() => setOpen(!open())}>{open() ? say('less') : say('read.left', { count: left() })}</button></Show></Show>
      </Show>
    </>
  );
}
