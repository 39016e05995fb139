import { For, Show } from 'solid-js';
import { say } from '../language/language.ts';
import type { Keeping } from './filming.ts';
import { wakeSound } from './ring.ts';
import type { FilmStep } from './steps.ts';
import { isOver, leftOf } from './timers.ts';

/** For the hand near by: which of how many, what comes next, what else runs. */
export function Foot(props: { readonly steps: readonly FilmStep[]; readonly place: number; readonly keep: Keeping; readonly awake: boolean; readonly as: string | null; readonly current: string; readonly say: (ms: number) => string; readonly onGo: (by: number) => void; readonly onLeave: () => void }) {
  const count = (): number => props.steps.length, next = () => props.steps[props.place + 1];
  const others = () => props.keep.filming().timers.filter((t) => t.id !== props.current);
  const rings = (): boolean => props.keep.filming().rings;
  const forget = (id: string): void => props.keep.change({ timers: props.keep.filming().timers.filter((t) => t.id !== id) });
  return (
    <div class="film-foot">
      <div class="film-next">
        <button type="button" data-back disabled={props.place === 0} onClick={() => props.onGo(-1)}>{say('film.back')}</button>
        <p data-of>{say('film.of', { at: Math.min(props.place + 1, count()), count: count() })}</p>
        <svg class="film-marks" viewBox={`0 0 ${Math.max(1, count()) * 10} 20`} preserveAspectRatio="none" aria-hidden="true">
          <For each={props.steps}>{(_, i) => <path class={i() === props.place ? 'here' : i() < props.place ? 'gone' : ''} d={`M${i() * 10 + 5} 2V18`} />}</For>
        </svg>
        <button type="button" class="film-then" data-on disabled={props.place >= count()} onClick={() => props.onGo(1)}>{props.place >= count() ? '' : next() === undefined ? say('film.done') : say('film.then', { words: next()?.words ?? '' })}</button>
      </div>
      <div class="film-also">
        <ul aria-label={say('film.running')}><For each={others()}>{(t) => (
          <li data-running={isOver(t, props.keep.now()) ? 'over' : t.since === null ? 'stands' : 'runs'}>
            {isOver(t, props.keep.now()) ? say('film.ended', { words: t.words }) : <>{t.words} <b>{props.say(leftOf(t, props.keep.now()))}</b></>}
            <button type="button" aria-label={say('film.forget.name', { words: t.words })} onClick={() => forget(t.id)}>{say('film.forget')}</button>
          </li>
        )}</For></ul>
        <Show when={props.as}><p data-as>{props.as}</p></Show>
        <Show when={!props.awake}><p data-awake="no">{say('film.sleep')}</p></Show>
        <button type="button" data-rings={rings()} onClick={() => { if (!rings()) wakeSound(); props.keep.change({ rings: !rings() }); }}>{say(rings() ? 'film.rings' : 'film.muted')}</button>
        <button type="button" data-leave onClick={() => props.onLeave()}>{say('film.leave')}</button>
      </div>
      <p class="aside" role="status">{props.keep.over().map((t) => say('film.ended', { words: t.words })).join(' ')}</p>
    </div>
  );
}
