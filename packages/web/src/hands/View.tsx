import { counted, decimalsFor, drawHands, shown, spreadOf, tenthsOf, type DrawnHands } from '@washline/drawing';
import type { SaidMatter, SaidOdds } from '@washline/spec';
import { createEffect, createMemo, createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import { makeHatches } from '../glass/hatches.ts';
import { makeRenderer } from '../glass/render.ts';
import { onPaper, roomOf } from '../glass/room.ts';
import { language, say, turn } from '../language/language.ts';
import { toLine } from '../sheet/to-line.ts';
import type { ViewProps } from '../views/view.ts';
import { paintMarks } from './marks.ts';
import { holding, presentRun, type Run } from './run.ts';
import '../style/hands.css';

/** Room kept at the top for the head, and under the drawing of the glass for the rule of time, px. */
const HEAD = { wide: 172, phone: 150 }, LATER = 40;
/** Height of the drawing of the glass on a phone, px. */
const PHONE = 545;
/** The drawing's part of a sheet of A4, px. */
const PAPER = { width: (178 / 25.4) * 96, height: (150 / 25.4) * 96, whole: (186 / 25.4) * 96 };
/** So many inputs are told that move the level. */
const MOVES = 6;

/** The tide marks opened: a mark for each of ten thousand hands, how many hold, what does not, and what moves the level. */
export default function HandsView(props: ViewProps) {
  let box!: HTMLElement, svg!: SVGSVGElement, defs!: SVGDefsElement, canvas!: HTMLCanvasElement;
  const own = roomOf(() => box), print = onPaper();
  /** with the height that the drawing of the glass has, px */
  const room = () => { const { width, height } = own(); return { width, height, whole: width < 560 ? PHONE : matchMedia('(min-width: 1100px)').matches ? (box.parentElement?.clientHeight ?? height) - LATER : height }; };
  const [told, setTold] = createSignal<DrawnHands | null>(null);
  const run = (): Run | null => props.state.hands();
  const known = createMemo(() => { const r = run(); return r === null || holding(r) === null ? null : r; });
  const spread = createMemo(() => { const r = known(); return r === null ? null : spreadOf(r); });
  const stale = (): boolean => run() !== null && presentRun(props.state) === null;

  onMount(() => {
    const hatch = makeHatches(defs), render = makeRenderer(svg);
    createEffect(() => {
      const of = known(), size = print() ? PAPER : room(), sheet = print() ? 'light' : props.sheet(), { reading } = props.state.now();
      turn();
      if (size.width < 40 || size.height < 40) return;
      // of the text before, the picture stays as it was until the next run is there
      if (of !== null && of.text !== props.state.text() && told() !== null) return;
      const phone = size.width < 560;
      const drawn = of === null ? null : drawHands(reading, of, { ...size, head: phone ? HEAD.phone : HEAD.wide, scheme: sheet, upstream: Object.keys(reading.preps).length > 0 });
      setTold(drawn);
      if (drawn !== null) { hatch(drawn.drawing.mmPerPx); render(drawn.drawing); }
      // a print waits for no frame; else the colours of the sheet are there in the next
      if (print()) { paintMarks(canvas, drawn?.marks ?? null, size, 4, true); return; }
      const painted = requestAnimationFrame(() => paintMarks(canvas, drawn?.marks ?? null, size, Math.max(1, devicePixelRatio)));
      onCleanup(() => cancelAnimationFrame(painted));
    });
  });

  return (
    <section class="hands" aria-labelledby="hands" aria-busy={stale() || run() === null}>
      <figure class="drawing" ref={box} aria-label={say('hands.section', { drink: props.state.now().reading.drink })}>
        <canvas ref={canvas} class="marks" aria-hidden="true" hidden={told() === null} data-marks={told() === null ? undefined : told()!.marks.rows.reduce((sum, r) => sum + r.holds + r.fails, 0)} />
        <svg ref={svg} classList={{ gone: told() === null }}><defs ref={defs} /></svg>
        <div class="hands-head">
          <Show when={known()} fallback={<><h2 id="hands" tabindex="-1">{say('hands')}</h2><p>{say(run() === null ? 'hands.waiting' : 'hands.nothing')}</p></>}>{(of) => (
            <>
              <h2 id="hands" tabindex="-1"><small>{say('hands.in')}</small> <b data-holds={holding(of())!}>{counted(holding(of())!)}</b> <span>{say('hands.hold', { of: counted(of().hands.makers) })}</span></h2>
              <Show when={holding(of())! < of().hands.makers}><p class="fails">{say('hands.fail', { count: counted(of().hands.makers - holding(of())!) })}</p></Show>
              <p class="second"><Strength run={of()} /></p>
              <p class="third">{stale() ? say('hands.again') : say('hands.same', { seed: of().hands.seed })}<Show when={of().problems > 0}> {say('hands.unread')}</Show></p>
            </>
          )}</Show>
        </div>
        <Show when={known() !== null && told() === null}><p class="no-level">{say('hands.no-level')}</p></Show>
        <Show when={known()}>{(of) => <Tenths run={of()} />}</Show>
      </figure>
      <Show when={known()}>{(of) => (
        <div class="hands-found">
          <div><Odds run={of()} stops /><p class="error">{say('hands.error')}</p></div>
          <div>
            <Show when={of().moves.length > 0 && (spread()?.known ?? 0) > 0 && told() !== null}><Moves run={of()} /></Show>
            <Odds run={of()} stops={false} />
          </div>
        </div>
      )}</Show>
    </section>
  );
}

function Strength(props: { readonly run: Run }) {
  const band = () => props.run.hands.figures['strength'];
  return <Show when={band()}>{(b) => { const digits = (): number => Math.max(1, decimalsFor(b().p2_5, b().p97_5)); return <>{say('hands.strength', { value: shown(b().p50, digits()), low: shown(b().p2_5, digits()), high: shown(b().p97_5, digits()) })}</>; }}</Show>;
}

/** What the marks say, for who listens. */
function Tenths(props: { readonly run: Run }) {
  const tenths = createMemo(() => tenthsOf(props.run));
  return (
    <Show when={tenths().length > 0}>
      <div class="aside"><table>
        <caption>{say('hands.tenths')}</caption>
        <thead><tr><th scope="col">{say('hands.tenth')}</th><th scope="col">{say('hands.from')}</th><th scope="col">{say('hands.to')}</th><th scope="col">{say('hands.holds')}</th></tr></thead>
        <tbody><For each={tenths()}>{(t, i) => <tr><th scope="row">{i() + 1}</th><td>{shown(t.from, 1)}</td><td>{shown(t.to, 1)}</td><td>{say('hands.margin', { count: counted(t.hold), of: counted(t.hands) })}</td></tr>}</For></tbody>
      </table></div>
    </Show>
  );
}

const textOf = (run: Run, line: number): string => (run.text.split(/\r\n|\r|\n/)[line - 1] ?? '').trim();

/** What is so in how many kitchens, with the error of that count and the line that decides it. */
function Odds(props: { readonly run: Run; readonly stops: boolean }) {
  const [heads, setHeads] = createSignal<Readonly<Record<string, string>>>({});
  createEffect(() => { const spoken = language(); void (spoken === 'de' ? import('./heads.de.json') : import('./heads.en.json')).then((all) => (language() === spoken ? setHeads(all.default) : {})); });
  const list = (): readonly SaidOdds[] => props.run.hands.findings.filter((f) => f.stops === props.stops);
  const of = (odds: number): string => counted(odds * props.run.hands.makers);
  const decides = (f: SaidOdds): SaidMatter | undefined => (f.odds === 1 ? undefined : props.run.hands.matters.find((m) => m.code === f.code && m.path?.join('/') === f.path.join('/')));
  return (
    <Show when={props.stops || list().length > 0}>
      <section class="odds" classList={{ stops: props.stops }}>
        <h3>{say(props.stops ? (list().length === 0 ? 'hands.stops.none' : 'hands.stops') : 'hands.others')}</h3>
        <ul><For each={list()}>{(f) => (
          <li data-odds={f.odds} data-code={f.code}>
            <span class="count">{f.odds === 1 ? say('hands.every') : <>{of(f.odds)}<small> ± {of(Math.max(f.error, 0.5 / props.run.hands.makers))}</small></>}</span>
            <span class="what">{heads()[f.code] ?? ''}{f.accepted ? `, ${say('hands.accepted')}` : ''}</span>
            <Show when={decides(f)} fallback={<Show when={f.line}>{(line) => <ToLine line={line()} text={textOf(props.run, line())} />}</Show>}>{(m) => (
              <span class="by"><Show when={m().line} fallback={<>{say('hands.decides')} {m().words}</>}>{(line) => <ToLine line={line()} text={textOf(props.run, line())} by={m().words} />}</Show></span>
            )}</Show>
          </li>
        )}</For></ul>
      </section>
    </Show>
  );
}

function ToLine(props: { readonly line: number; readonly text: string; readonly by?: string }) {
  return <button type="button" class="to-line" data-line={props.line} aria-label={say('hands.line', { line: props.line, text: `${props.text}${props.by === undefined ? '' : `, ${props.by}`}` })} onClick={() => toLine(props.line)}><u>{props.text}</u>{props.by === undefined ? '' : `, ${props.by}`}</button>;
}

/** Shares of the variance of the level as dimension lines, the longest first. */
function Moves(props: { readonly run: Run }) {
  return (
    <section class="moves">
      <h3>{say('hands.moves')}</h3>
      <ol><For each={props.run.moves.slice(0, MOVES)}>{(m) => (
        <li data-share={m.share}>
          <Show when={m.line} fallback={<span class="to-line">{m.words}</span>}>{(line) => <ToLine line={line()} text={textOf(props.run, line())} by={m.words} />}</Show>
          <span class="length"><Length share={m.share / (props.run.moves[0]?.share ?? 1)} />{say('hands.share', { share: Math.round(m.share * 100) })}</span>
        </li>
      )}</For></ol>
    </section>
  );
}

/** A dimension line as long as a share of the longest. */
function Length(props: { readonly share: number }) {
  const w = (): number => 10 + props.share * 130;
  return <svg width={w()} height="9" aria-hidden="true"><path d={`M.5 0V9M${w() - 0.5} 0V9M1 4.5H${w() - 1}`} stroke="var(--ink3)" stroke-width=".7" fill="none" /><path d={`M1 4.5 7 3.1V5.9ZM${w() - 1} 4.5 ${w() - 7} 3.1V5.9Z`} fill="var(--ink)" /></svg>;
}
