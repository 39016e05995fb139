import { lookup } from '../names/lookup.ts';
import type { Phrase } from '../phrase/phrase.ts';
import { treatments } from '../phrase/treatment.ts';
import { words } from '../vocabulary/vocabulary.ts';
import { verbAt, type VerbAt } from './verb.ts';

const ices = words('ice');
/** "Würfeln", written with a capital, are of ice: no step. */
const isIce = (p: Phrase, k: number): boolean => /^\p{Lu}/u.test(p.t[k]?.text ?? '') && ices.has(p.word(k));

/** A German step word that says what to do: no participle. */
function asked(p: Phrase, k: number, end: number): VerbAt | undefined {
  if (isIce(p, k)) return undefined;
  const verb = verbAt(p, k, end);
  const row = verb?.rows.find((other) => other.language === 'de' && (other.form === 'infinitive' || other.form === 'imperative'));
  return verb === undefined || row === undefined ? undefined : { ...verb, row };
}

/** German steps carry their verb at the end: "mit Eis shaken", "auf Eis rühren", "mit Minze garnieren". */
export function germanEnd(p: Phrase, i: number, end: number): VerbAt | undefined {
  for (let k = Math.max(i, end - 4); k < end; k++) {
    const verb = isIce(p, k) ? undefined : verbAt(p, k, end);
    const row = verb?.rows.find((other) => other.language === 'de' && other.form !== 'participle' && other.form !== '-ing') ?? (verb?.end === end ? verb.rows.find((other) => other.language === 'de') : undefined);
    if (verb !== undefined && row !== undefined && verb.end === end && (k > i || verb.end - i === verb.end - verb.from)) return { ...verb, row };
  }
  return undefined;
}

/** What is to be done stands last ("Gelatine 10 min einweichen"), and is not what a thing is for ("Soda zum Auffüllen"). */
export function endsInDoing(p: Phrase, i: number, end: number): VerbAt | undefined {
  const verb = germanEnd(p, i, end);
  return verb === undefined || verb.from === i || verb.row.form === 'participle' || /^(zum|zur|das|beim)$/.test(p.word(verb.from - 1)) ? undefined : verb;
}

/** "durch ein Tuch abseihen bei -18 °C": the verb before what says where, how long or how cold. */
export function germanInside(p: Phrase, i: number, end: number): VerbAt | undefined {
  for (let k = i + 1; k < end - 1; k++) {
    const verb = asked(p, k, end);
    if (verb === undefined || /^(zum|zur|das|beim|unter)$/.test(p.word(k - 1))) continue;
    if (p.isNumber(verb.end) || /^(bei|auf|in|im|ins|durch|fur|uber|mit|bis|ohne|zugedeckt)$/.test(p.word(verb.end))) return verb;
  }
  return undefined;
}

/** "30 s rühren und in eine Coupe abseihen": a clause ends at `cut`, and what stands from `next` on has its own verb. */
export function germanClauses(p: Phrase, start: number, cut: number, next: number): boolean {
  const verb = germanEnd(p, start, cut);
  if (verb === undefined || verb.row.form === 'participle' || /^(zum|zur)$/.test(p.word(verb.from - 1))) return false;
  if (lookup(p.slice(verb.from, cut)) !== undefined) return false;
  for (let k = next; k < p.t.length; k++) if (asked(p, k, p.t.length) !== undefined) return true;
  return false;
}

export interface Participle { readonly key: string; readonly from: number; readonly end: number }
/** "10 min in kaltem Wasser eingeweicht", "5 min bei 85 °C gehalten": what was done stands at the end of its part, behind when and how. */
export function participleLast(p: Phrase, from: number, end: number): Participle | undefined {
  let to = from;
  while (to < end && !p.isMark(to, ',') && !p.isMark(to, ';') && !p.isMark(to, ')')) to++;
  for (let k = Math.max(from + 1, to - 3); k < to; k++) {
    if (k === to - 1 && p.word(k) === 'gehalten') return { key: 'held', from: k, end: to };
    const found = p.longest(k, to, 3, treatments);
    if (found !== undefined && found.end === to && found.value.language === 'de' && found.value.key !== 'large-t') return { key: found.value.key, from: k, end: to };
  }
  return undefined;
}

/** "den ganzen Saft", "den Rest des Sirups", "der restliche Sirup", "zwei Drittel vom Tee". */
export function germanPortion(p: Phrase, i: number): { readonly share: 'all' | 'rest' | number; readonly end: number } | undefined {
  const article = /^(der|die|das|den|dem)$/.test(p.word(i)) ? i + 1 : i;
  if (/^(ganze[nrsm]?|gesamte[nrsm]?)$/.test(p.word(article)) && article > i) return { share: 'all', end: article + 1 };
  if (p.word(article) === 'halfte' && /^(des|der|vom|von)$/.test(p.word(article + 1))) return { share: 0.5, end: /^(dem|der)$/.test(p.word(article + 2)) ? article + 3 : article + 2 };
  if (/^(alles|alle)$/.test(p.word(i)) && /^(von|vom)$/.test(p.word(i + 1))) return { share: 'all', end: i + 2 };
  if (/^(restliche[nrsm]?|ubrige[nrsm]?)$/.test(p.word(article))) return { share: 'rest', end: article + 1 };
  if (p.word(article) === 'rest' && /^(des|der|vom|von|dem)$/.test(p.word(article + 1))) return { share: 'rest', end: p.word(article + 2) === 'dem' || p.word(article + 2) === 'der' ? article + 3 : article + 2 };
  return undefined;
}

/** Words that begin what is poured in equal parts: "zu gleichen Teilen Gin, …"; the place behind them, or i. */
export function equalPartsEnd(p: Phrase, i: number): number {
  const at = p.word(i) === 'zu' ? i + 1 : i;
  return /^gleiche[n]?$/.test(p.word(at)) && /^teilen?$/.test(p.word(at + 1)) ? at + 2 : i;
}
