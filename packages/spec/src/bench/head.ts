import { minorDigits } from '@washline/engine';
import { fold } from '../names/fold.ts';
import { languageNamed } from '../say/messages.ts';

/** What the head of a bench says; null where it says nothing. */
export interface BenchHead { currency: string | null; country: string | null; measures: string | null; shows: 'ml' | 'oz' | null; language: string | null; zone: string | null }
export const NO_HEAD: BenchHead = { currency: null, country: null, measures: null, shows: null, language: null, zone: null };

const KEYS: Readonly<Record<string, keyof BenchHead>> = {
  currency: 'currency', wahrung: 'currency', country: 'country', land: 'country', measures: 'measures', masse: 'measures', units: 'shows', einheiten: 'shows',
  language: 'language', sprache: 'language', timezone: 'zone', zeitzone: 'zone',
};
/** Which key of the head a word is. */
export const headKey = (word: string): keyof BenchHead | undefined => (Object.hasOwn(KEYS, fold(word)) ? KEYS[fold(word)] : undefined);

/** What each key may say, for the sentence of a problem. */
export const MAY_SAY: Readonly<Record<keyof BenchHead, string>> = {
  currency: 'EUR, USD, GBP …', country: 'DE, US, GB …', measures: 'us, uk, au, metric, us-1910', shows: 'ml, oz', language: 'en, de', zone: 'Europe/Berlin, America/New_York …',
};

/**
 * The value of a key of the head as it is kept; null where it cannot be meant.
 * @source iso-4217 currencies; countries as ISO 3166, zones as the IANA list, both as the runtime knows them
 */
export function headValue(key: keyof BenchHead, text: string): string | null {
  const word = text.trim();
  switch (key) {
    case 'currency': return minorDigits(word.toUpperCase()) === undefined ? null : word.toUpperCase();
    case 'country': return countryOf(word.toUpperCase() === 'UK' ? 'GB' : word.toUpperCase());
    case 'measures': return ['us', 'uk', 'au', 'metric', 'us-1910'].find((system) => system === word.toLowerCase()) ?? null;
    case 'shows': return ['ml', 'oz'].find((unit) => unit === word.toLowerCase()) ?? null;
    case 'language': return languageNamed(word) ?? null;
    case 'zone': return zoneOf(word);
  }
}

function countryOf(code: string): string | null {
  if (!/^[A-Z]{2}$/.test(code)) return null;
  return new Intl.DisplayNames('en', { type: 'region', fallback: 'none' }).of(code) === undefined ? null : code;
}
function zoneOf(name: string): string | null {
  if (!/^[A-Za-z]+(?:[/_+-][A-Za-z0-9]+)*$/.test(name)) return null;
  try { return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone; } catch { return null; }
}
