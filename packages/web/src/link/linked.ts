import { createSignal, onCleanup, type Accessor } from 'solid-js';
import { say } from '../language/language.ts';
import type { State } from '../state.ts';

type Opened = 'copy' | 'same' | 'cut' | 'foreign' | 'long' | 'after' | 'text';
/** What begins the fragment of a link; no view has this name. */
const LINK = '#d=';

/**
 * Opens the link in the address, now and whenever one is put there. Its text takes the place of what stands in the sheet as one thing done, so that undo brings
 * that back; then the address is plain again, and coming back later does not open it a second time.
 *
 * @returns what is to be said of it, until its text is undone; '' for nothing
 */
export function openLinks(state: State): { readonly words: Accessor<string>; readonly failed: Accessor<boolean> } {
  const [told, setTold] = createSignal<{ readonly opened: Opened; readonly before: string } | null>(null);
  const look = (): void => {
    const fragment = location.hash;
    if (!fragment.startsWith(LINK)) return;
    history.replaceState(null, '', location.pathname + location.search);
    void put(fragment);
  };
  const put = async (fragment: string): Promise<void> => {
    const { textOfLink } = await import('./packed.ts'), link = textOfLink(fragment), before = state.text();
    if (link !== null) setTold('fault' in link ? { opened: link.fault, before: '' } : { opened: state.open(link.text) ? 'copy' : 'same', before });
  };
  look();
  addEventListener('hashchange', look);
  onCleanup(() => removeEventListener('hashchange', look));
  const now = () => { const t = told(); return t === null || (t.opened === 'copy' && state.text() === t.before) ? null : t; };
  return { words: () => { const t = now(); return t === null ? '' : say(`link.${t.opened}`); }, failed: () => { const t = now(); return t !== null && t.opened !== 'copy' && t.opened !== 'same'; } };
}
