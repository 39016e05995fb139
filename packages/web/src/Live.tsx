import { figureShown, sentenceIn } from '@washline/drawing';
import { createEffect, createSignal, onCleanup, type Accessor } from 'solid-js';
import { say } from './language/language.ts';
import type { Read } from './read.ts';

/** Says once, a moment after the last change, what the change did; stops as soon as their ranges are in. */
export function Live(props: { readonly now: Accessor<Read> }) {
  const [said, setSaid] = createSignal('');
  let timer = 0, findings: number | null = null, stops = '';
  createEffect(() => {
    const { reading, findings: found, carried } = props.now();
    if (carried) return;
    const first = findings === null;
    const stop = found.filter((f) => f.severity === 'stop').map((f) => sentenceIn(f.message)).join(' ');
    const change = found.length - (findings ?? found.length);
    findings = found.length;
    if (first) { stops = stop; return; }
    clearTimeout(timer);
    if (stop !== stops) { stops = stop; setSaid(stop === '' ? say('live.clear') : stop); return; }
    const strength = reading.figures['strength'];
    timer = window.setTimeout(() => setSaid([strength === undefined ? say('live.unknown') : say('live.strength', { value: figureShown(strength, 1) }), change === 0 ? '' : say(`live.${Math.abs(change) === 1 ? 'one' : 'many'}.${change > 0 ? 'more' : 'less'}`, { count: Math.abs(change) })].join(' ').trim()), 400);
  });
  onCleanup(() => clearTimeout(timer));
  return <p class="aside" aria-live="polite" data-live>{said()}</p>;
}
