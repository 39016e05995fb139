import { createSignal, For, Show } from 'solid-js';
import { lineAfter, spliced } from '../history.ts';
import { say } from '../language/language.ts';
import type { State } from '../state.ts';
import { shotSplices } from './shot.ts';
import type { Shot as Poured } from './kept.ts';
import type { FilmStep } from './steps.ts';

/** After the last step: the lines that were poured otherwise, and what may be done with the text they make. Nothing is written over unasked. */
export function Shot(props: { readonly state: State; readonly steps: readonly FilmStep[]; readonly shots: readonly Poured[]; readonly onTaken: () => void }) {
  const [said, setSaid] = createSignal<'copied' | 'uncopied' | 'taken' | null>(null);
  const splices = () => shotSplices(props.steps, props.shots, props.state.now());
  const text = (): string => spliced(props.state.text(), splices());
  const lines = (): { readonly was: string; readonly now: string }[] => props.steps.flatMap((step) => {
    const own = shotSplices([step], props.shots, props.state.now());
    return own.length === 0 ? [] : [{ was: step.line.text.trim(), now: lineAfter(props.state.text(), own) }];
  });
  const take = (): void => { const all = splices(); if (all.length > 0) { props.state.apply(all); props.onTaken(); setSaid('taken'); } };
  const copy = async (): Promise<void> => { try { await navigator.clipboard.writeText(text()); setSaid('copied'); } catch { setSaid('uncopied'); } };
  return (
    <div class="film-shot">
      <Show when={lines().length > 0} fallback={<p>{say(said() === 'taken' ? 'film.taken' : 'film.asWritten')}</p>}>
        <ul><For each={lines()}>{(line) => <li><s>{line.was}</s> {line.now}</li>}</For></ul>
        <div><button type="button" data-take onClick={take}>{say('film.take')}</button><button type="button" data-copy onClick={() => void copy()}>{say('film.copy')}</button></div>
      </Show>
      <Show when={said() === 'taken' && props.state.undoes() !== null}><div><button type="button" onClick={() => { props.state.undo(); setSaid(null); }}>{say('undo')}</button></div></Show>
      <p role="status"><Show when={said() === 'copied'}>{say('film.copied')}</Show><Show when={said() === 'uncopied'}>{say('film.uncopied')}</Show></p>
      <Show when={said() === 'uncopied'}><textarea readonly aria-label={say('film.shot')} rows="6">{text()}</textarea></Show>
    </div>
  );
}
