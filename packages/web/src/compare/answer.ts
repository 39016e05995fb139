import { createSignal } from 'solid-js';
import type { State } from '../state.ts';

const [told, setTold] = createSignal<{ readonly text: string; readonly words: string } | null>(null);
/** What was last told of the difference in strength, for the text it was told of. */
export const tellAnswer = setTold;
/** What the foot says of the view; nothing until it was opened, and while the text is newer. */
export function compareAnswer(state: State): string { const last = told(); return last?.text === state.text() ? last.words : ''; }
