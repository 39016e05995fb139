import { createMemo, Index, Show, type Accessor } from 'solid-js';
import { say, turn } from '../language/language.ts';
import type { Read } from '../read.ts';
import { factsIn } from './facts.ts';

/** What presses in preps and what stays in their cloths, as a list: on a phone, where the vessels have no room for words. */
export function Facts(props: { readonly now: Accessor<Read> }) {
  const list = createMemo(() => { turn(); return factsIn(props.now()); });
  return (
    <Show when={list().length > 0}>
      <section class="facts" aria-labelledby="facts">
        <h2 id="facts">{say('facts')}</h2>
        <dl><Index each={list()}>{(prep) => (
          <div><dt><span class="letter">{prep().letter}</span>{prep().name}</dt><Index each={prep().lines}>{(line) => <dd>{line()}</dd>}</Index></div>
        )}</Index></dl>
      </section>
    </Show>
  );
}
