import { speak } from '@washline/drawing';
import { createSignal } from 'solid-js';
import en from './en.json';

type Language = 'en' | 'de';
type Key = keyof typeof en;
let values: Readonly<Record<string, string>> = {};
const [spoken, setSpoken] = createSignal<{ readonly language: Language; readonly table: Readonly<Record<string, string>>; readonly named: number }>({ language: 'en', table: en, named: 0 });

/** The language the page is in; what asks is told again when it turns. */
export const language = (): Language => spoken().language;
/** Grows with each turn and each word learnt: what is drawn from words is drawn anew. */
export const turn = (): number => spoken().named;

/** A sentence of the page with its gaps filled. */
export function say(key: Key, gaps: Readonly<Record<string, string | number>> = {}): string {
  return (spoken().table[key] ?? key).replace(/\{(\w+)\}/g, (_, gap: string) => String(gaps[gap] ?? ''));
}
/** A sentence whose key is made of words; the words themselves where there is none. */
export const sayIf = (key: string, other: string): string => spoken().table[key] ?? other;

/** Turns the page to a language; its sentences come over the line when first wanted. */
export async function turnTo(next: Language): Promise<void> {
  const [table] = await Promise.all([next === 'de' ? import('./de.json').then((all) => all.default) : en, speak(next, next === 'de' ? values : {})]);
  document.documentElement.lang = next;
  setSpoken((before) => ({ language: next, table, named: before.named + 1 }));
}

/** What is drawn from words is drawn anew: the units they are told in have changed. */
export function again(): void { setSpoken((before) => ({ ...before, named: before.named + 1 })); }

/** The engine's own words in German, once they have come. */
export function name(german: Readonly<Record<string, string>>): void {
  if (values === german) return;
  values = german;
  if (language() === 'de') void speak('de', values).then(() => setSpoken((before) => ({ ...before, named: before.named + 1 })));
}

/** What the browser asks for first: German where it is, else English. */
export const ofBrowser = (): Language => (/^de(?:-|$)/i.test(navigator.languages[0] ?? navigator.language) ? 'de' : 'en');
