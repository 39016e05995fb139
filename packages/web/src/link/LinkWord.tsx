import { createEffect, createSignal, on, Show } from 'solid-js';
import { say } from '../language/language.ts';
import type { State } from '../state.ts';
import '../style/link.css';

/** The word in the foot that makes a link to the drink as it stands and copies it; where the browser has no clipboard the link stands there to be copied by hand. */
export function LinkWord(props: { readonly state: State }) {
  const [said, setSaid] = createSignal<'copied' | 'too-long' | null>(null), [field, setField] = createSignal<string | null>(null);
  let button!: HTMLButtonElement;
  createEffect(on(props.state.text, () => { setSaid(null); setField(null); }));
  const make = async (): Promise<void> => {
    const { linkOf } = await import('./packed.ts'), link = await linkOf(props.state.text());
    setSaid(null);
    if (link === null) { setSaid('too-long'); return; }
    const address = location.origin + location.pathname + location.search + link;
    try { await navigator.clipboard.writeText(address); setSaid('copied'); } catch { setField(address); }
  };
  const close = (): void => { setField(null); button.focus(); };
  return (
    <>
      <button type="button" ref={button} aria-expanded={field() === null ? undefined : true} onClick={() => { if (field() === null) void make(); else close(); }}>{say('link')}<span class="link-said" role="status">{said() === null ? '' : say(`link.${said()!}`)}</span></button>
      <Show when={field()}>{(address) => (
        <label class="link-field" onKeyDown={(e) => { if (e.key === 'Escape') close(); }}>{say('link.by-hand')}
          <input type="text" readonly value={address()} ref={(input) => queueMicrotask(() => { input.focus(); input.select(); })} onFocus={(e) => e.currentTarget.select()} />
        </label>
      )}</Show>
    </>
  );
}
