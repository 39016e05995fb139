import { lookup, type Measured } from './lookup.ts';

/** A word that German leaves open before "oder" or "und" ("Limetten- oder Zitronensaft"), filled with the end of the last; undefined where no name comes of it. */
export function filledCompound(open: string, last: string, measured: Measured): string | undefined {
  const stem = open.replace(/[-‐–]$/, ''), word = last.toLowerCase();
  for (let n = 1; n < word.length - 2; n++) if (lookup(stem + word.slice(n), measured) !== undefined) return stem + word.slice(n);
  return undefined;
}

/** A part of a fruit in one German word: "Grapefruit" and "saft" are "grapefruitsaft", "Limette" and "saft" "limettensaft". */
export function partName(fruit: string, part: string, measured: Measured): string {
  const stem = fruit.toLowerCase(), bare = stem.replace(/e$/, '');
  const forms = [`${stem}n${part}`, `${stem}${part}`, `${bare}en${part}`, `${bare}${part}`].map((form) => form.replace(/nn/, 'n'));
  return forms.find((form) => lookup(form, measured) !== undefined) ?? forms[0] ?? `${stem}${part}`;
}

const ENDINGS: readonly (readonly [RegExp, string])[] = [[/bl(?:ätter|ättern|ättchen|att)$/, 'leaf'], [/spalten?$/, 'wedge'], [/scheiben?$/, 'slice'], [/(?:zweige?|zweiglein)$/, 'sprig'], [/würfeln?$/, 'cube'], [/zesten?$/, 'strip'], [/(?:rad|räder)$/, 'wheel']];

/** German words that hold their unit behind: "Minzblätter" are leaves of mint, "Limettenrad" a wheel of lime. */
export function compoundUnit(label: string): { readonly unit: string; readonly rest: string } | undefined {
  if (!/^\p{L}{6,}$/u.test(label)) return undefined;
  for (const [ending, unit] of ENDINGS) {
    const match = ending.exec(label.toLowerCase());
    if (match === null || match.index < 3) continue;
    const stem = label.slice(0, match.index);
    const bare = stem.replace(/(?:en|n|s)$/, '');
    for (const rest of [`${bare}e`, bare, `${stem}e`, stem]) if (rest.length > 2 && lookup(rest, 'count') !== undefined) return { unit, rest };
  }
  return undefined;
}
