import { draw, type Said } from '@washline/drawing';
import { createEffect, createSignal, onCleanup, onMount, type Accessor } from 'solid-js';
import type { Sheet } from '../device.ts';
import type { Read } from '../read.ts';
import { say, turn } from '../language/language.ts';
import { firstSentence } from '../sheet/sentences.ts';
import { makeHatches } from './hatches.ts';
import { makeRenderer } from './render.ts';

export interface Pressed { readonly reading: string; readonly figure: string; readonly at: DOMRect; readonly from: SVGElement }

/** The section drawing, laid out for the room it has and drawn again in the frame of every change. */
export function Glass(props: { readonly now: Accessor<Read>; readonly sheet: Accessor<Sheet>; readonly onPress: (pressed: Pressed) => void }) {
  let box!: HTMLElement, svg!: SVGSVGElement, defs!: SVGDefsElement;
  const [room, setRoom] = createSignal({ width: 0, height: 0 }, { equals: (a, b) => a.width === b.width && a.height === b.height });
  const [print, setPrint] = createSignal(false);

  onMount(() => {
    const measure = (): void => { setRoom({ width: box.clientWidth, height: box.clientHeight }); };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(box);
    const before = (): void => { setPrint(true); }, after = (): void => { setPrint(false); };
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    onCleanup(() => { watch.disconnect(); removeEventListener('beforeprint', before); removeEventListener('afterprint', after); });

    const hatch = makeHatches(defs), render = makeRenderer(svg);
    createEffect(() => {
      const { reading, document: spec, findings } = props.now();
      const paper = print();
      turn();
      const size = room();
      if (size.width < 40 || size.height < 40) return;
      const said: Said[] = findings.map((f) => ({ severity: f.severity, ...firstSentence(f.message), path: f.where.path }));
      // On paper one millimetre of the glass is one millimetre.
      const drawing = draw(reading, paper
        ? { width: (180 / 25.4) * 96, height: (186 / 25.4) * 96, mmPerPx: 25.4 / 96, scheme: 'light', document: spec, findings: said }
        : { ...size, scheme: props.sheet(), document: spec, findings: said });
      hatch(drawing.mmPerPx);
      render(drawing);
      if (paper) { svg.style.setProperty('--true-width', `${drawing.width}mm`); svg.style.setProperty('--true-height', `${drawing.height}mm`); }
    });
  });

  const press = (event: Event): void => {
    const part = (event.target as Element).closest<SVGElement>('[data-figure]');
    if (part === null) return;
    event.preventDefault();
    props.onPress({ reading: part.dataset['of'] ?? 'drink', figure: part.dataset['figure'] ?? '', at: part.getBoundingClientRect(), from: part });
  };
  return (
    <figure class="drawing" ref={box} aria-label={say('glass.section', { drink: props.now().reading.drink })}>
      <svg ref={svg} onClick={press} onKeyDown={(e) => { if (e.key === 'Enter' || e.key === ' ') press(e); }}><defs ref={defs} /></svg>
    </figure>
  );
}
