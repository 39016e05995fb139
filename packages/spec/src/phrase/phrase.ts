import type { Path, Problem, Span } from '@washline/engine';
import { problem, type ProblemCode } from '../problems/codes.ts';
import { tokens, type Token } from '../tokens/tokens.ts';
import { isTreatmentFold } from './treatment.ts';
import type { OwnNames } from './own-names.ts';

/** Where a line stands: what its words may mean there. Offsets of everything read from it begin at `base`. */
export interface Place {
  readonly path: Path;
  readonly line: number;
  readonly base: number;
  readonly own: OwnNames;
  /** the prep the line stands in, whose name means the larder inside it */
  readonly inside: string | null;
  readonly system: string | null;
  readonly where: 'build' | 'prep';
  /** the spec's own language, written in its head: settles words that mean one thing in English and another in German */
  readonly language?: 'en' | 'de';
  /** a neighbouring line counts on, so that "1." numbers the list */
  readonly listed: boolean;
  /** what it adds in no amount was measured on a line above: "add the rum" says when and where to */
  readonly poured?: boolean;
}

const beginnings = new WeakMap<ReadonlyMap<string, unknown>, ReadonlySet<string>>();
/** False where no key of the map begins with the word's first three letters: most words fall out here; shorter words never do. */
export function mayStart(map: ReadonlyMap<string, unknown>, folded: string): boolean {
  let known = beginnings.get(map);
  if (known === undefined) {
    const made = new Set<string>();
    for (const key of map.keys()) made.add(key.slice(0, 3));
    beginnings.set(map, made);
    known = made;
  }
  return folded.length < 3 || known.has(folded.slice(0, 3));
}

/** One line's tokens, with what has been used of them. */
export class Phrase {
  readonly text: string;
  readonly place: Place;
  readonly t: readonly Token[];
  readonly used: Uint8Array;
  readonly problems: Problem[] = [];
  /** where known names end that begin at a token, found before */
  readonly ends = new Map<number, number>();
  readonly #kept = new Map<object, Map<number, unknown>>();
  path: Path;

  constructor(text: string, place: Place) {
    this.text = text;
    this.place = place;
    this.t = tokens(text);
    this.used = new Uint8Array(this.t.length);
    this.path = place.path;
  }

  /** What was read at a place before, or reads it now: the same question is asked from several rules. */
  once<T>(question: object, i: number, end: number, read: () => T): T {
    let answers = this.#kept.get(question);
    if (answers === undefined) { answers = new Map<number, unknown>(); this.#kept.set(question, answers); }
    const key = i * 1024 + end;
    if (answers.has(key)) return answers.get(key) as T;
    const made = read();
    answers.set(key, made);
    return made;
  }
  fold(i: number): string { return this.t[i]?.fold ?? ''; }
  word(i: number): string { const token = this.t[i]; return token !== undefined && token.kind === 'word' ? token.fold : ''; }
  isNumber(i: number): boolean { return this.t[i]?.kind === 'number'; }
  isMark(i: number, sign: string): boolean { const token = this.t[i]; return token !== undefined && token.kind === 'mark' && token.text === sign; }
  /** blanks on both sides: a dash, no hyphen */
  isDash(i: number): boolean {
    const token = this.t[i];
    if (token === undefined || token.kind !== 'mark' || !/^[-–—]$/.test(token.text)) return false;
    return token.gap && (this.t[i + 1]?.gap ?? true);
  }
  isHyphen(i: number): boolean {
    const token = this.t[i], next = this.t[i + 1];
    return token !== undefined && token.kind === 'mark' && /^[-‐–]$/.test(token.text) && !token.gap && next !== undefined && !next.gap;
  }
  span(i: number, end: number): Span {
    const first = this.t[i], last = this.t[end - 1];
    const base = this.place.base;
    return { from: base + (first?.from ?? this.text.length), to: base + (last?.to ?? this.text.length) };
  }
  slice(i: number, end: number): string {
    const first = this.t[i], last = this.t[end - 1];
    return first === undefined || last === undefined || end <= i ? '' : this.text.slice(first.from, last.to);
  }
  use(i: number, end: number): void { for (let k = i; k < end; k++) this.used[k] = 1; }
  report(code: ProblemCode, i: number, end: number, words: Readonly<Record<string, string | number>> = {}): void {
    const span = this.span(i, end);
    this.problems.push(problem(code, this.path, this.place.line, span.from - this.place.base + 1, span, words));
  }
  /** The folded words from i on, joined, hyphens and points between them left out; undefined past a mark or a number. */
  joined(i: number, count: number): { readonly key: string; readonly end: number } | undefined {
    let key = '', k = i, seen = 0;
    while (seen < count) {
      const token = this.t[k];
      if (token === undefined) return undefined;
      if (token.kind === 'word') { key += token.fold; seen++; k++; }
      else if (seen > 0 && (this.isHyphen(k) || (token.text === '.' && !token.gap))) k++;
      else if (token.kind === 'mark' && token.text === '&' && seen > 0) { key += '&'; k++; }
      else return undefined;
    }
    return { key, end: k };
  }
  /** The longest run of at most `most` words from i whose join is in the map. */
  longest<T>(i: number, end: number, most: number, map: ReadonlyMap<string, T>): { readonly value: T; readonly end: number } | undefined {
    const first = this.t[i];
    if (first === undefined || first.kind !== 'word' || !mayStart(map, first.fold)) return undefined;
    let key = '', k = i, seen = 0, best: { value: T; end: number } | undefined;
    while (seen < most && k < end) {
      const token = this.t[k] as Token;
      if (token.kind === 'word') {
        key += token.fold;
        seen++;
        k++;
        const value = map.get(key);
        if (value !== undefined) best = { value, end: k };
      } else if (seen > 0 && (this.isHyphen(k) || (token.text === '.' && !token.gap))) k++;
      else if (token.kind === 'mark' && token.text === '&' && seen > 0) { key += '&'; k++; }
      else break;
    }
    return best;
  }
  isTreatment(i: number): boolean { return isTreatmentFold(this.word(i)); }
}
