import { createMemo, createSignal } from 'solid-js';
import { keepOther, keptOther } from '../device.ts';
import type { State } from '../state.ts';
import colada from '../../../../demo/colada.drink?raw';
import daiquiri from '../../../../demo/daiquiri.drink?raw';
import tonic from '../../../../demo/gin-and-tonic.drink?raw';
import punch from '../../../../demo/tea-milk-punch.drink?raw';

/** What the spec is held against: a text, read for one of its variants or for none. */
export interface Side { readonly key: string; readonly name: string; readonly text: string; readonly variant: string | null }

/** Classics that are always there, by their own names. */
const CLASSICS: readonly string[] = [colada, daiquiri, tonic, punch];
const nameOf = (text: string): string => (text.split('\n').find((line) => line.trim() !== '') ?? '').trim();

/** The sides a spec can be held against: its own variants, a text that was kept, and classics; the one that is chosen. */
export function makeSides(state: State) {
  const [kept, setKept] = createSignal(keptOther()), [chosen, setChosen] = createSignal<string | null>(null);
  const all = createMemo<readonly Side[]>(() => {
    const text = state.text(), other = kept(), { variants } = state.now().document;
    return [
      ...(other === null ? [] : [{ key: 'kept', name: nameOf(other), text: other, variant: null }]),
      ...variants.map((variant) => ({ key: `variant:${variant}`, name: variant, text, variant })),
      ...CLASSICS.filter((classic) => classic !== text).map((classic) => ({ key: `classic:${nameOf(classic)}`, name: nameOf(classic), text: classic, variant: null })),
    ];
  });
  // what was kept goes first, then the classic that the name ends in, then a variant
  const usual = createMemo(() => {
    const name = nameOf(state.text()).toLowerCase(), sides = all();
    return sides.find((side) => side.key === 'kept') ?? sides.find((side) => side.key.startsWith('classic:') && name.endsWith(side.name.toLowerCase())) ?? sides[0] ?? null;
  });
  return {
    all,
    side: createMemo(() => all().find((side) => side.key === chosen()) ?? usual()),
    choose: setChosen,
    /** keeps the text as it is now as the other side */
    keep: () => { const text = state.text(); keepOther(text); setKept(text); setChosen('kept'); },
  };
}
