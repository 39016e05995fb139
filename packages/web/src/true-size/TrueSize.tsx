import './true-size.css';
import { createSignal, onMount } from 'solid-js';
import { say } from '../language/language.ts';
import { CARD_MM, measured, pxPerMm } from './screen.ts';

/** A usual screen, for where the card's outline begins, CSS px per mm. */
const USUAL = 96 / 25.4;
const STEPS: Readonly<Record<string, number>> = { ArrowRight: 0.5, ArrowUp: 0.5, ArrowLeft: -0.5, ArrowDown: -0.5, PageUp: 10, PageDown: -10 };

/** The outline of a bank card, made as large as the card that is laid on the screen: once for each screen. */
export default function TrueSize(props: { readonly onDone: (kept: boolean) => void }) {
  let edge!: HTMLDivElement, box!: HTMLElement;
  const [px, setPx] = createSignal((pxPerMm() ?? USUAL) * CARD_MM.long);
  const to = (next: number): void => { setPx(Math.max(120, Math.min(1200, next))); };
  onMount(() => edge.focus());
  let from: { readonly x: number; readonly px: number } | null = null;
  return (
    <section class="true-size" ref={box} aria-labelledby="true-size" onKeyDown={(e) => { if (e.key === 'Escape') props.onDone(false); }}>
      <h2 id="true-size">{say('true.how')}</h2>
      <div class="card" style={{ width: `${px()}px`, height: `${(px() * CARD_MM.short) / CARD_MM.long}px` }}>
        <span>{say('true.card')}</span>
        <div
          ref={edge} class="edge" role="slider" tabindex="0" aria-label={say('true.edge')} aria-valuemin="120" aria-valuemax="1200" aria-valuenow={Math.round(px())} aria-valuetext={say('true.px', { px: (px() / CARD_MM.long).toFixed(2) })}
          onKeyDown={(e) => { const step = STEPS[e.key]; if (step !== undefined) { e.preventDefault(); to(px() + step); } }}
          onPointerDown={(e) => { from = { x: e.clientX, px: px() }; e.currentTarget.setPointerCapture(e.pointerId); }}
          onPointerMove={(e) => { if (from !== null) to(from.px + e.clientX - from.x); }}
          onPointerUp={() => { from = null; }} onPointerCancel={() => { from = null; }}
        />
      </div>
      <p class="keep"><button type="button" onClick={() => { measured(px()); props.onDone(true); }}>{say('true.keep')}</button><button type="button" onClick={() => props.onDone(false)}>{say('true.leave')}</button></p>
    </section>
  );
}
