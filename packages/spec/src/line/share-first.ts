import type { Share } from '@washline/engine';
import type { UnitAt } from '../phrase/amount.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { larderId, thingAt } from '../phrase/thing.ts';
import { isAlcoholic } from '../vocabulary/vocabulary.ts';
import { build, relink, type Measured } from './build.ts';
import { BY_WEIGHT, emptyTail, readTail, shareOf, perLitre } from './tail.ts';

export function percentFirst(p: Phrase, i: number, end: number, percent: { readonly value: number; readonly kind: string; readonly end: number }): Measured | undefined {
  const what0 = thingAt(p, percent.end, end, 'volume');
  if (what0 === undefined) return undefined;
  p.use(i, percent.end);
  const what = relink(p, what0, i, what0.end, 'volume');
  const tail = readTail(p, what.end, end, what.thing, false, what.first);
  const span = p.span(i, percent.end);
  if (percent.kind === 'abv' || tail.amount !== undefined) {
    const weighed = what.label.split(/[\s-]+/).some((word) => BY_WEIGHT.test(word));
    const id = larderId(what.thing);
    if (percent.kind === 'abv' || (id === null && !weighed) || (id !== null && isAlcoholic(id))) return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, { strength: { value: percent.value, span } });
    tail.concentration ??= { value: percent.value, span };
    return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, {});
  }
  if (percent.value > 100) p.report('share-too-large', i, percent.end, { number: p.slice(i, i + 1) });
  const of = tail.share?.of;
  const share: Share = { value: percent.value / 100, basis: 'mass', ...(of !== undefined ? { of } : {}), number: p.span(i, i + 1) };
  let ofThing = of;
  if (ofThing === undefined && /^(of|on|von)$/.test(p.word(what.end))) ofThing = shareOf(p, 0, 'mass', what.end, end, share.number).of;
  return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, { share: ofThing === undefined ? share : { ...share, of: ofThing } });
}

/** "6 g salt per litre", "2 g agar per 500 g juice": a share behind the name; `k` is where the name ends. */
export function sharePer(p: Phrase, k: number, end: number, grams: number, number: { from: number; to: number }): { readonly share: Share; readonly end: number } | undefined {
  const german = p.word(k) === 'auf';
  if (!/^(per|pro|je)$/.test(p.word(k)) && !(german && p.isNumber(k + 1))) return undefined;
  const per = perLitre(p, k + 1, end);
  if (per === undefined || per.amount <= 0) return undefined;
  const at = p.word(per.end) === 'of' || p.word(per.end) === 'von' ? per.end + 1 : per.end;
  const of = at < end ? thingAt(p, at, end, null) : undefined;
  p.use(k, of?.end ?? per.end);
  return { share: { value: per.kind === 'l' ? grams / per.amount : grams / (1000 * per.amount), basis: per.kind === 'l' ? 'g per L' : 'mass', ...(of !== undefined ? { of: [of.thing] } : {}), number }, end: of?.end ?? per.end };
}

export function shareFirst(p: Phrase, i: number, end: number, per: UnitAt): Measured | undefined {
  const what = thingAt(p, per.end, end, 'weight');
  if (what === undefined) return undefined;
  p.use(i, per.end);
  const value = p.t[i]?.value ?? 0, number = p.span(i, i + 1);
  const basis: Share['basis'] = per.form.unit === 'g-per-kg' ? 'mass' : per.form.unit === 'ml-per-l' ? 'volume' : 'g per L';
  const factor = per.form.unit === 'g-per-kg' || per.form.unit === 'ml-per-l' ? 0.001 : per.form.unit === 'g-per-100ml' ? 10 : 1;
  const share = shareOf(p, value * factor, basis, /^(of|on|von|in)$/.test(p.word(what.end)) ? what.end : end, end, number);
  const tail = share.of === undefined ? readTail(p, what.end, end, what.thing, true, what.first) : emptyTail();
  return build(p, i, end, { amount: null, unit: null, low: null, high: null }, what, tail, { share });
}
