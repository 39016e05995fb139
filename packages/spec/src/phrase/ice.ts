import type { IceWritten } from '@washline/engine';
import { words, type WordRow } from '../vocabulary/vocabulary.ts';
import { isCounted, makeAmount, rangeAt, unitAt, type Counted, type UnitAt } from './amount.ts';
import { temperatureAt } from './facts.ts';
import type { Phrase } from './phrase.ts';

const ices: ReadonlyMap<string, WordRow> = words('ice');
const KIND: Readonly<Record<string, IceWritten['kind']>> = {
  cubes: 'cubes', 'large-cube': 'large cube', 'clear-cube': 'large cube', sphere: 'sphere', spear: 'spear', cracked: 'cracked', crushed: 'crushed', shaved: 'shaved', pebble: 'pebble', block: 'block', lump: 'cracked', flake: 'shaved', wet: 'cubes', dry: 'cubes', 'fresh-ice': 'cubes',
};
const PLAIN = new Map<string, IceWritten['kind']>([
  ['ice', 'cubes'], ['cube', 'cubes'], ['cubes', 'cubes'], ['icecube', 'cubes'], ['icecubes', 'cubes'], ['crushed', 'crushed'], ['pebble', 'pebble'], ['block', 'block'], ['blocks', 'block'], ['sphere', 'sphere'], ['spheres', 'sphere'], ['spear', 'spear'], ['cracked', 'cracked'], ['shaved', 'shaved'], ['eis', 'cubes'], ['eiswurfel', 'cubes'], ['eiswurfeln', 'cubes'], ['wurfel', 'cubes'], ['wurfeln', 'cubes'], ['crushedice', 'crushed'], ['icesphere', 'sphere'], ['eiskugel', 'sphere'], ['lumps', 'cracked'],
]);
/** Where ice comes from, and so how cold it is. */
const FROM: Readonly<Record<string, { readonly celsius: number; readonly word: string }>> = { gefrierfach: { celsius: -18, word: 'freezer' }, tiefkuhler: { celsius: -18, word: 'freezer' }, gefrierschrank: { celsius: -18, word: 'freezer' }, freezer: { celsius: -18, word: 'freezer' }, well: { celsius: 0, word: 'bar well' } };
const SIZE = new Set(['mm']);
const MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, inch: 25.4 };
const ADJECTIVES = new Set(['large', 'big', 'clear', 'fresh', 'new', 'clean', 'single', 'of', 'plenty', 'lots', 'lump', 'fine', 'dry', 'hard', 'cold', 'wet', 'frozen', 'good', 'the', 'some', 'more', 'plain', 'standard', 'small', 'fresher', 'frisches', 'frischem', 'frische', 'frischen', 'frischer', 'neues', 'neuem', 'viel', 'klarer', 'klaren', 'klares', 'klare', 'klarem', 'grosser', 'grossen', 'grosses', 'grosse', 'grossem', 'einzelner', 'einzelnen', 'solid', 'giant', 'round', 'tempered']);

export interface IceAt { readonly ice: IceWritten; readonly end: number; readonly unit: string; readonly words: string; readonly digits: boolean; readonly from: number }

