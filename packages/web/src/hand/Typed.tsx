import { createSignal, onMount } from 'solid-js';
import { say } from '../language/language.ts';
import type { Typing } from './hand.ts';

/** An amount typed over where it stands: Enter or leaving puts it, Escape leaves it as it was. */
export function Typed(props: { readonly at: Typing; readonly typed: (text: string | null) => boolean }) {
  let box!: HTMLInputElement, over = false;
  const { at } = props, [wrong, setWrong] = createSignal(false);
  onMount(() => { box.focus({ preventScroll: true }); if (at.value.length > 1 || !/^\d$/.test(at.value)) box.select(); });
  const end = (text: string | null): void => { if (over) return; over = props.typed(text); setWrong(!over); };
  const key = (e: KeyboardEvent): void => {
    e.stopPropagation();
    if (e.key === 'Enter') end(box.value);
    else if (e.key === 'Escape') end(null);
  };
  return (
    <label class="typed" classList={{ wrong: wrong() }} style={{ left: `${Math.max(4, at.x - 4)}px`, top: `${at.y - 3}px`, height: `${at.height + 6}px` }}>
      <span class="aside">{say('amount.of', { amount: at.name })}</span>
      <input ref={box} type="text" inputmode="decimal" autocomplete="off" size={Math.max(3, at.value.length)} value={at.value} aria-invalid={wrong()} aria-describedby={wrong() ? 'typed-wrong' : undefined} onInput={() => setWrong(false)} onKeyDown={key} onBlur={() => { if (!props.typed(box.value)) props.typed(null); over = true; }} />
      <span aria-hidden="true">{at.unit}</span>
      <span id="typed-wrong" class="said" role="alert">{wrong() ? say('amount.wrong') : ''}</span>
    </label>
  );
}
