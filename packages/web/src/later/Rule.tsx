import { figureShown } from '@washline/drawing';
import { createMemo, For } from 'solid-js';
import { say } from '../language/language.ts';
import { LAST_MIN, type Minutes } from './minutes.ts';

const LABELS = [0, 5, 10, 20, 30];
const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 5, PageDown: -5, Home: -LAST_MIN, End: LAST_MIN };
const share = (minutes: number): string => `${(minutes / LAST_MIN) * 100}%`;

/** The rule of time under the glass: from poured to thirty minutes later, by whole minutes. */
export function Rule(props: { readonly minutes: Minutes }) {
  let rule!: HTMLDivElement, held = false;
  const { minute, drawn, to } = props.minutes;
  const said = createMemo(() => {
    const reading = drawn(), at = minute() === 0 ? say('later.poured') : say('later.minutes', { minutes: minute() });
    const level = reading?.glass?.washline, strength = reading?.figures['strength'];
    return [at, ...(level === undefined ? [] : [figureShown(level, 1)]), ...(strength === undefined ? [] : [figureShown(strength, 1)])].join(', ');
  });
  const at = (e: PointerEvent): void => { const box = rule.getBoundingClientRect(); to(((e.clientX - box.left) / box.width) * LAST_MIN); };
  return (
    <div
      class="rule" role="slider" tabindex="0" aria-label={say('later.rule')} aria-valuemin="0" aria-valuemax={LAST_MIN} aria-valuenow={minute()} aria-valuetext={said()} data-minute={minute()}
      onKeyDown={(e) => { const step = STEPS[e.key]; if (step === undefined || e.altKey || e.ctrlKey || e.metaKey) return; e.preventDefault(); to(minute() + step); }}
      onPointerDown={(e) => { if (e.button !== 0) return; held = true; e.currentTarget.setPointerCapture(e.pointerId); at(e); }}
      onPointerMove={(e) => { if (held) at(e); }} onPointerUp={() => { held = false; }} onPointerCancel={() => { held = false; }}
    >
      <div class="ticks" ref={rule} aria-hidden="true">
        <For each={Array.from({ length: LAST_MIN + 1 }, (_, i) => i)}>{(i) => <i classList={{ long: LABELS.includes(i) }} style={{ left: share(i) }} />}</For>
        <For each={LABELS}>{(i) => <span classList={{ first: i === 0, last: i === LAST_MIN }} style={{ left: share(i) }}>{i === 0 ? say('later.poured') : i === LAST_MIN ? `${i} min` : i}</span>}</For>
        <svg class="hand" width="15" height="12" style={{ left: share(minute()) }}><path d="M0 0H15L7.5 12Z" fill="currentColor" /></svg>
      </div>
    </div>
  );
}
