import { fold } from '../names/fold.ts';

export interface Token {
  readonly kind: 'word' | 'number' | 'mark' | 'bad';
  readonly text: string;
  /** folded words, the sign itself for marks, '' for numbers */
  readonly fold: string;
  readonly from: number;
  readonly to: number;
  /** a blank (or the start) stands before it */
  readonly gap: boolean;
  readonly value: number;
  /** written as a fraction: "3/4", "½", "1 1/2" */
  readonly fraction: boolean;
  /** the other custom of writing numbers reads a thousand times more or less */
  readonly vague: boolean;
  /** of a bracket: the index of its partner, else -1 */
  partner: number;
}

const VULGAR: Readonly<Record<string, number>> = { '½': 1 / 2, '⅓': 1 / 3, '⅔': 2 / 3, '¼': 1 / 4, '¾': 3 / 4, '⅕': 1 / 5, '⅖': 2 / 5, '⅗': 3 / 5, '⅘': 4 / 5, '⅙': 1 / 6, '⅚': 5 / 6, '⅐': 1 / 7, '⅛': 1 / 8, '⅜': 3 / 8, '⅝': 5 / 8, '⅞': 7 / 8, '⅑': 1 / 9, '⅒': 1 / 10 };
const LETTER = /[\p{L}\p{M}]/u;
const SPACE = /\s/;
const isDigit = (c: number): boolean => c >= 48 && c <= 57;
const isAsciiLetter = (c: number): boolean => (c >= 65 && c <= 90) || (c >= 97 && c <= 122);
const DENOMINATORS = new Set([2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16]);

interface Read { readonly to: number; readonly value: number; readonly fraction: boolean; readonly vague: boolean; readonly bad: boolean }

function digitsFrom(text: string, i: number): number {
  let j = i;
  while (j < text.length && isDigit(text.charCodeAt(j))) j++;
  return j;
}

/** A fraction that begins at i: "3/4", "½"; undefined where none does. */
function fractionAt(text: string, i: number): Read | undefined {
  const vulgar = VULGAR[text.charAt(i)];
  if (vulgar !== undefined) return { to: i + 1, value: vulgar, fraction: true, vague: false, bad: false };
  const j = digitsFrom(text, i);
  if (j === i || j - i > 2 || (text.charAt(j) !== '/' && text.charAt(j) !== '⁄')) return undefined;
  const k = digitsFrom(text, j + 1);
  if (k === j + 1 || k - j > 3) return undefined;
  const top = Number(text.slice(i, j)), bottom = Number(text.slice(j + 1, k));
  if (bottom === 0) return { to: k, value: NaN, fraction: true, vague: false, bad: true };
  if (!DENOMINATORS.has(bottom) || top >= 10 * bottom || text.charAt(k) === '/' || text.charAt(k) === '.') return undefined;
  return { to: k, value: top / bottom, fraction: true, vague: false, bad: false };
}

