import { differenceShown, drawCompare, figureShown, sentenceIn } from '@washline/drawing';
import type { Difference } from '@washline/engine';
import { createEffect, createMemo, createSignal, For, on, onCleanup, onMount, Show } from 'solid-js';
import { makeHatches } from '../glass/hatches.ts';
import { makeRenderer } from '../glass/render.ts';
import { onPaper, roomOf } from '../glass/room.ts';
import { language, say, turn } from '../language/language.ts';
import type { Held } from '../read.ts';
import { firstSentence } from '../sheet/sentences.ts';
import { nameOf } from '../slip/words.ts';
import type { ViewProps } from '../views/view.ts';
import { tellAnswer } from './answer.ts';
import { changedLines } from './lines.ts';
import { makeSides } from './sides.ts';
import './compare.css';

/** So long after the last change the two are held against each other: never in the frame of a keystroke. */
const SETTLED_MS = 300;
/** The drawing's part of a sheet of A4, px. */
const PAPER = { width: (178 / 25.4) * 96, height: (110 / 25.4) * 96 };

/** The spec and another side of it, or another drink: two glasses at one scale, and what differs beyond what is uncertain of both. */
export default function CompareView(props: ViewProps) {
  let box!: HTMLElement, svg!: SVGSVGElement, defs!: SVGDefsElement;
  const sides = makeSides(props.state);
  const [held, setHeld] = createSignal<(Held & { readonly text: string; readonly other: string; readonly of: string }) | null>(null);
  const tell = (): void => {
    const against = props.state.against(), side = sides.side(), text = props.state.text();
    if (against === null || side === null) return;
    const told = against({ text: side.text, variant: side.variant }, { text, variant: null }, language());
    setHeld({ ...told, text, other: side.text, of: side.key });
    const strength = told.differences.find((d) => d.name === 'strength');
    tellAnswer(strength === undefined ? null : { text, words: strength.differs ? differenceShown(strength) : say('compare.alike', { figures: nameOf('strength') }) });
  };
  const room = roomOf(() => box), print = onPaper(tell);
  createEffect(on([props.state.text, sides.side, props.state.against, language], () => {
    const timer = setTimeout(tell, held() === null ? 0 : SETTLED_MS);
    onCleanup(() => clearTimeout(timer));
  }));
  const differ = createMemo(() => (held()?.differences ?? []).filter((d) => d.differs));
  const alike = createMemo(() => (held()?.differences ?? []).filter((d) => !d.differs).map((d) => label(d)));
  const changed = createMemo(() => { const now = held(); return now === null || now.other === now.text ? [] : changedLines(now.other, now.text); });
  /** findings and allergens that the first or the second has alone */
  const only = (now: Held, which: 0 | 1): string[] => {
    const [mine, other] = which === 0 ? [now.a, now.b] : [now.b, now.a], codes = new Set(other.findings.map((f) => f.code)), groups = now.allergens[1 - which] ?? [];
    return [...mine.findings.filter((f) => f.severity !== 'note' && !codes.has(f.code)).map((f) => `${say(f.severity)}: ${firstSentence(sentenceIn(f.message)).head}`), ...now.allergens[which].filter((name) => !groups.includes(name)).map((name) => say('compare.allergen', { name }))];
  };

  onMount(() => {
    const hatch = makeHatches(defs), render = makeRenderer(svg);
    createEffect(() => {
      const now = held(), size = print() ? PAPER : room(), scheme = print() ? 'light' : props.sheet();
      turn();
      if (now === null || size.width < 40 || size.height < 40) return;
      const drawing = drawCompare(now.a, now.b, { ...size, scheme });
      svg.toggleAttribute('hidden', drawing === null);
      if (drawing !== null) { hatch(drawing.mmPerPx); render(drawing); }
    });
  });

  return (
    <section class="compare" aria-labelledby="compare" aria-busy={held()?.text !== props.state.text()} data-compare={held()?.of}>
      <div class="against">
        <h2 id="compare" tabindex="-1">{say('compare.against')}</h2>
        <select aria-label={say('compare.against')} onChange={(e) => sides.choose(e.currentTarget.value)}>
          <For each={sides.all()}>{(side) => <option value={side.key} selected={sides.side()?.key === side.key}>{side.key === 'kept' ? say('compare.kept', { name: side.name }) : side.name}</option>}</For>
        </select>
        <button type="button" onClick={() => sides.keep()}>{say('compare.keep')}</button>
      </div>
      <figure class="drawing" ref={box} aria-label={say('compare.section', { a: held()?.a.drink ?? '', b: held()?.b.drink ?? '' })}><svg ref={svg}><defs ref={defs} /></svg></figure>
      <Show when={held()}>{(now) => (
        <div class="held">
          <Show when={now().a.glass === null || now().b.glass === null}><p>{say('compare.no-glass')}</p></Show>
          <Show when={now().problems[0] + now().problems[1] > 0}><p>{say('hands.unread')}</p></Show>
          <table>
            <caption class="aside">{say('compare.table')}</caption>
            <thead class="aside"><tr><th scope="col">{now().a.drink}</th><th scope="col">{say('compare.difference')}</th><th scope="col">{now().b.drink}</th></tr></thead>
            <tbody><For each={differ()}>{(d) => (
              <tr data-difference={d.name} data-value={d.value} data-low={d.low} data-high={d.high}>
                <td>{figureShown({ value: d.a, low: d.a - (d.value - d.low), high: d.a + (d.high - d.value), unit: d.unit })}</td>
                <td><span class="measure"><span>{label(d)} <b>{differenceShown(d)}</b></span></span></td>
                <td>{figureShown({ value: d.b, low: d.b - (d.value - d.low), high: d.b + (d.high - d.value), unit: d.unit })}</td>
              </tr>
            )}</For></tbody>
          </table>
          <Show when={alike().length > 0}><p class="alike">{say('compare.alike', { figures: alike().join(', ') })}</p></Show>
          <div class="only">
            <For each={[0, 1] as const}>{(which) => (
              <Show when={only(now(), which).length > 0} fallback={<div />}><div><h3>{say('compare.only', { drink: nameIn(which === 0 ? now().a : now().b) })}</h3><ul><For each={only(now(), which)}>{(line) => <li>{line}</li>}</For></ul></div></Show>
            )}</For>
          </div>
          <Show when={changed().length > 0}>
            <h3>{say('compare.changed')}</h3>
            <table class="changed">
              <thead class="aside"><tr><th scope="col">{now().a.drink}</th><th scope="col">{now().b.drink}</th></tr></thead>
              <tbody><For each={changed()}>{(line) => <tr><td>{line.a ?? say('compare.not')}</td><td>{line.b ?? say('compare.not')}</td></tr>}</For></tbody>
            </table>
          </Show>
        </div>
      )}</Show>
    </section>
  );
}

function label(d: Difference): string { return d.of === 'glass' ? nameOf('washline') : nameOf(d.name); }
function nameIn({ drink, variant }: Held['a']): string { return variant === null ? drink : `${drink}, ${variant}`; }
