import { compact } from '../vocabulary/vocabulary.ts';
import { rangeAt, unitAt, type NumberAt } from './amount.ts';
import type { Phrase } from './phrase.ts';

const PERCENT = new Set(['%']);
const TIME = new Set(['s']);
const HEAT = new Set(['°C']);
const PRESSURE = new Set(['kPa']);
const seconds = new Map(compact.units.filter((row) => row[1] === 's' && typeof row[2] === 'number').map((row) => [row[0], row[2] as number]));
const pascals = new Map(compact.units.filter((row) => row[1] === 'kPa').map((row) => [row[0], row[2] as number]));

export interface PercentAt { readonly value: number; readonly kind: 'abv' | 'bare' | 'weight'; readonly end: number }
/** "40 %", "47% ABV", "100 proof" from the number at i; proof is US unless said. */
export function percentAt(p: Phrase, i: number, end: number): PercentAt | undefined {
  const number = rangeAt(p, i, end);
  if (number === undefined || number.low === null || number.high === null || !number.digits) return undefined;
  const value = (number.low + number.high) / 2;
  const unit = unitAt(p, p.isHyphen(number.end) ? number.end + 1 : number.end, end, PERCENT);
  if (unit === undefined) return undefined;
  if (unit.form.unit === 'proof') return { value: value * 0.5, kind: 'abv', end: unit.end };
  if (unit.form.unit === 'proof-uk') return { value: value * 4 / 7, kind: 'abv', end: unit.end };
  if (unit.form.unit === 'abv') return { value, kind: 'abv', end: unit.end };
  if (/alcohol|alc|alk|alkohol/.test(p.word(unit.end))) return { value, kind: 'abv', end: unit.end + 1 };
  return { value, kind: /weight|w\/w|w\/v|gew/.test(unit.form.written) ? 'weight' : 'bare', end: unit.end };
}

export interface RatioAt { readonly parts: readonly number[]; readonly by: 'weight' | 'volume'; readonly byWritten: boolean; readonly end: number }
/** "1:1", "2 : 1 : ¾", with "by volume" or "by weight" behind. */
export function ratioAt(p: Phrase, i: number, end: number): RatioAt | undefined {
  if (!p.isNumber(i)) return undefined;
  const parts = [p.t[i]?.value ?? 0];
  let k = i + 1;
  while (k + 1 < end && p.isMark(k, ':') && p.isNumber(k + 1)) { parts.push(p.t[k + 1]?.value ?? 0); k += 2; }
  if (parts.length < 2 && p.word(k) === 'to' && p.isNumber(k + 1) && (p.t[k + 1]?.value ?? 9) <= (p.t[i]?.value ?? 0) && isSyrupWord(p, k + 2)) { parts.push(p.t[k + 1]?.value ?? 1); k += 2; }
  if (parts.length < 2) return undefined;
  if (p.word(k) === 'by' && (p.word(k + 1) === 'volume' || p.word(k + 1) === 'weight')) return { parts, by: p.word(k + 1) as 'weight' | 'volume', byWritten: true, end: k + 2 };
  const german = p.word(k) === 'nach' ? { volumen: 'volume', gewicht: 'weight' }[p.word(k + 1)] : undefined;
  if (german !== undefined) return { parts, by: german as 'weight' | 'volume', byWritten: true, end: k + 2 };
  return { parts, by: 'weight', byWritten: false, end: k };
}
function isSyrupWord(p: Phrase, i: number): boolean {
  for (let k = i; k < i + 4; k++) if (/^(syrup|syrups|simple|honey|sirup|saline)$/.test(p.word(k))) return true;
  return false;
}