/** The number that begins at i: digits with thousands and decimals, fractions, mixed numbers. */
function numberAt(text: string, i: number): Read {
  const whole = fractionAt(text, i);
  if (whole !== undefined) return whole;
  let j = digitsFrom(text, i), digits = text.slice(i, j), vague = false, decimal = false;
  const firstGroup = j - i;
  // thousands: comma, blank or apostrophe and exactly three digits, unless the first group is 0
  while (j > i && firstGroup <= 3 && digits !== '0' && /[,' ’]/.test(text.charAt(j))) {
    const k = digitsFrom(text, j + 1);
    if (k - j !== 4 || text.charAt(k) === '/') break;
    if (text.charAt(j) === ' ' && LETTER.test(text.charAt(k))) break;
    if (text.charAt(j) === ',') vague = true;
    digits += text.slice(j + 1, k);
    j = k;
  }
  if ((text.charAt(j) === '.' || (text.charAt(j) === ',' && !vague)) && isDigit(text.charCodeAt(j + 1))) {
    const k = digitsFrom(text, j + 1);
    if (text.charAt(j) === '.' && k - j === 4 && digits !== '0' && digits !== '' && firstGroup <= 3 && digits.length <= 3) vague = true;
    digits += `.${text.slice(j + 1, k)}`;
    decimal = true;
    j = k;
  }
  if ((text.charAt(j) === 'e' || text.charAt(j) === 'E') && /[+\-\d]/.test(text.charAt(j + 1)) && /^[+-]?\d/.test(text.slice(j + 1, j + 3))) {
    const k = digitsFrom(text, j + 1 + (isDigit(text.charCodeAt(j + 1)) ? 0 : 1));
    return { to: k, value: NaN, fraction: false, vague: false, bad: true };
  }
  const value = Number(digits);
  if (!decimal && !vague) {
    // mixed: "1 1/2", "1-1/2", "1½"
    const sign = text.charAt(j);
    const next = sign === ' ' || sign === '-' || sign === '\u00a0' ? j + 1 : j;
    const rest = next === j && VULGAR[sign] === undefined ? undefined : fractionAt(text, next);
    if (rest !== undefined && rest.value < 1) return { to: rest.to, value: value + rest.value, fraction: true, vague: false, bad: rest.bad };
  }
  return { to: j, value, fraction: false, vague, bad: !Number.isFinite(value) };
}

/**
 * Cuts one line into words, numbers and marks, left to right, and matches its brackets.
 *
 * @param text one line without its end, at most 500 code units
 * @returns tokens with places in code units from 0; fractions, mixed numbers and thousands are one number each
 * @source none - definition
 */
export function tokens(text: string): Token[] {
  const out: Token[] = [], open: number[] = [];
  let i = 0, gap = true;
  const push = (kind: Token['kind'], to: number, folded: string, value = 0, fraction = false, vague = false): void => {
    out.push({ kind, text: text.slice(i, to), fold: folded, from: i, to, gap, value, fraction, vague, partner: -1 });
    i = to;
    gap = false;
  };
  while (i < text.length) {
    const c = text.charCodeAt(i), sign = text.charAt(i);
    if (c === 32 || c === 9 || c === 0xa0 || (c > 127 && SPACE.test(sign))) { gap = true; i++; continue; }
    if (isDigit(c) || VULGAR[sign] !== undefined || (c === 46 && isDigit(text.charCodeAt(i + 1)) && (i === 0 || !isDigit(text.charCodeAt(i - 1))))) {
      const read = numberAt(text, i);
      push(read.bad ? 'bad' : 'number', Math.max(read.to, i + 1), '', read.value, read.fraction, read.vague);
      continue;
    }
    if (isAsciiLetter(c) || (c > 127 && LETTER.test(sign))) {
      let j = i + 1, ascii = c < 128;
      while (j < text.length) {
        const d = text.charCodeAt(j);
        if (isAsciiLetter(d) || (isDigit(d) && !isUnitEnd(text, i, j))) j++;
        else if ((d === 39 || d === 0x2019) && j + 1 < text.length && LETTER.test(text.charAt(j + 1))) { j++; ascii = ascii && d === 39; }
        else if (d > 127 && (LETTER.test(text.charAt(j)) || text.charAt(j) === '³' || text.charAt(j) === '₂') && VULGAR[text.charAt(j)] === undefined) { j++; ascii = false; }
        else break;
      }
      const word = text.slice(i, j);
      // "w/ ice", "w/o ice", but "% w/v"
      if (/^w$/i.test(word) && text.charAt(j) === '/' && !/^[vw](?!\p{L})/iu.test(text.slice(j + 1, j + 3))) {
        const without = /^o(?!\p{L})/iu.test(text.slice(j + 1, j + 3));
        push('word', without ? j + 2 : j + 1, without ? 'without' : 'with');
        continue;
      }
      push('word', j, ascii ? word.toLowerCase().replace(/'/g, '') : fold(word));
      continue;
    }
    if (sign === '℃' || sign === '℉') { push('word', i + 1, sign === '℃' ? '°c' : '°f'); continue; }
    const wide = c >= 0xd800 && c <= 0xdbff ? 2 : 1;
    push('mark', i + wide, sign === 'º' ? '°' : sign);
    const at = out.length - 1, last = out[at] as Token;
    if (sign === '(' || sign === '[') open.push(at);
    else if (sign === ')' || sign === ']') {
      const start = open.pop();
      if (start !== undefined) { last.partner = start; (out[start] as Token).partner = at; }
    }
  }
  return out;
}

/** Digits belong to a word only as in "N2O", "CO2", "E407": after one or two capitals. */
function isUnitEnd(text: string, from: number, at: number): boolean {
  if (at - from > 2) return !isDigit(text.charCodeAt(at - 1)) || !/^[A-Z]{1,2}\d/i.test(text.slice(from, at));
  return !/^[A-Za-z]{1,2}$/.test(text.slice(from, at)) && !/^[A-Z]\d/i.test(text.slice(from, at));
}
