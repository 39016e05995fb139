import absent from '../../../../messages/en/absent.json' with { type: 'json' };
import findings from '../../../../messages/en/findings.json' with { type: 'json' };
import inputs from '../../../../messages/en/inputs.json' with { type: 'json' };
import methods from '../../../../messages/en/methods.json' with { type: 'json' };
import problems from '../../../../messages/en/problems.json' with { type: 'json' };
import remedies from '../../../../messages/en/remedies.json' with { type: 'json' };

export type MessageLanguage = 'en' | 'de';

/** All that is said in one language. */
export interface Messages {
  readonly findings: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly problems: Readonly<Record<string, string>>;
  readonly remedies: Readonly<Record<string, { readonly say: string; readonly insert?: Readonly<Record<string, string>> }>>;
  /** keys of inputs as words, and what tells one more of them; English where a language has none */
  readonly inputs?: { readonly words: Readonly<Record<string, string>>; readonly do: Readonly<Record<string, string>>; readonly again: string };
  /** how each figure and limit is worked out, by its method */
  readonly methods?: Readonly<Record<string, string>>;
  /** why a figure has no number, by its code */
  readonly absent?: Readonly<Record<string, string>>;
  /** words that stand in the gaps of sentences: groups of allergens, agents, glasses */
  readonly values: Readonly<Record<string, string>>;
  /** what the engine writes into a spec, numbers as `#`, and how this language writes it */
  readonly written: Readonly<Record<string, string>>;
  readonly decimal: '.' | ',';
}

export const ENGLISH = { absent, findings, inputs, methods, problems, remedies, values: {}, written: {}, decimal: '.' } as unknown as Messages;
const known = new Map<MessageLanguage, Messages>([['en', ENGLISH]]);

/** The sentences of a language; English where they have not been loaded. */
export const messagesIn = (language: MessageLanguage): Messages => known.get(language) ?? ENGLISH;

/** Which language a tag, a locale or a word means: `de`, `de_AT.UTF-8`, `Deutsch`; undefined for one that is not spoken here. */
export function languageNamed(text: string): MessageLanguage | undefined {
  if (/^(?:de(?:[-_.@].*)?|deutsch|german)$/i.test(text.trim())) return 'de';
  return /^(?:en(?:[-_.@].*)?|english|englisch|c|posix)$/i.test(text.trim()) ? 'en' : undefined;
}

/** Loads the sentences of a language, once. English is always there. */
export async function loadLanguage(language: MessageLanguage): Promise<void> {
  if (language === 'de' && !known.has('de')) known.set('de', (await import('./german.ts')).GERMAN);
}
