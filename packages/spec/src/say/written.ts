import type { Document } from '@washline/engine';
import { languageNamed, loadLanguage, type MessageLanguage, type Messages } from './messages.ts';

const GERMAN_WORDS = /(?<!\p{L})(?:mit|auf|bei|und|durch|ein|eine|einen|aus|saft|zucker|rühren|schütteln|shaken|abseihen|lassen|auffüllen|kochen|garnieren|spritzer|prise|EL|TL|BL|glas|aufbau|regal|\p{L}+(?:saft|sirup|würfeln?|schale))(?!\p{L})/giu;

/** True where a text without a word about its language is German by its words. */
export function readsGerman(text: string): boolean { return (text.slice(0, 20_000).match(GERMAN_WORDS)?.length ?? 0) >= 2; }

/** The language a spec is written in: what its head says, else by its words. What is put into it is put in in this language. */
export function writtenIn(document: Document): MessageLanguage {
  const said = document.head.language === undefined ? undefined : languageNamed(document.head.language.value);
  return said ?? (readsGerman(document.text) ? 'de' : 'en');
}

/** Loads the sentences in which a spec is added to, once: German where its words are, or its head may say so. */
export async function loadLanguageOf(text: string): Promise<void> { if (/^\s*(?:language|sprache)\b/im.test(text) || readsGerman(text)) await loadLanguage('de'); }

const NUMBER = /[-−]?\d+(?:\.\d+)?/g;
/** What the engine writes in English and in numbers, as another language writes it: by its table, numbers kept; bare amounts by its decimal sign. All else stays. */
export function rewritten(text: string, messages: Messages): string {
  if (messages.decimal === '.') return text;
  const [, before = '', core = '', after = ''] = /^([\s,]*)([^]*?)([\s,]*)$/.exec(text) ?? [];
  if (core === '') return text;
  const numbers = core.match(NUMBER) ?? [];
  const template = messages.written[core.replace(NUMBER, '#')];
  if (template === undefined) return /^[-−]?\d+(?:\.\d+)?(?:\s*(?:g|ml|cl|oz|%|°C))?$/.test(core) ? before + core.replace('.', messages.decimal) + after : text;
  let at = 0;
  return before + template.replace(/#/g, () => (numbers[at++] ?? '').replace('.', messages.decimal)) + after;
}
