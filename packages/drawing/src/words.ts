import en from './words.en.json' with { type: 'json' };

type Table = Readonly<Record<string, string>>;
let table: Table = en;
let values: Table = {};
let point: '.' | ',' = '.';

/**
 * The language the drawing is lettered in from now on; its words are loaded when first wanted.
 *
 * @param language `en` or `de`
 * @param named words of the engine's own (methods, glasses, kinds of a layer) as that language has them
 */
export async function speak(language: 'en' | 'de', named: Table = {}): Promise<void> {
  table = language === 'de' ? (await import('./words.de.json', { with: { type: 'json' } })).default : en;
  values = named;
  point = language === 'de' ? ',' : '.';
}

/** A phrase of the drawing with its gaps filled; `{name}` is a gap. A key the table does not have shows as itself. */
export function words(key: string, gaps: Readonly<Record<string, string | number>>): string {
  return (table[key] ?? key).replace(/\{(\w+)\}/g, (_, gap: string) => { const value = String(gaps[gap] ?? ''); return values[value] ?? value; });
}

/** A name as it is lettered: small in English, as written in German, whose nouns are large. */
export const lettered = (name: string): string => (table === en ? name.toLowerCase() : name);

/** A number's decimal sign. */
export const pointed = (text: string): string => (point === '.' ? text : text.replace('.', point));
