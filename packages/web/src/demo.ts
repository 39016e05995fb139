import FIRST from 'virtual:first-reading';
import type { Read } from './read.ts';

/** The drink the page opens with, and what the engine read in it when the page was built. */
export const DEMO: string = FIRST.document.text;
export const DEMO_READ: Read = FIRST;

/** What is shown of a kept draft while the engine is on its way: nothing. */
export function unread(text: string): Read {
  return {
    reading: { ...FIRST.reading, drink: '', figures: {}, stages: [], preps: {}, glass: null, standard_drinks: { US: 0, UK: 0, AU: 0 }, allergens: [], diet: [], assumed: [], findings: [], accepted: [] },
    document: { ...FIRST.document, text, name: '', head: {}, sections: [], variants: [], problems: [] }, findings: [], problems: [], carried: false,
  };
}
