import { drawFilm, sentenceIn, type FilmRule } from '@washline/drawing';
import { createEffect, createMemo, createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import { makeHatches } from '../glass/hatches.ts';
import { makeRenderer } from '../glass/render.ts';
import { roomOf } from '../glass/room.ts';
import { say, turn } from '../language/language.ts';
import { writtenIn, type Read } from '../read.ts';
import type { ViewProps } from '../views/view.ts';
import { afterOf } from './after.ts';
import { stayAwake } from './awake.ts';
import { Foot } from './Foot.tsx';
import { keeping } from './filming.ts';
import { lay, type Laid } from './lay.ts';
import { Poured } from './Poured.tsx';
import { wakeSound } from './ring.ts';
import { Shot } from './Shot.tsx';
import { shotSplices, shotText, writtenOf } from './shot.ts';
import { stepsOf, type Caution } from './steps.ts';
import { clock, goneOf, isOver, leftOf, runs, toggled } from './timers.ts';
import '../style/film.css';

const END = 'end', PRESSES = 'presses';
/** A number and its unit stay on one line. */
const together = (words: string): string => words.replace(/(\d) (?=(?:%|°C|mm|ml|cl|dl|oz|kg|g|l|s|min|h)(?![\p{L}\d]))/giu, '$1\u00a0');
const MARK = { stop: 'M1 1H9V13H1Z', warn: 'M5 1.5L9.3 12.5H.7Z', note: 'M5 4A3 3 0 1 0 5.01 4Z' } as const;

/** One step at a time, to be read across the room: the vessel at its level, the verb, what goes in, the time that is left. */
export default function Film(props: ViewProps) {
  let view!: HTMLElement, stage!: HTMLDivElement, words!: HTMLDivElement, verb!: HTMLHeadingElement, cautions: HTMLUListElement | undefined, svg!: SVGSVGElement, defs!: SVGDefsElement, left: HTMLParagraphElement | undefined;
  const keep = keeping(), awake = stayAwake();
  const steps = createMemo(() => stepsOf(props.state.now()));
  const place = createMemo((): number => {
    const { at, place: kept } = keep.filming(), all = steps(), found = all.findIndex((s) => s.id === at);
    return at === END ? all.length : found >= 0 ? found : Math.min(Math.max(0, kept), Math.max(0, all.length - 1));
  });
  const step = createMemo(() => steps()[place()] ?? null);
  const go = (by: number): void => {
    const to = Math.max(0, Math.min(steps().length, place() + by));
    if (steps().length > 0) keep.change({ at: steps()[to]?.id ?? END, place: to });
  };
  const leave = (): void => { location.hash = ''; };

  // The times.
  const timer = () => keep.filming().timers.find((t) => t.id === step()?.id && t.seconds === step()?.seconds) ?? null;
  const leftMs = (): number => { const t = timer(); return t === null ? (step()?.seconds ?? 0) * 1000 : leftOf(t, keep.now()); };
  const touch = (): void => {
    const one = step();
    if (one?.seconds == null) return;
    if (keep.filming().rings) wakeSound();
    keep.change({ timers: toggled(keep.filming().timers, { id: one.id, words: one.words, seconds: one.seconds }, Date.now()) });
  };
  const spell = (ms: number): string => { const c = clock(ms); return `${c.number} ${say(`film.unit.${c.unit}`)}`; };
  const touchName = (): string => { const t = timer(), now = keep.now(); return t === null ? say('film.start', { time: spell(leftMs()) }) : isOver(t, now) ? say('film.again') : say(runs(t, now) ? 'film.stop' : 'film.go', { time: spell(leftMs()) }); };

  // What was poured.
  const shotOf = (id: string): number | null => keep.filming().shots.find((s) => s.id === id)?.value ?? null;
  const pour = (value: number | null): void => {
    const one = step();
    if (one === null) return;
    const others = keep.filming().shots.filter((s) => s.id !== one.id), shots = value === null || value === writtenOf(one) ? others : [...others, { id: one.id, words: one.words, value }];
    const splices = shotSplices(steps(), shots, props.state.now()), texts = Object.fromEntries(Object.entries(keep.filming().texts).filter(([drink]) => drink !== props.state.now().reading.drink));
    keep.change({ shots, texts: splices.length === 0 ? texts : { ...texts, [props.state.now().reading.drink]: shotText(props.state.text(), splices) } });
  };
  const taken = (): void => {
    const mine = new Set(steps().map((s) => s.id)), drink = props.state.now().reading.drink;
    keep.change({ at: END, shots: keep.filming().shots.filter((s) => !mine.has(s.id) && !s.id.startsWith(`${drink}/`)), texts: Object.fromEntries(Object.entries(keep.filming().texts).filter(([name]) => name !== drink)) });
  };

  // What stands there after the step.
  const glances = new Map<string, Pick<Read, 'reading'>>();
  const after = createMemo(() => {
    const reads = props.state.reader(), now = props.state.now(), all = steps();
    return afterOf(all, Math.min(place(), all.length - 1), now, (text) => {
      if (reads === null) return null;
      const had = glances.get(text) ?? reads(text, undefined, 'carried');
      if (glances.size > 200) glances.clear();
      glances.set(text, had);
      return had;
    });
  });

  const room = roomOf(() => stage);
  const [laid, setLaid] = createSignal<Laid | null>(null);
  const [rule, setRule] = createSignal<FilmRule | null>(null);
  onMount(() => {
    view.focus({ preventScroll: true });
    document.addEventListener('keydown', key);
    void document.fonts.ready.then(() => setLetters(letters() + 1));
    onCleanup(() => document.removeEventListener('keydown', key));
    const hatch = makeHatches(defs), render = makeRenderer(svg);
    createEffect(() => {
      const one = step(), size = room(), ended = place() >= steps().length;
      turn(); letters();
      if (size.width < 40 || size.height < 40) return;
      setLaid(lay({ words, verb, cautions: cautions ?? null, to: view.style }, size, { time: one?.seconds == null ? null : clock(one.seconds * 1000).number, poured: one?.pours != null, list: ended }));
    });
    createEffect(() => {
      const at = laid(), size = room(), one = step(), t = timer();
      if (at === null) return;
      const scheme = keep.turned() ? (props.sheet() === 'dark' ? 'light' : 'dark') : props.sheet();
      turn();
      const { drawing, rule: found } = drawFilm(after().state, { ...size, scheme, split: at.split, top: at.top, foot: size.height - 12, high: at.high, low: at.low, time: one?.seconds == null ? null : { seconds: one.seconds, gone: t === null ? 0 : goneOf(t, keep.now()) / 1000 } });
      hatch(drawing.mmPerPx);
      render(drawing);
      setRule(found);
      view.style.setProperty('--film-y', `${found.y.toFixed(1)}px`);
      view.style.setProperty('--film-from', `${found.from.toFixed(1)}px`);
      view.style.setProperty('--film-to', `${(size.width - found.to).toFixed(1)}px`);
      if (left !== undefined) { const half = left.offsetWidth / 2; view.style.setProperty('--film-at', `${Math.max((at.narrow ? at.split : found.from) + half - 6, Math.min(size.width - 24 - half, found.at)).toFixed(1)}px`); }
    });
  });
  const [letters, setLetters] = createSignal(0);

  const key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    const on = event.target as Element | null, types = on?.matches('input, textarea') === true, button = on?.matches('button, a') === true;
    const does = event.key === 'Escape' ? (types ? () => view.focus() : leave)
      : event.key === 'PageDown' ? () => go(1) : event.key === 'PageUp' ? () => go(-1)
        : types ? null : event.key === 'ArrowRight' || event.key === 'ArrowDown' ? () => go(1) : event.key === 'ArrowLeft' || event.key === 'ArrowUp' ? () => go(-1)
          : button ? null : event.key === ' ' ? () => go(event.shiftKey ? -1 : 1) : event.key === 'Enter' ? touch : null;
    if (does === null) return;
    event.preventDefault();
    does();
  };
  const press = (event: MouseEvent): void => {
    const at = event.target as Element;
    // What was pressed with a finger gives the keys of a pedal back to the view.
    if (at.closest('button') !== null) { if (event.detail > 0) view.focus({ preventScroll: true }); return; }
    if (at.closest('input, textarea, label, .film-poured, .film-shot, .film-foot') !== null) return;
    if (document.activeElement instanceof HTMLInputElement) { view.focus({ preventScroll: true }); return; }
    go(event.clientX >= view.clientWidth / 2 ? 1 : -1);
  };

  /** What must not be missed: what presses first, then what was found at the line. */
  const said = createMemo((): readonly Caution[] => { const presses = after().pressure; return [...(presses === null ? [] : [{ code: PRESSES, severity: 'note' as const, message: presses }]), ...(step()?.cautions ?? [])]; });
  const ended = (): boolean => steps().length > 0 && place() >= steps().length;
  return (
    <section class="film" id="film" ref={view} tabindex="-1" aria-label={say('film.view', { drink: props.state.now().reading.drink })} data-film={ended() ? END : place() + 1} data-timer={timer() === null ? 'none' : isOver(timer()!, keep.now()) ? 'over' : runs(timer()!, keep.now()) ? 'runs' : 'stands'} onClick={press}>
      <div class="film-stage" ref={stage} data-narrow={laid()?.narrow}>
        <svg ref={svg}><defs ref={defs} /></svg>
        <div class="film-words" ref={words} aria-live="polite">
          <h2 ref={verb} data-verb>{ended() ? say('film.shot') : step()?.verb ?? ''}</h2>
          <p data-what>{together(step()?.what ?? '') || (steps().length === 0 ? say('film.empty') : '')}</p>
        </div>
        <Show when={step() !== null && step()!.seconds !== null}>
          <button type="button" class="film-rule" aria-label={touchName()} onClick={touch} />
          <p class="film-left" ref={left} data-left={Math.ceil(leftMs() / 1000)}><b>{clock(leftMs()).number}</b><span>{timer() !== null && isOver(timer()!, keep.now()) ? say('film.over') : say(`film.left.${clock(leftMs()).unit}`)}</span></p>
          <Show when={timer() === null}><p class="film-hint">{say('film.hint')}</p></Show>
        </Show>
        <Show when={step()?.pours != null ? step() : null}>{(one) => <Poured step={one()} text={props.state.now().document.text} poured={shotOf(one().id)} comma={writtenIn(props.state.now().document) === 'de'} onPour={pour} />}</Show>
        <Show when={ended()}><Shot state={props.state} steps={steps()} shots={keep.filming().shots} onTaken={taken} /></Show>
        <ul class="film-cautions" ref={cautions} data-long={said().length > 3 ? '' : undefined} tabindex={said().length > 3 ? 0 : undefined}>
          <For each={said()}>{(c) => <li class={c.severity} data-caution={c.code}><svg viewBox="0 0 10 14" aria-hidden="true"><path d={MARK[c.severity]} /></svg><Show when={c.code !== PRESSES}><b>{say(c.severity)}:</b> </Show>{sentenceIn(c.message)}</li>}</For>
        </ul>
      </div>
      <Foot steps={steps()} place={place()} keep={keep} awake={awake()} as={after().state === null ? (rule() === null || ended() ? null : say('film.nothing')) : after().as === null ? null : say('film.as', { words: after().as ?? '' })} current={step()?.id ?? ''} say={spell} onGo={go} onLeave={leave} />
    </section>
  );
}
