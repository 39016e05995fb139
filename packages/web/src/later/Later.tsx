import './rule.css';
import { createEffect, createSignal, lazy, Show, type Accessor } from 'solid-js';
import type { Sheet } from '../device.ts';
import { say } from '../language/language.ts';
import type { Minutes } from './minutes.ts';
import { Rule } from './Rule.tsx';
import type { State } from '../state.ts';

const load = () => import('./Curves.tsx');
const Curves = lazy(() => load().then(({ Curves: default_ }) => ({ default: default_ })));

/** Half an hour in the glass, told when someone opens it; on paper a sheet of its own where it is open. */
export function Later(props: { readonly state: State; readonly sheet: Accessor<Sheet>; readonly minutes: Minutes }) {
  const [open, setOpen] = createSignal(false);
  const [here, setHere] = createSignal(false);
  // It is asked for a moment after the engine has come, so that a print finds it.
  createEffect(() => { if (props.state.later() !== null) void load().then(() => setHere(true)); });
  const stands = (): boolean => (props.state.now().reading.glass?.washline_mm ?? 0) > 0;
  return (
    <Show when={stands()}>
      <section class="later" aria-labelledby="later">
        <div class="times"><Rule minutes={props.minutes} />
        <h2><button type="button" id="later" aria-expanded={open()} aria-controls="later-curves" onClick={() => setOpen(!open())}>
          <svg width="11" height="11" aria-hidden="true"><path d={open() ? 'M.5 5.5H10.5' : 'M.5 5.5H10.5M5.5 .5V10.5'} stroke="currentColor" stroke-width="1.4" stroke-linecap="round" /></svg>{say('later')}
        </button></h2></div>
        <div id="later-curves" class="curves"><Show when={here()}><Curves state={props.state} sheet={props.sheet} open={open} /></Show></div>
      </section>
    </Show>
  );
}
