import { draw, fitsAt, inBoth, type Arranged } from '@washline/drawing';
import { createEffect, onMount, Show, type Accessor } from 'solid-js';
import type { Sheet } from '../device.ts';
import { presentRun } from '../hands/run.ts';
import { makeHand } from '../hand/hand.ts';
import { Typed } from '../hand/Typed.tsx';
import { paperHeight } from '../paper/Card.tsx';
import { PX_PER_MM, SHEET } from '../paper/fit.ts';
import { say, turn } from '../language/language.ts';
import '../style/near.css';
import { nearLine, partsOfLine, setNearPart } from '../sheet/near.ts';
import { makeHatches } from './hatches.ts';
import { makeStandOut, partAt } from './near.ts';
import { makeRenderer } from './render.ts';
import { onPaper, roomOf } from './room.ts';
import { saidOf } from './said.ts';
import type { Minutes } from '../later/minutes.ts';
import type { State } from '../state.ts';

export interface Pressed { readonly reading: string; readonly figure: string; readonly at: DOMRect; readonly from: SVGElement }

/** The section drawing, laid out for the room it has and drawn again in the frame of every change. */
export function Glass(props: { readonly state: State; readonly sheet: Accessor<Sheet>; /** CSS px per mm at which the glass is drawn; null: as large as fits */ readonly trueSize: Accessor<number | null>; /** the drink at a later minute, drawn in place of the reading */ readonly minutes: Minutes; readonly onTall: (tall: boolean) => void; readonly onPress: (pressed: Pressed) => void; readonly onVessel: (prep: string) => void }) {
  let box!: HTMLElement, svg!: SVGSVGElement, defs!: SVGDefsElement;
  const room = roomOf(() => box), print = onPaper();
  /** how vessels stand: so they do while the text changes, and are arranged anew when it has settled */
  let stood: Arranged | undefined;

  onMount(() => {
    // a finger on a level does not scroll the page: touch-action alone is not heeded within a drawing
    svg.addEventListener('touchstart', (e) => { if ((e.target as Element).closest('[data-level]') !== null) e.preventDefault(); }, { passive: false });
    const hatch = makeHatches(defs), render = makeRenderer(svg), standOut = makeStandOut(svg);
    createEffect(() => {
      const { reading: fresh, document: spec, findings, weights, carried } = props.state.now();
      const paper = print(), later = paper ? null : props.minutes.drawn(), reading = later ?? fresh, tide = presentRun(props.state) ?? undefined;
      const poured = later !== null && fresh.glass !== null ? { poured: { glass: fresh.glass, minutes: props.minutes.minute() } } : {};
      turn();
      const size = room();
      if (size.width < 40 || size.height < 40) return;
      const said = saidOf(findings);
      const real = props.trueSize(), fits = real !== null && reading.glass !== null && fitsAt(reading.glass, size, real);
      props.onTall(real !== null && !fits);
      // On paper one millimetre of the glass is one millimetre.
      const drawing = paper
        ? inBoth(() => draw(reading, { width: SHEET.width * PX_PER_MM, height: paperHeight(reading) * PX_PER_MM, mmPerPx: 1 / PX_PER_MM, scheme: 'light', document: spec, findings: said, tide }))
        : draw(reading, { ...size, ...(fits && real !== null ? { mmPerPx: 1 / real } : {}), ...poured, scheme: props.sheet(), document: spec, findings: said, tide, weights, like: props.state.settled() ? undefined : stood, hasty: carried });
      // what was arranged in haste is no measure for the next
      if (!paper && !carried) stood = drawing.arranged;
      hatch(drawing.mmPerPx);
      render(drawing);
      if (paper) { svg.style.setProperty('--true-width', `${drawing.width}mm`); svg.style.setProperty('--true-height', `${drawing.height}mm`); }
    });
    // after what was drawn: a part that changed has lost its class
    createEffect(() => {
      const { document: spec, reading } = props.state.now(), line = nearLine();
      room(); print(); turn(); props.sheet();
      standOut(line === null ? [] : partsOfLine(spec, reading.variant, line));
    });
  });

  const press = (event: Event): void => {
    const at = event.target as Element, part = at.closest<SVGElement>('[data-figure]');
    if (part === null) {
      const vessel = at.closest<SVGElement>('[data-section]');
      if (vessel !== null && at.closest('[data-level]') === null) props.onVessel(vessel.dataset['section'] ?? '');
      return;
    }
    event.preventDefault();
    props.onPress({ reading: part.dataset['of'] ?? 'drink', figure: part.dataset['figure'] ?? '', at: part.getBoundingClientRect(), from: part });
  };
  const hand = makeHand(() => props.state, () => box);
  return (
    <figure class="drawing" ref={box} aria-label={say('glass.section', { drink: props.state.now().reading.drink })}>
      <svg
        ref={svg} onClick={press} onKeyDown={(e) => { if (!hand.key(e) && (e.key === 'Enter' || e.key === ' ')) press(e); }}
        onPointerDown={hand.down} onPointerMove={hand.move} onPointerUp={hand.up} onPointerCancel={hand.cancel} onLostPointerCapture={hand.up}
        onPointerOver={(e) => { hand.over(e); setNearPart(partAt(e.target, svg)); }} onPointerLeave={() => { hand.leave(); setNearPart(null); }} onFocusIn={(e) => { hand.over(e); setNearPart(partAt(e.target, svg)); }} onFocusOut={() => { hand.leave(); setNearPart(null); }}
      ><defs ref={defs} /></svg>
      <Show when={hand.typing()} keyed>{(at) => <Typed at={at} typed={hand.typed} />}</Show>
      <Show when={hand.said()}>{(said) => <p class="at-hand" classList={{ end: said().end }} style={{ left: `${said().x}px`, top: `${said().y}px` }}>{said().words}</p>}</Show>
    </figure>
  );
}
