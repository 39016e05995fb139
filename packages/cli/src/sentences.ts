import { readFileSync } from 'node:fs';
import { plain } from './plain.ts';
import { ROOT } from './root.ts';

let sentences: Readonly<Record<string, string>> | undefined;

/** A sentence of `messages/en/cli.json`, its {names} filled. */
export function say(key: string, words: Readonly<Record<string, string | number>> = {}): string {
  sentences ??= JSON.parse(readFileSync(new URL('messages/en/cli.json', ROOT), 'utf8')) as Record<string, string>;
  const sentence = sentences[key];
  if (sentence === undefined) throw new Error(`no sentence ${key}`);
  return sentence.replace(/\{(\w+)\}/g, (_whole, name: string) => plain(String(words[name] ?? '')));
}
