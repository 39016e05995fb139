import type { Figure } from '@washline/engine';
import type { SaidInput, SaidWhy } from '@washline/spec';
import type { Reading } from '../read.ts';
import { decimalsFor, factsOf, inUnits, leastDecimals, shown, spreadShown, unitShown } from '@washline/drawing';
import { For, Show, createEffect, createMemo, createResource, onCleanup, onMount, type Accessor } from 'solid-js';
import type { Pressed } from '../glass/Glass.tsx';
import { say, turn } from '../language/language.ts';
import { nameOf } from './words.ts';

type Drawn = Pick<Reading, 'figures' | 'preps' | 'glass'>;

/** Why a figure is what it is: value, spread, grade, method, what it follows from, sources. A slip of the ruled sheet, one at a time. */
export function Slip(props: { readonly pressed: Pressed; /** of the moment that is drawn, `minutes` after pouring */ readonly reading: Accessor<Drawn>; readonly minutes: Accessor<number>; readonly why: Accessor<SaidWhy | null>; readonly onClose: () => void }) {
  let slip!: HTMLElement;
  const figure = createMemo(() => figureIn(props.reading(), props.pressed));
  const [behind] = createResource(() => import('./sources.ts'));
  /** both ends of what a figure would narrow to, in the units it is shown in */
  const narrow = (one: { readonly low: number; readonly high: number }) => inUnits({ value: one.low, low: one.low, high: one.high, unit: figureOf(props.reading(), props.pressed)?.unit ?? '' });
  const pressed = (): boolean => props.pressed.figure === 'pressure';
  const caution = (): string | null => { const prep = props.reading().preps[props.pressed.reading.replace(/^prep:/, '')]; return prep === undefined ? null : factsOf(prep).caution; };
  const inputs = (): readonly SaidInput[] => (props.why()?.inputs ?? []).filter((i) => i.share >= 0.005).slice(0, 8);
  const title = (key: string): string => behind()?.tables.title(key) ?? key;
  const rowOf = (input: SaidInput): string => {
    const place = input.source === 'bench' ? null : behind()?.placeOfRow(input.row);
    return place ? say('slip.row', { ...place, title: title(input.source) }) : say(input.source === 'bench' ? 'slip.bench' : 'slip.written');
  };
  const sources = (): string[] => [...new Set([...(props.why()?.model?.sources ?? []), ...(figure()?.sources ?? [])])];
  // The sources come a moment later, and the slip grows.
  createEffect(() => { behind(); props.why(); queueMicrotask(() => { if (slip.isConnected) place(slip, props.pressed.at); }); });
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
    <section class="slip" ref={slip} tabindex="-1" role="dialog" aria-label={say('slip.why', { figure: nameOf(props.pressed.figure) })} data-slip={props.pressed.figure}>
      <button type="button" class="close" aria-label={say('slip.close')} onClick={() => props.onClose()}><svg width="12" height="12" aria-hidden="true"><path d="M1 1 11 11M11 1 1 11" stroke="currentColor" stroke-width="1.4" stroke-linecap="round" /></svg></button>
      <Show when={figure()} fallback={<p>{say('slip.unknown')}</p>}>{(f) => (
        <>
          <h2>{say('slip.of', { figure: nameOf(props.pressed.figure), what: props.pressed.reading === 'drink' ? say('slip.drink') : props.pressed.reading.replace(/^prep:/, '') })}</h2>
          <p class="value">{shown(f().value, decimals(f()))} {unitShown(f().unit)}<small>{spreadShown(f(), decimals(f()))}</small></p>
          <Show when={props.minutes() > 0 && props.pressed.reading === 'drink'}><p>{say('slip.then', { minutes: props.minutes() })}</p></Show>
          <Show when={pressed() ? caution() : null}>{(words) => <p class="caution">{words()}</p>}</Show>
          <dl>
            <Show when={f().high > f().low}><div><dt>{say('slip.range')}</dt><dd>{say('slip.range.said', { low: shown(f().low, decimals(f())), high: shown(f().high, decimals(f())), unit: unitShown(f().unit) })}</dd></div></Show>
            <div><dt>{say('slip.sure')}</dt><dd>{say(`grade.${f().grade}`)}</dd></div>
            <div><dt>{say('slip.method')}</dt><dd>{props.why()?.says ?? ''}<Show when={(props.why()?.model?.data.length ?? 0) > 0}><span class="stands">{say('slip.fixed', { files: props.why()!.model!.data.join(', ') })}</span></Show></dd></div>
          </dl>
          <Show when={inputs().length > 0}>
            <ol class="inputs" aria-label={say('slip.moves')}>
              <For each={inputs()}>{(input) => (
                <li>
                  <span class="what"><span>{input.words}</span><span>{valueOf(input)}</span></span>
                  <span class="share"><Span share={input.share} />{say('slip.share', { share: Math.round(input.share * 100), grade: say(`short.${input.grade}`) })}</span>
                  <span class="stands" data-row={input.row}>{rowOf(input)}</span>
                </li>
              )}</For>
            </ol>
          </Show>
          <For each={props.why()?.narrow ?? []}>{(one, at) => <p class="narrow" data-narrow={one.key}>{say(one.by > 0.999 ? 'slip.narrow.all' : at() === 0 ? 'slip.narrow' : 'slip.narrow.mine', { words: one.words, low: shown(narrow(one).low, decimals(f())), high: shown(narrow(one).high, decimals(f())), unit: unitShown(f().unit), by: Math.round(one.by * 100) })} {one.say === '' ? say('slip.do', { do: one.do }) : say('slip.write', { say: one.say, do: one.do })}</p>}</For>
          <Show when={sources().length > 0}><dl><div><dt>{say('slip.sources')}</dt><dd><For each={sources()}>{(key) => <div>{behind()?.tables.cite(key) ?? key}</div>}</For></dd></div></dl></Show>
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

/** The figure in the units it is shown in. */
function figureIn(reading: Drawn, pressed: Pressed): Figure | undefined { turn(); const figure = figureOf(reading, pressed); return figure === undefined ? undefined : inUnits(figure); }

function figureOf(reading: Drawn, pressed: Pressed): Figure | undefined {
  if (pressed.reading === 'drink') return pressed.figure === 'washline' ? reading.glass?.washline : reading.figures[pressed.figure];
  const prep = reading.preps[pressed.reading.replace(/^prep:/, '')];
  return pressed.figure === 'yield' ? prep?.yield : pressed.figure === 'cloth mass' ? prep?.cloth?.mass : prep?.figures[pressed.figure];
}

/** A factor about 1 stands on the cell it is of; all else has its number. */
function valueOf(input: SaidInput): string {
  const { value, low, high, unit } = inUnits(input), digits = decimalsFor(low, high);
  return value === 1 && unit === 'share' ? say('slip.times', { low: shown(low, digits), high: shown(high, digits) }) : `${shown(value, digits)} ${unitShown(unit)}`;
}

/** A share as a dimension line. */
function Span(props: { readonly share: number }) {
  const w = (): number => 8 + props.share * 92;
  return <svg width={w()} height="9" aria-hidden="true"><path d={`M.5 0V9M${w() - 0.5} 0V9M1 4.5H${w() - 1}`} stroke="var(--ink3)" stroke-width=".7" fill="none" /><path d={`M1 4.5 6 3.2V5.8ZM${w() - 1} 4.5 ${w() - 6} 3.2V5.8Z`} fill="var(--ink)" /></svg>;
}
