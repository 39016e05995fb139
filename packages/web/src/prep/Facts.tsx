import { factsOf, letterOf, sectionsOf } from '@washline/drawing';
import { createMemo, For, Show, type Accessor } from 'solid-js';
import { say, turn } from '../language/language.ts';
import type { Read } from '../read.ts';

/** What presses in preps and what stays in their cloths, as a list: on a phone, where the vessels have no room for words, and on paper. */
export function Facts(props: { readonly now: Accessor<Read> }) {
  const list = createMemo(() => {
    const { reading, document } = props.now();
    turn();
    return sectionsOf(document, reading.variant).filter((s) => s.kind === 'prep').flatMap((section, i) => {
      const prep = reading.preps[section.key];
      if (prep === undefined) return [];
      const { pressure, charged, caution, frozen, stays, held } = factsOf(prep);
      const lines = [pressure, charged, caution, frozen, stays === null ? null : say('facts.cloth', { lines: [stays, ...held].join('; ').replace(/:;/g, ':') })].filter((line) => line !== null);
      return lines.length === 0 ? [] : [{ letter: letterOf(i), name: section.name, lines }];
    });
  });
  return (
    <Show when={list().length > 0}>
      <section class="facts" aria-labelledby="facts">
        <h2 id="facts">{say('facts')}</h2>
        <dl><For each={list()}>{(prep) => (
          <div><dt><span class="letter">{prep.letter}</span>{prep.name}</dt><For each={prep.lines}>{(line) => <dd>{line}</dd>}</For></div>
        )}</For></dl>
      </section>
    </Show>
  );
}
