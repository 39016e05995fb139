import { createEffect, createSignal, createUniqueId, on, Show } from 'solid-js';
import { say } from '../language/language.ts';
import { stepped } from '../read.ts';
import { typedNumber, unitOf, writtenOf } from './shot.ts';
import type { FilmStep } from './steps.ts';

/** What was really poured, typed with a wet finger: a number in the unit of the line, or a step of its jigger. */
export function Poured(props: { readonly step: FilmStep; readonly text: string; readonly poured: number | null; readonly comma: boolean; readonly onPour: (value: number | null) => void }) {
  const id = createUniqueId(), [wrong, setWrong] = createSignal(false);
  const value = (): number => props.poured ?? writtenOf(props.step) ?? 0;
  const shown = (): string => { const plain = String(Number(value().toPrecision(6))); return props.comma ? plain.replace('.', ',') : plain; };
  let field!: HTMLInputElement;
  createEffect(on(() => props.step.id, () => setWrong(false)));
  const by = (steps: number): void => { setWrong(false); props.onPour(stepped(props.step.pours?.amount?.unit ?? null, value(), steps, false)); };
  const take = (): void => {
    const typed = typedNumber(field.value);
    setWrong(typed === null && field.value.trim() !== '');
    if (typed !== null) props.onPour(typed === writtenOf(props.step) ? null : typed); else if (field.value.trim() === '') { props.onPour(null); field.value = shown(); }
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key === 'ArrowUp' || event.key === 'ArrowDown') { event.preventDefault(); by(event.key === 'ArrowUp' ? 1 : -1); }
    else if (event.key === 'Enter') field.blur();
  };
  return (
    <div class="film-poured" data-poured={props.poured === null ? 'written' : 'typed'}>
      <label for={id}>{say('film.poured')}</label>
      <div>
        <button type="button" aria-label={say('film.less')} onClick={() => by(-1)}><svg viewBox="0 0 24 24" aria-hidden="true"><path d="M3 12H21" /></svg></button>
        <input ref={field} id={id} type="text" inputmode="decimal" autocomplete="off" enterkeyhint="done" value={shown()} style={{ width: `${Math.max(2, shown().length) * 0.64 + 0.2}em` }} aria-invalid={wrong()} aria-describedby={`${id}-unit ${id}-wrong`} onChange={take} onKeyDown={key} onFocus={() => field.select()} />
        <span id={`${id}-unit`}>{unitOf(props.step, props.text)}</span>
        <button type="button" aria-label={say('film.more')} onClick={() => by(1)}><svg viewBox="0 0 24 24" aria-hidden="true"><path d="M3 12H21M12 3V21" /></svg></button>
      </div>
      <p id={`${id}-wrong`} role="alert"><Show when={wrong()}>{say('film.wrong')}</Show></p>
    </div>
  );
}
