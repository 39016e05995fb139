/** Sizes of what is read from two metres, px, on a sheet of 1440 × 900; they shrink and grow with the sheet. */
const WIDE = { verb: 168, what: 68, number: 270, unit: 68, poured: 96, least: 68 };
/** On a phone, held in a hand or stood on the bar. */
const NARROW = { verb: 104, what: 38, number: 150, unit: 32, poured: 46, least: 38 };

export interface Laid { readonly narrow: boolean; /** factor of the sheet */ readonly s: number; readonly split: number; readonly left: number; readonly top: number; readonly high: number; readonly low: number; readonly number: number }
export interface Parts { readonly words: HTMLElement; readonly verb: HTMLElement; readonly cautions: HTMLElement | null; readonly to: CSSStyleDeclaration }

/**
 * Sets the words as large as they fit and tells where the level may then lie.
 * @param needs what stands under the rule
 */
export function lay({ words, verb, cautions, to }: Parts, room: { readonly width: number; readonly height: number }, needs: { readonly time: string | null; readonly poured: boolean; readonly list: boolean }): Laid {
  const narrow = room.width < 700, size = narrow ? NARROW : WIDE, s = narrow ? Math.min(1.3, Math.max(0.8, room.width / 375)) : Math.min(2, room.width / 1440, (room.height + 84) / 900);
  const split = room.width * (!narrow ? 0.45 : needs.time !== null || needs.list ? 0.5 : needs.poured ? 0.56 : 0.97), left = narrow ? 16 : split + 72 * Math.min(1, s), breadth = room.width - left - (narrow ? 16 : 46);
  const both = needs.time !== null && needs.poured, tall = size.poured * s * (both ? 0.72 : 1);
  const set = (name: string, px: number): void => to.setProperty(`--film-${name}`, `${px.toFixed(1)}px`);
  let big = size.verb * s, what = size.what * s;
  const least = size.least * s;
  set('left', left); set('breadth', breadth); set('unit', size.unit * s); set('poured', tall); set('what', what); set('verb', big);
  verb.dataset['whole'] = 'true';
  if (verb.scrollWidth > breadth) big = Math.max(least, Math.floor((big * breadth) / verb.scrollWidth));
  set('verb', big);
  verb.dataset['whole'] = String(verb.scrollWidth <= breadth + 1);
  const under = needs.time !== null || needs.poured || needs.list, most = room.height * (both ? (narrow ? 0.34 : 0.4) : under ? 0.5 : 0.66);
  while (words.offsetHeight > most && big > Math.max(least, what * 1.15)) { big = Math.max(least, what * 1.1, big * 0.92); set('verb', big); }
  while (words.offsetHeight > room.height * (both ? 0.46 : under ? 0.58 : 0.72) && what > 14) { what *= 0.94; big = Math.min(big, what * 1.3); set('what', what); set('verb', big); }
  const bottom = words.offsetTop + words.offsetHeight, above = (narrow ? 26 : 46) * Math.min(1, s) + 6;
  const foot = (cautions?.offsetHeight ?? 0) + (narrow ? 10 : 18), fifty = (narrow ? 40 : 52) * Math.min(1, s);
  const high = bottom + above, poured = needs.poured ? (narrow ? tall * 1.2 + 74 : Math.max(64, tall * 1.2) + 38) : 0;
  const wanted = size.number * s * ((needs.time?.length ?? 0) > 3 ? 0.76 : 1), free = room.height - high - foot - fifty - (needs.time === null ? 0 : size.unit * s * 1.25) - poured;
  const letters = Math.max(1, needs.time?.length ?? 1);
  const across = narrow ? room.width - split - 16 : breadth;
  const number = Math.max(size.what * s, Math.min(wanted, free / 0.86, across / (0.6 * letters)));
  const below = needs.list ? room.height * 0.36 : fifty + foot + poured + (needs.time === null ? 0 : number * 0.86 + size.unit * s * 1.25);
  set('number', number); set('foot', foot);
  return { narrow, s, split, left, top: narrow ? bottom + 8 : 14, high, low: Math.max(high, room.height - below), number };
}
