import { readFileSync } from 'node:fs';
import { language } from './language.ts';
import { plain } from './plain.ts';
import { ROOT } from './root.ts';

const files = new Map<string, Readonly<Record<string, string>>>();

/** A file of `messages/` in the language that is spoken; English ones where it has none. */
export function messages(name: string): Readonly<Record<string, string>> {
  const path = `messages/${language()}/${name}.json`;
  let found = files.get(path);
  if (found === undefined) { found = JSON.parse(readFileSync(new URL(path, ROOT), 'utf8')) as Record<string, string>; files.set(path, found); }
  return found;
}

/** A sentence of `messages/<language>/cli.json`, its {names} filled. */
export function say(key: string, words: Readonly<Record<string, string | number>> = {}): string {
  const sentence = messages('cli')[key];
  if (sentence === undefined) throw new Error(`no sentence ${key}`);
  return sentence.replace(/\{(\w+)\}/g, (_whole, name: string) => plain(String(words[name] ?? '')));
}

/** A word of the engine's (a method, a glass, an allergen, a unit) as the spoken language has it. */
export function named(word: string): string { return language() === 'en' ? word : messages('values')[word] ?? word; }

/** A number's decimal sign. */
export function pointed(text: string): string { return language() === 'de' ? text.replace(/(\d)\.(?=\d)/, '$1,') : text; }
