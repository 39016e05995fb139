import './card.css';
import { outerSize, type Drawable } from '@washline/drawing';
import { createMemo, For, Show, type Accessor } from 'solid-js';
import { say, turn } from '../language/language.ts';
import { factsIn } from '../prep/facts.ts';
import type { Entry } from '../sheet/Margin.tsx';
import { rowsOf, type Row } from '../sheet/rows.ts';
import { firstSentence } from '../sheet/sentences.ts';
import type { State } from '../state.ts';
import { settingOf, SHEET, type Said } from './fit.ts';

/** Above the glass stand vessels or what dresses it, below it the figures of the whole drink, mm. */
const ABOVE = { preps: 58, none: 34 }, BELOW = 27;
const LEAST = 120, MOST = 214;

/** How high the drawing is on paper, mm: as much as the glass asks for at true size. */
export function paperHeight(reading: Pick<Drawable, 'glass' | 'preps' | 'stages'>): number {
  const preps = Object.keys(reading.preps).length > 0 || reading.stages.length > 0;
  return Math.min(MOST, Math.max(LEAST, (reading.glass === null ? 80 : outerSize(reading.glass).height) + (preps ? ABOVE.preps : ABOVE.none) + BELOW));
}

/** What stands on paper below the drawing: the spec, what was found, what presses and what stays, in columns so that the sheet holds it. */
export function Card(props: { readonly state: State; readonly entries: Accessor<readonly Entry[]> }) {
  const rows = createMemo<Row[]>(() => rowsOf(props.state.text().trimEnd(), props.state.now().document, props.state.now().reading.variant).filter((row) => row.kind !== 'name'));
  const facts = createMemo(() => { turn(); return factsIn(props.state.now()); });
  const found = createMemo(() => props.entries().map((e) => ({ ...e, at: e.line === null ? '' : (props.state.text().split(/\r\n|\r|\n/)[e.line - 1] ?? '').trim(), ...firstSentence(e.message) })));
  const words = (e: ReturnType<typeof found>[number]): string => [e.at === '' ? '' : `${e.at} –`, `${e.head}${/[.:?!]$/.test(e.head) ? '' : '.'}`, e.rest].filter((part) => part !== '').join(' ');
  const setting = createMemo(() => {
    const said: Said[] = rows().map(({ text, kind }) => ({ text, kind }));
    if (found().length > 0) said.push({ text: say('findings'), kind: 'head' }, ...found().map((e): Said => ({ text: words(e), kind: 'told' })));
    if (facts().length > 0) said.push({ text: say('facts'), kind: 'head' }, ...facts().map((f): Said => ({ text: `${f.name}: ${f.lines.join('. ')}`, kind: 'told' })));
    return settingOf(said, SHEET.height - SHEET.title - SHEET.gap - paperHeight(props.state.now().reading));
  });
  return (
    <section class="on-paper" data-whole={setting().whole} style={{ '--size': `${setting().size}pt`, '--leading': `${setting().leading}pt`, '--columns': String(setting().columns) }}>
      <For each={rows()}>{(row) => <Line row={row} />}</For>
      <Show when={found().length > 0}>
        <h2>{say('findings')}</h2>
        <For each={found()}>{(e) => <p class={`told ${e.severity}`}><b>{say(e.severity)}</b> {words(e)}</p>}</For>
      </Show>
      <Show when={facts().length > 0}>
        <h2>{say('facts')}</h2>
        <For each={facts()}>{(f) => <p class="told"><b>{f.letter} {f.name}</b> {f.lines.join('. ')}</p>}</For>
      </Show>
    </section>
  );
}

function Line(props: { readonly row: Row }) {
  const { row } = props, from = Math.max(0, row.text.indexOf(row.strong)), key = row.text.indexOf(':') + 1;
  if (row.kind === 'blank') return <p class="blank" />;
  // the letter stands at the end of the first line, however many there are: it floats there
  if (row.kind === 'heading') return <p class="heading"><Show when={row.letter !== ''}><span class="letter">{row.letter}</span></Show>{row.text.slice(0, from)}<b>{row.strong}</b>{row.text.slice(from + row.strong.length)}</p>;
  return <p class={row.kind}><Show when={row.kind === 'key'} fallback={row.text}><i>{row.text.slice(0, key)}</i>{row.text.slice(key)}</Show></p>;
}