export interface TemperatureAt { readonly celsius: number; readonly end: number; readonly from: number }
/** A written temperature, its sign included: "-18 °C", "194 °F", "60 C" after "at" or in a step. */
export function temperatureAt(p: Phrase, i: number, end: number, bare: boolean): TemperatureAt | undefined {
  let k = i, sign = 1;
  const token = p.t[k];
  if (token !== undefined && token.kind === 'mark' && /^[-−–]$/.test(token.text) && p.t[k + 1]?.kind === 'number' && p.t[k + 1]?.gap === false) { sign = -1; k++; }
  else if (p.word(k) === 'minus' && p.isNumber(k + 1)) { sign = -1; k++; }
  else if (p.isMark(k, '+') && p.isNumber(k + 1) && p.t[k + 1]?.gap === false) k++;
  const number = sign < 0 ? single(p, k) : rangeAt(p, k, end);
  if (number === undefined || number.low === null || number.high === null) return undefined;
  const unit = unitAt(p, number.end, end, HEAT);
  if (unit === undefined) return undefined;
  if (!bare && /^[cf]$/i.test(unit.form.written) && !p.isMark(number.end, '°')) return undefined;
  const value = sign * (number.low + number.high) / 2;
  return { celsius: unit.form.unit === 'fahrenheit' ? (value - 32) * 5 / 9 : value, end: unit.end, from: i };
}
function single(p: Phrase, i: number): NumberAt | undefined {
  const token = p.t[i];
  return token?.kind !== 'number' ? undefined : { low: token.value, high: token.value, end: i + 1, digits: true, fraction: false, first: i, last: i + 1 };
}

export interface TimeAt { readonly low: number; readonly high: number; readonly end: number; readonly word?: string }
/** A time: "12 h", "1 h 30 min", "2 to 3 minutes", "half an hour", "overnight". */
export function timeAt(p: Phrase, i: number, end: number): TimeAt | undefined {
  const word = unitAt(p, i, end, TIME);
  if (word?.form.unit === 'overnight') return { low: 28800, high: 50400, end: word.end, word: 'overnight' };
  const one = timePart(p, i, end);
  if (one === undefined) return undefined;
  let { low, high, end: at } = one;
  const joint = p.word(at) === 'and' || p.word(at) === 'und' ? at + 1 : at;
  const more = p.t[joint]?.kind === 'number' ? timePart(p, joint, end) : undefined;
  if (more !== undefined && more.high < one.low) { low += more.low; high += more.high; at = more.end; }
  else if (p.word(at) === 'to' || p.isMark(at, '-') || p.isMark(at, '–')) {
    const to = timePart(p, at + 1, end);
    if (to !== undefined && to.low > low) { high = to.high; at = to.end; }
  }
  return { low, high, end: at };
}
function timePart(p: Phrase, i: number, end: number): TimeAt | undefined {
  const number = rangeAt(p, i, end);
  if (number === undefined || number.low === null || number.high === null) return undefined;
  let k = number.end;
  if (p.isHyphen(k)) k++;
  const unit = unitAt(p, k, end, TIME);
  const factor = unit === undefined ? undefined : seconds.get(unit.form.unit);
  if (unit === undefined || factor === undefined) return undefined;
  return { low: number.low * factor, high: number.high * factor, end: unit.end };
}

/** "3 bar", "45 psi", with "abs" behind. */
export function pressureAt(p: Phrase, i: number, end: number): { readonly value: number; readonly absolute: boolean; readonly end: number } | undefined {
  const number = rangeAt(p, i, end);
  if (number === undefined || number.low === null || number.high === null) return undefined;
  const unit = unitAt(p, number.end, end, PRESSURE);
  const factor = unit === undefined ? undefined : pascals.get(unit.form.unit);
  if (unit === undefined || factor === undefined || p.word(unit.end) === 'spoon') return undefined;
  let k = unit.end, absolute = false;
  if (/^(abs|absolute|absolut)$/.test(p.word(k))) { absolute = true; k++; if (p.isMark(k, '.') && !(p.t[k]?.gap ?? true)) k++; }
  else if (/^(gauge|g|gage)$/.test(p.word(k))) k++;
  return { value: (number.low + number.high) / 2 * factor, absolute, end: k };
}
