import { figureShown } from '@washline/drawing';
import { createEffect, createSignal, onCleanup, type Accessor } from 'solid-js';
import type { Read } from './read.ts';

/** Says once, a moment after the last change, what the change did. Stops are said at once. */
export function Live(props: { readonly now: Accessor<Read> }) {
  const [said, setSaid] = createSignal('');
  let timer = 0, findings: number | null = null, stops = '';
  createEffect(() => {
    const { reading, findings: found } = props.now();
    const first = findings === null;
    const stop = found.filter((f) => f.severity === 'stop').map((f) => f.message).join(' ');
    const change = found.length - (findings ?? found.length);
    findings = found.length;
    if (first) { stops = stop; return; }
    clearTimeout(timer);
    if (stop !== stops) { stops = stop; setSaid(stop === '' ? 'Nothing stops it now.' : stop); return; }
    const strength = reading.figures['strength'];
    timer = window.setTimeout(() => setSaid([strength === undefined ? 'Strength not known.' : `Strength ${figureShown(strength, 1)}.`, change === 0 ? '' : `${Math.abs(change)} ${Math.abs(change) === 1 ? 'finding' : 'findings'} ${change > 0 ? 'more' : 'less'}.`].join(' ').trim()), 400);
  });
  onCleanup(() => clearTimeout(timer));
  return <p class="aside" aria-live="polite" data-live>{said()}</p>;
}