/** Ice as written: "200 g cubes at -5 °C", "1 clear cube 50 mm", "32 mm cubes", "crushed ice". */
export function iceAt(p: Phrase, i: number, end: number): IceAt | undefined {
  let k = i, mass: IceWritten['mass'], count: number | undefined, size: number | undefined, clear = false, large = false, digits = false;
  const marks: [number, number][] = [];
  for (let round = 0; round < 3; round++) {
    const number = rangeAt(p, k, end);
    if (!isCounted(number)) break;
    let at = number.end;
    if (p.isHyphen(at)) at++;
    const length = unitAt(p, at, end, SIZE);
    if (length !== undefined && size === undefined) {
      k = length.end;
      size = edgeOf(number, length);
      if (size !== undefined) marks.push([number.first, k]);
      continue;
    }
    const unit = p.word(at) === 'single' ? undefined : unitAt(p, at, end);
    if (unit !== undefined && (unit.form.of === 'g' || unit.form.of === 'ml') && mass === undefined) {
      mass = makeAmount(p, number, unit, at, undefined);
      digits = true;
      k = unit.end;
    } else if (unit !== undefined && /^(piece|block|sphere)$/.test(unit.form.unit) && iceWord(p, p.word(unit.end) === 'of' ? unit.end + 1 : unit.end, end) !== undefined && (p.word(at) === 'lumps' || !PLAIN.has(p.word(at)))) { count = number.low; digits = number.digits; k = unit.end; }
    else { if (count !== undefined) break; count = number.low; digits = number.digits; k = number.end; }
    marks.push([number.first, k]);
    if (count !== undefined && (p.isMark(k, '×') || p.word(k) === 'x') && p.isNumber(k + 1)) k++;
  }
  while (ADJECTIVES.has(p.word(k)) && k < end && iceWord(p, k, end) === undefined) { if (/^(clear|klare[rnsm]?)$/.test(p.word(k))) clear = true; if (/^(large|big|giant|grosse[rnsm]?)$/.test(p.word(k))) large = true; k++; }
  const inner = sizeAt(p, k, end);
  if (inner !== undefined) { size ??= inner.value; marks.push([k, inner.end]); k = inner.end; }
  while (ADJECTIVES.has(p.word(k)) && k < end && iceWord(p, k, end) === undefined) { if (/^(clear|klare[rnsm]?)$/.test(p.word(k))) clear = true; if (/^(large|big|giant|grosse[rnsm]?)$/.test(p.word(k))) large = true; k++; }
  const word = iceWord(p, k, end);
  if (word === undefined) return undefined;
  let kind = word.kind;
  if (word.key === 'clear-cube') clear = true;
  if ((clear || large) && kind === 'cubes') kind = 'large cube';
  const named = k;
  const wet = word.key === 'dry' || /^(dry|trocken\w*)$/.test(p.word(named - 1)) ? false : word.key === 'wet' || /^(wet|nass\w*)$/.test(p.word(named - 1)) ? true : undefined;
  k = word.end;
  const behind = sizeAt(p, p.isMark(k, ',') || p.isMark(k, '(') ? k + 1 : k, end);
  if (behind !== undefined && size === undefined) { size = behind.value; marks.push([k, behind.end]); k = behind.end; }
  let temperature: IceWritten['temperature'];
  const at = p.word(k) === 'at' || p.isMark(k, '@') || p.isMark(k, ',') || p.word(k) === 'bei' ? k + 1 : k;
  const heat = temperatureAt(p, at, end, true);
  const place = heat === undefined && /^(from|aus)$/.test(p.word(k)) ? FROM[p.word(/^(the|dem)$/.test(p.word(k + 1)) ? k + 2 : k + 1)] : undefined;
  if (place !== undefined) { const to = k + (/^(the|dem)$/.test(p.word(k + 1)) ? 3 : 2); temperature = { celsius: place.celsius, word: place.word, span: p.span(k, to) }; k = to; }
  if (heat !== undefined) { temperature = { celsius: Math.round(heat.celsius * 1e6) / 1e6, span: p.span(at, heat.end) }; marks.push([at, heat.end]); k = heat.end; }
  for (const [a, b] of marks) p.use(a, b);
  return {
    ice: {
      kind, ...(mass !== undefined ? { mass } : {}), ...(count !== undefined ? { count } : {}), ...(size !== undefined ? { size_mm: size } : {}), ...(clear ? { clear } : {}), ...(wet === undefined ? {} : { wet }), named: p.span(named, word.end),
      ...(temperature !== undefined ? { temperature } : {}), span: p.span(i, k),
    },
    end: k, unit: mass?.unit ?? 'cube', words: p.slice(named, word.end).toLowerCase(), digits, from: i,
  };
}
function sizeAt(p: Phrase, i: number, end: number): { readonly value: number; readonly end: number } | undefined {
  const number = rangeAt(p, i, end);
  if (!isCounted(number) || !number.digits) return undefined;
  const unit = unitAt(p, p.isHyphen(number.end) ? number.end + 1 : number.end, end, SIZE), value = unit === undefined ? undefined : edgeOf(number, unit);
  return unit === undefined || value === undefined ? undefined : { value, end: unit.end };
}
/** The edge of a piece in mm; undefined under 1 mm, which is no piece ("0 inch ice"): its words stay unread and its size is assumed. */
function edgeOf(number: Counted, unit: UnitAt): number | undefined {
  const mm = (number.low + number.high) / 2 * (MM[unit.form.unit] ?? 0);
  return mm < 1 ? undefined : mm;
}
interface IceWord { readonly kind: IceWritten['kind']; readonly key: string; readonly end: number }
/** "ice spear", "clear ice sphere": what stands behind "ice" says which. */
function iceWord(p: Phrase, i: number, end: number): IceWord | undefined {
  const word = iceAlone(p, i, end), shape = word !== undefined && word.end < end && p.word(word.end - 1) === 'ice' ? PLAIN.get(p.word(word.end)) : undefined;
  return word === undefined || shape === undefined ? word : { ...word, kind: shape === 'cubes' ? word.kind : shape, end: word.end + 1 };
}
function iceAlone(p: Phrase, i: number, end: number): IceWord | undefined {
  const table = p.longest(i, end, 4, ices), plain = p.longest(i, end, 2, PLAIN);
  if (table !== undefined && table.end >= (plain?.end ?? 0)) {
    const kind = KIND[table.value.key];
    if (kind !== undefined && !(table.value.written === 'snow')) return { kind, key: table.value.key, end: table.end };
  }
  return plain === undefined ? undefined : { kind: plain.value, key: '', end: p.word(plain.end) === 'ice' ? plain.end + 1 : plain.end };
}
