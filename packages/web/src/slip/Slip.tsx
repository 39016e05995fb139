import type { Document, Figure, Why } from '@washline/engine';
import type { Reading } from '../read.ts';
import { decimalsFor, leastDecimals, shown, spreadShown, unitShown } from '@washline/drawing';
import { For, Show, createEffect, createMemo, createResource, onCleanup, onMount, type Accessor } from 'solid-js';
import type { Pressed } from '../glass/Glass.tsx';
import { GRADE, inputWords, linesByPath, methodWords, nameOf } from './words.ts';

/** Why a figure is what it is: value, spread, grade, method, what it follows from, sources. A slip of the ruled sheet, one at a time. */
export function Slip(props: { readonly pressed: Pressed; readonly reading: Accessor<Reading>; readonly why: Accessor<Why | null>; readonly document: Accessor<Document>; readonly onClose: () => void }) {
  let slip!: HTMLElement;
  const figure = createMemo(() => figureOf(props.reading(), props.pressed));
  const [titles] = createResource(() => import('./sources.ts').then((m) => m.titles));
  const lines = createMemo(() => linesByPath(props.document()));
  const inputs = (): Why['inputs'] => [...(props.why()?.inputs ?? [])].filter((i) => i.share >= 0.005).sort((a, b) => b.share - a.share).slice(0, 8);
  const sources = (): string[] => [...new Set([...(figure()?.sources ?? []), ...inputs().map((i) => i.source)])];
  // The sources come a moment later, and the slip grows.
  createEffect(() => { titles(); queueMicrotask(() => { if (slip.isConnected) place(slip, props.pressed.at); }); });
  onMount(() => {
    place(slip, props.pressed.at);
    props.pressed.from.setAttribute('aria-expanded', 'true');
    slip.focus();
    const outside = (e: Event): void => { if (!slip.contains(e.target as Node)) props.onClose(); };
    const escape = (e: KeyboardEvent): void => { if (e.key === 'Escape') { e.preventDefault(); props.onClose(); } };
    const timer = setTimeout(() => document.addEventListener('pointerdown', outside), 0);
    document.addEventListener('keydown', escape);
    onCleanup(() => {
      clearTimeout(timer);
      document.removeEventListener('pointerdown', outside);
      document.removeEventListener('keydown', escape);
      props.pressed.from.removeAttribute('aria-expanded');
      props.pressed.from.focus({ preventScroll: true });
    });
  });
  return (
    <section class="slip" ref={slip} tabindex="-1" role="dialog" aria-label={`Why: ${nameOf(props.pressed.figure)}`} data-slip={props.pressed.figure}>
      <button type="button" class="close" aria-label="Close" onClick={() => props.onClose()}><svg width="12" height="12" aria-hidden="true"><path d="M1 1 11 11M11 1 1 11" stroke="currentColor" stroke-width="1.4" stroke-linecap="round" /></svg></button>
      <Show when={figure()} fallback={<p>This figure is not known for the text as it stands.</p>}>{(f) => (
        <>
          <h2>{nameOf(props.pressed.figure)} of {props.pressed.reading === 'drink' ? 'the whole drink' : props.pressed.reading.replace(/^prep:/, '')}</h2>
          <p class="value">{shown(f().value, decimals(f()))} {unitShown(f().unit)}<small>{spreadShown(f(), decimals(f()))}</small></p>
          <dl>
            <Show when={f().high > f().low}><div><dt>range</dt><dd>{shown(f().low, decimals(f()))} to {shown(f().high, decimals(f()))} {unitShown(f().unit)}, nineteen times in twenty</dd></div></Show>
            <div><dt>how sure</dt><dd>{GRADE[f().grade]}</dd></div>
            <div><dt>method</dt><dd>{methodWords(props.why()?.method ?? f().method)}</dd></div>
          </dl>
          <Show when={inputs().length > 0}>
            <ol class="inputs" aria-label="What moves it">
              <For each={inputs()}>{(input) => (
                <li>
                  <span class="what"><span>{inputWords(input.key, lines())}</span><span>{shown(input.value, decimalsFor(input.low, input.high))} {unitShown(input.unit)}</span></span>
                  <span class="share"><Span share={input.share} />{Math.round(input.share * 100)} % of the spread, {input.grade}</span>
                </li>
              )}</For>
            </ol>
          </Show>
          <Show when={sources().length > 0}><dl><div><dt>sources</dt><dd><For each={sources()}>{(key) => <div>{titles()?.get(key) ?? key}</div>}</For></dd></div></dl></Show>
        </>
      )}</Show>
    </section>
  );
}

/** At the end of the figure's leader: left of it where there is room, and inside the window. */
function place(slip: HTMLElement, at: DOMRect): void {
  const wide = document.documentElement.clientWidth, high = document.documentElement.clientHeight;
  const left = at.left - slip.offsetWidth - 16 >= 8 ? at.left - slip.offsetWidth - 16 : Math.min(at.right + 16, wide - slip.offsetWidth - 8);
  slip.style.left = `${left + scrollX}px`;
  slip.style.top = `${Math.min(Math.max(8, at.top - 16), Math.max(8, high - slip.offsetHeight - 8)) + scrollY}px`;
}

function decimals(f: Figure): number { return decimalsFor(f.low, f.high, leastDecimals(f.unit)); }

function figureOf(reading: Reading, pressed: Pressed): Figure | undefined {
  if (pressed.reading === 'drink') return pressed.figure === 'washline' ? reading.glass?.washline : reading.figures[pressed.figure];
  const prep = reading.preps[pressed.reading.replace(/^prep:/, '')];
  return pressed.figure === 'yield' ? prep?.yield : prep?.figures[pressed.figure];
}

/** A share as a dimension line. */
function Span(props: { readonly share: number }) {
  const w = (): number => 8 + props.share * 92;
  return <svg width={w()} height="9" aria-hidden="true"><path d={`M.5 0V9M${w() - 0.5} 0V9M1 4.5H${w() - 1}`} stroke="var(--ink3)" stroke-width=".7" fill="none" /><path d={`M1 4.5 6 3.2V5.8ZM${w() - 1} 4.5 ${w() - 6} 3.2V5.8Z`} fill="var(--ink)" /></svg>;
}
