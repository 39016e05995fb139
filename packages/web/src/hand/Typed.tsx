import { createSignal, onMount } from 'solid-js';
import { say } from '../language/language.ts';
import type { Typing } from './hand.ts';

/** An amount typed over where it stands: Enter or leaving puts it, Escape leaves it as it was; Tab goes on from where it stands. */
export function Typed(props: { readonly at: Typing; readonly typed: (text: string | null, left?: boolean) => boolean }) {
  let box!: HTMLInputElement;
  const { at } = props, [wrong, setWrong] = createSignal(false);
  onMount(() => { box.focus({ preventScroll: true }); if (at.value.length > 1 || !/^\d$/.test(at.value)) box.select(); });
  const end = (text: string | null): void => { setWrong(!props.typed(text)); };
  /** Another window is no leaving: the box has the focus still. */
  const leave = (): void => { if (document.activeElement !== box && !props.typed(box.value, true)) props.typed(null, true); };
  const key = (e: KeyboardEvent): void => {
    e.stopPropagation();
    if (e.key === 'Enter' || e.key === 'Tab') end(box.value);
    else if (e.key === 'Escape') end(null);
  };
  return (
    <label class="typed" classList={{ wrong: wrong() }} style={{ left: `${Math.max(4, at.x - 4)}px`, top: `${at.y - 3}px`, height: `${at.height + 6}px` }}>
      <span class="aside">{say('amount.of', { amount: at.name })}</span>
      <input ref={box} type="text" inputmode="decimal" autocomplete="off" size={Math.max(3, at.value.length)} value={at.value} aria-invalid={wrong()} aria-describedby={wrong() ? 'typed-wrong' : undefined} onInput={() => setWrong(false)} onKeyDown={key} onBlur={leave} />
      <span aria-hidden="true">{at.unit}</span>
      <span id="typed-wrong" class="said" role="alert">{wrong() ? say('amount.wrong') : ''}</span>
    </label>
  );
}
