import type { Amount, Thing } from '@washline/engine';
import { partName } from '../names/compound.ts';
import { approxAt, isCounted, makeAmount, rangeAt, type NumberAt } from '../phrase/amount.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { nameEnd, thingAt, type ThingAt } from '../phrase/thing.ts';
import { build, linkWords, type Measured } from './build.ts';
import { readTail } from './tail.ts';

const PARTS = new Set(['juice', 'zest', 'peel', 'rind', 'skin', 'white', 'whites', 'yolk', 'yolks', 'saft', 'schale', 'abrieb', 'pulp', 'seeds', 'jus', 'jugo', 'zumo', 'zeste', 'eiweiss']);

/** "juice of half a lime", "Juice 1/2 Lemon", "zest of 2 lemons", "the white of an egg": a count of fruit. `lead` is a number before. */
export function partOf(p: Phrase, i: number, end: number, lead: NumberAt | undefined): Measured | undefined {
  let k = i;
  while (/^(the|fresh|freshly|squeezed|strained|grated|finely|pared|thin|der|die|das|den|frisch|frische|frischer|frischen|abgeriebene|abgeriebener|dunne|dunn|fein|feine|geriebene)$/.test(p.word(k))) k++;
  const part = p.word(k);
  if (!PARTS.has(part)) return undefined;
  k++;
  const of = /^(of|von|de|d|einer|eines|vom|aus|from)$/.test(p.word(k));
  if (of && !/^(einer|eines)$/.test(p.word(k))) k++;
  const factors = approxAt(p, k, end);
  if (factors !== undefined && factors.key === 'about') k = factors.end;
  const number = p.word(k) === 'whole' || p.word(k) === 'the' || p.word(k) === 'one' && p.word(k + 1) === 'whole' ? undefined : rangeAt(p, k, end);
  const digits = number !== undefined;
  if (!of && !digits) return undefined;
  let to = number?.end ?? k;
  while (/^(of|whole|the|a|an|large|small|medium|fresh|ripe|halben|ganzen|big|frischen)$/.test(p.word(to))) to++;
  const inner = /^(halben|halbe)$/.test(p.word(to - 1)) ? 0.5 : undefined;
  const fruit = thingAt(p, to, beforeAnd(p, to, end), 'count');
  if (fruit === undefined) return undefined;
  const chosen = lead ?? number;
  p.use(k, to);
  const single = fruit.label.replace(/ies$/, 'y').replace(/(?<=[^s])s$/, '').replace(/^(limettens?|limetten)$/, 'limette');
  const word = part === 'whites' ? 'white' : part === 'yolks' ? 'yolk' : part;
  const words = word === 'saft' || word === 'schale' || word === 'abrieb' ? partName(single, word, word === 'saft' ? 'volume' : 'peel') : `${single} ${word}`;
  const composed = thingOf(p, words, i, fruit.end, word);
  const low = chosen ? chosen.low : inner ?? 1, high = chosen ? chosen.high : inner ?? 1;
  // "a touch of" says no number: how much is not known
  const amount: Amount | null = chosen === undefined
    ? { low: inner ?? 1, high: inner ?? 1, unit: 'piece', number: p.span(k, Math.max(to, k + 1)) }
    : isCounted(chosen) ? { ...makeAmount(p, chosen, undefined, 0, undefined), unit: 'piece' } : null;
  const tail = readTail(p, fruit.end, end, composed, true, to);
  const what: ThingAt = { ...fruit, thing: composed, label: words };
  return build(p, i, end, { amount, unit: 'piece', low, high }, what, tail, {});
}

/** "1 lime and a little water": a known fruit ends before "and". */
function beforeAnd(p: Phrase, i: number, end: number): number {
  for (let k = i + 1; k < end; k++) if (p.word(k) === 'and' && nameEnd(p, i, end) === k) return k;
  return end;
}

function thingOf(p: Phrase, words: string, i: number, end: number, part: string): Thing {
  const measured = /peel|zest|rind|skin|schale|zeste|abrieb/.test(part) ? 'peel' as const : 'volume' as const;
  const link = linkWords(p, words, measured);
  return { words, span: p.span(i, end), link };
}
