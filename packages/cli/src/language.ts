import type { MessageLanguage } from '@washline/spec';

let spoken: MessageLanguage = 'en';

/** The language of what is said, until it is set anew. */
export const language = (): MessageLanguage => spoken;
export function speak(chosen: MessageLanguage): void { spoken = chosen; }

const NAMES: Readonly<Record<string, MessageLanguage>> = { de: 'de', deutsch: 'de', german: 'de', en: 'en', english: 'en', englisch: 'en' };

/** What `--language` asks for, or null where it asks for one that is not spoken here; undefined without it. */
export function askedFor(args: readonly string[]): MessageLanguage | null | undefined {
  const end = args.indexOf('--');
  const own = end < 0 ? args : args.slice(0, end);
  const at = own.findIndex((arg) => arg === '--language' || arg.startsWith('--language='));
  if (at < 0) return undefined;
  const value = own[at]?.startsWith('--language=') === true ? own[at].slice('--language='.length) : own[at + 1] ?? '';
  return NAMES[value.toLowerCase()] ?? null;
}

/** The language of the machine: the first of LC_ALL, LC_MESSAGES and LANG that is set; English where it is another than German. */
export function ofMachine(env: Readonly<Record<string, string | undefined>>): MessageLanguage {
  const locale = [env['LC_ALL'], env['LC_MESSAGES'], env['LANG']].find((one) => one !== undefined && one !== '') ?? '';
  return /^de(?:[_.@-]|$)/i.test(locale) ? 'de' : 'en';
}
