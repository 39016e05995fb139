import type { Amount, Measure, Share, Temperature, Thing, Treatment } from '@washline/engine';
import { linkOf, lookup } from '../names/lookup.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { larderId, type ThingAt } from '../phrase/thing.ts';
import { treatmentCelsius, treatments } from '../phrase/treatment.ts';
import { isAlcoholic, isSolid } from '../vocabulary/vocabulary.ts';
import { EMPTY, shown, type Label } from './label.ts';
import { foldJoin, type Tail } from './tail.ts';

export interface Measured { readonly measures: readonly Measure[]; readonly label: Label; readonly garnish: boolean; readonly topUp: boolean }

export interface Head { amount: Amount | null; unit: string | null; low: number | null; high: number | null }

/** Brings name, amount and tail together into measures and their label. */
export function build(p: Phrase, i: number, end: number, head: Head, what: ThingAt | undefined, tail: Tail, extra: { share?: Share; portion?: 'all' | 'rest' | number; words?: string; strength?: { value: number; span: { from: number; to: number } } }): Measured {
  const named: Thing = what?.thing ?? { words: '', span: p.span(i, i), link: { kind: 'unknown', nearest: [] } };
  let amount: Amount | null = head.amount ?? tail.amount ?? null;
  const thing = inSheets(p, named, amount), id = larderId(thing);
  if (amount !== null && amount.unit === 'oz' && id !== null && isSolid(id)) amount = { ...amount, unit: 'oz-weight', systemAssumed: true };
  if (amount !== null) {
    if (tail.twin !== undefined) amount = { ...amount, twin: tail.twin };
    if (tail.plus.length > 0) amount = { ...amount, plus: tail.plus };
  }
  const { treated, warm } = treatedOf(p, what);
  const strength = tail.strength ?? extra.strength;
  // a label's quinine is a share of the bottle, not of the drink
  const stated = head.amount !== null && tail.share !== undefined && /\b(?:quinine|chinin)\s*(?:of\s*)?$/i.test(p.text.slice(0, tail.share.number.from - p.place.base)) ? tail.share : undefined;
  const share = stated === undefined ? extra.share ?? tail.share : undefined;
  const temperature = tail.temperature ?? warm;
  const measure: Measure = {
    kind: 'measure', path: p.path, span: p.span(i, end), amount: tail.toTaste && head.amount === null ? null : amount, thing,
    treatments: [...treated, ...tail.treatments.filter((treatment) => treatment.key !== 'time')], optional: tail.optional,
    ...(share !== undefined ? { share } : {}), ...(stated !== undefined ? { quinine: { value: stated.value * (stated.basis === 'g per L' ? 1000 : 1e6), span: stated.number } } : {}), ...(extra.portion !== undefined ? { portion: extra.portion } : {}),
    ...(strength !== undefined ? { strength } : {}), ...(tail.concentration !== undefined ? { concentration: tail.concentration } : {}),
    ...(tail.ratio !== undefined ? { ratio: tail.ratio } : {}), ...(temperature !== undefined ? { temperature } : {}),
    ...(tail.held !== undefined ? { held: tail.held } : {}), ...(tail.carrier !== undefined ? { carrier: tail.carrier } : {}),
    ...((what?.alternatives.length ?? 0) + tail.alternatives.length > 0 ? { alternatives: [...(what?.alternatives ?? []), ...tail.alternatives] } : {}),
  };
  const shownUnit = head.unit ?? tail.unitName ?? (tail.amount !== undefined && head.amount === null ? tail.amount.unit ?? 'piece' : null);
  const label: Label = {
    ...EMPTY, kind: 'measure', low: shown(head.low ?? (head.amount === null ? tail.amount?.low : null)), high: shown(head.high ?? (head.amount === null ? tail.amount?.high : null)),
    unit: shownUnit, ingredient: extra.words ?? (what === undefined || what.label === '' ? null : what.label), strength: shown(strength?.value), seconds: null,
    celsius: tail.celsius === undefined ? null : shown(tail.celsius),
  };
  return { measures: [measure], label, garnish: tail.garnish, topUp: tail.topUp };
}

/** "2 sheets gelatine", "2 Blatt Gelatine": what is counted in sheets is no powder. */
function inSheets(p: Phrase, thing: Thing, amount: Amount | null): Thing {
  if (amount === null || (amount.unit !== 'sheet' && amount.unit !== 'leaf') || larderId(thing) !== 'gelatin') return thing;
  const unit = amount.unitSpan === undefined ? '' : p.text.slice(amount.unitSpan.from - p.place.base, amount.unitSpan.to - p.place.base);
  return { ...thing, link: linkWords(p, /^bl[aä]tt/i.test(unit) ? 'Gelatineblatt' : 'gelatin sheet', 'count') };
}

/** The treatments written around a name, and the temperature they say ("boiling water", "cold milk"). */
export function treatedOf(p: Phrase, what: ThingAt | undefined): { readonly treated: readonly Treatment[]; readonly warm?: Temperature } {
  const treated: Treatment[] = [];
  let warm: Temperature | undefined;
  for (const part of what?.treated ?? []) {
    const row = treatments.get(foldJoin(p, part.from, part.end));
    if (row === undefined) continue;
    const span = p.span(part.from, part.end);
    treated.push({ key: row.key, span });
    const celsius = treatmentCelsius(row);
    if (celsius !== undefined) warm = { celsius, word: row.key, span };
  }
  return { treated, ...(warm !== undefined ? { warm } : {}) };
}

export function linkWords(p: Phrase, words: string, measured: Parameters<typeof lookup>[1]): Thing['link'] {
  const found = lookup(words, measured, p.place.system, p.place.language);
  return found === undefined ? { kind: 'unknown', nearest: [] } : linkOf(found);
}

/** The thing read again with the numbers beside it ("simple syrup 2:1", "20 % saline"), where that is a name. */
export function relink(p: Phrase, what: ThingAt, from: number, to: number, measured: Parameters<typeof lookup>[1]): ThingAt {
  if (what.thing.link.kind !== 'larder' && what.thing.link.kind !== 'unknown') return what;
  const whole = p.slice(from, to).replace(/[()]/g, ' ');
  const found = lookup(whole, measured, p.place.system, p.place.language);
  return found === undefined ? what : { ...what, thing: { ...what.thing, link: linkOf(found) } };
}

/** "d'absinthe": the article that stands with its noun off. */
export function unelided(p: Phrase, what: ThingAt, measured: Parameters<typeof lookup>[1]): ThingAt {
  if (!/^d['’]/i.test(what.label) || what.thing.link.kind !== 'unknown') return what;
  const words = what.thing.words.slice(2);
  return { ...what, label: what.label.slice(2), thing: { words, span: { from: what.thing.span.from + 2, to: what.thing.span.to }, link: linkWords(p, words, measured) } };
}

/** What is poured is never counted: "45 gin" lacks its unit. */
export function isPoured(what: ThingAt): boolean {
  const id = larderId(what.thing);
  return what.thing.link.kind !== 'unknown' && ((id !== null && isAlcoholic(id)) || /\b(?:juice|syrup|simple|cordial|saft|sirup|water|cream|milk|liqueur)s?$/.test(what.label));
}
