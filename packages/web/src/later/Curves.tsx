import { coursesOf, drawLater, figureShown, leastDecimals, decimalsFor, shown } from '@washline/drawing';
import type { Figure } from '@washline/engine';
import { createEffect, createMemo, createSignal, For, on, onCleanup, onMount, Show, type Accessor } from 'solid-js';
import type { Sheet } from '../device.ts';
import { makeRenderer } from '../glass/render.ts';
import { onPaper, roomOf } from '../glass/room.ts';
import { say, turn } from '../language/language.ts';
import type { Reading } from '../read.ts';
import type { State } from '../state.ts';

/** So long after the last change it is told anew: never in the frame of a keystroke. */
const SETTLED_MS = 300;
/** Width of the drawing's part of a sheet of A4, px. */
const PAPER_PX = (178 / 25.4) * 96;

/** The curves of half an hour and their numbers as a table. */
export function Curves(props: { readonly state: State; readonly sheet: Accessor<Sheet>; readonly open: Accessor<boolean> }) {
  let box!: HTMLDivElement, svg!: SVGSVGElement;
  const [told, setTold] = createSignal<{ readonly text: string; readonly reading: Reading } | null>(null);
  const tell = (): void => {
    const later = props.state.later(), text = props.state.text();
    if (later !== null && told()?.text !== text) setTold({ text, reading: later(text) });
  };
  const size = roomOf(() => box), print = onPaper(() => { if (props.open()) tell(); });
  createEffect(on([props.open, props.state.text, props.state.later], ([open]) => {
    if (!open) return;
    const timer = setTimeout(tell, told() === null ? 0 : SETTLED_MS);
    onCleanup(() => clearTimeout(timer));
  }));
  const courses = createMemo(() => { const now = told(); return now === null ? [] : coursesOf(now.reading); });
  const times = (): number[] => [...new Set(courses().flatMap((c) => c.points.map((p) => p.minutes)))].sort((a, b) => a - b);

  onMount(() => {
    const render = makeRenderer(svg);
    createEffect(() => {
      const now = told(), paper = print(), room = size().width, sheet = props.sheet();
      turn();
      if (now === null || !props.open() || (!paper && room < 120)) return;
      const drawing = drawLater(now.reading, paper ? { width: PAPER_PX, scheme: 'light', all: true } : { width: room, scheme: sheet });
      svg.toggleAttribute('hidden', drawing === null);
      if (drawing !== null) render(drawing);
    });
  });
  return (
    <div ref={box} class="told" hidden={!props.open()} data-later={told()?.text === props.state.text() ? 'told' : 'asked'}>
      <svg ref={svg} role="group" aria-label={say('later')} />
      <Show when={courses().length > 0} fallback={<Show when={told()}><p>{say('later.none')}</p></Show>}>
        <p class="left-alone">{say('later.alone')}</p>
        <div class="numbers"><table>
          <caption>{say('later.table')}</caption>
          <thead><tr><th scope="col">{say('later.time')}</th><For each={courses()}>{(course) => <th scope="col">{say(`later.${course.name}`)}</th>}</For></tr></thead>
          <tbody>
            <For each={times()}>{(minutes) => (
              <tr><th scope="row">{minutes === 0 ? say('later.poured') : say('later.minutes', { minutes })}</th>
                <For each={courses()}>{(course) => <td>{cell(course.points.find((p) => p.minutes === minutes)?.figure)}</td>}</For>
              </tr>
            )}</For>
          </tbody>
        </table></div>
      </Show>
    </div>
  );
}

/** A value with both ends of its range. */
function cell(figure: Figure | undefined): string {
  if (figure === undefined) return '';
  const digits = decimalsFor(figure.low, figure.high, leastDecimals(figure.unit));
  return say('later.cell', { value: figureShown(figure), low: shown(figure.low, digits), high: shown(figure.high, digits) });
}
