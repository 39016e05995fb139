import { rangeAt } from '../phrase/amount.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { larderId, nameEnd, thingAt } from '../phrase/thing.ts';
import { isSolid } from '../vocabulary/vocabulary.ts';
import { isFinish, readGarnish, type GarnishAt } from './garnish.ts';

/** "Grated nutmeg on top": a thing that is not poured, laid on the drink. */
export function onTop(p: Phrase, i: number, end: number): GarnishAt | undefined {
  let k = end;
  if (/^(top|surface|drink)$/.test(p.word(k - 1))) k--; else return undefined;
  if (p.word(k - 1) === 'the') k--;
  if (!/^(on|over)$/.test(p.word(k - 1)) || rangeAt(p, i, end) !== undefined) return undefined;
  let from = i;
  while (/^(little|some|freshly|finely|grated|ground|shaved)$/.test(p.word(from)) && nameEnd(p, from, k - 1) !== k - 1) from++;
  const found = thingAt(p, from, k - 1, 'count');
  // what was made for the drink, and foams, are matter
  const matter = found === undefined || found.thing.link.kind === 'prep' || found.thing.link.kind === 'shelf' || /\b(?:foam|espuma|cream|air|cloud|schaum|sahne)\b/.test(found.label);
  const what = !matter && found.end === k - 1 ? found : undefined;
  const id = what === undefined ? null : larderId(what.thing);
  return what === undefined || !(isFinish(what.label) || id !== null && isSolid(id)) ? undefined : readGarnish(p, i, from, k - 1);
}
