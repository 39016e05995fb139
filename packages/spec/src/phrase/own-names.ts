import { fold } from '../names/fold.ts';
import type { LarderId } from '@washline/engine';

/** A name the spec itself gives: a prep's, or a bottle's on the shelf. */
export interface OwnName { readonly kind: 'prep' | 'shelf'; readonly key: string; readonly larder: LarderId | null }

const ARTICLE = /^(?:the|an?|der|die|das|den|dem)\s+/i;

/** A prep's name as compared: article and one plural ending off, then folded. */
export function foldOwn(name: string): string {
  return singular(fold(name.normalize('NFC').trim().replace(ARTICLE, '')));
}
export function singular(folded: string): string {
  return folded.length > 3 && folded.endsWith('s') && !folded.endsWith('ss') ? folded.slice(0, -1) : folded;
}

const stamps = new Map<string, number>();
let last = 0;
function stampOf(names: string): number {
  const known = stamps.get(names);
  if (known !== undefined) return known;
  if (stamps.size > 1000) stamps.clear();
  stamps.set(names, ++last);
  return last;
}

/** The spec's own names: one small dictionary, asked before the larder's. */
export class OwnNames {
  readonly #byFold = new Map<string, OwnName>();
  readonly #preps = new Map<string, readonly string[]>();
  /** one number for each set of names, the same for the same names */
  readonly id: number;
  readonly longest: number;

  constructor(list: readonly (OwnName & { readonly name: string })[]) {
    let longest = 0;
    for (const { kind, key, larder, name } of list) {
      const folded = foldOwn(name);
      if (folded === '') continue;
      if (!this.#byFold.has(folded) || kind === 'prep') this.#byFold.set(folded, { kind, key, larder });
      const parts = name.normalize('NFC').trim().replace(ARTICLE, '').split(/[\s\-,.'’]+/).map(fold).filter((part) => part !== '');
      longest = Math.max(longest, parts.length);
      if (kind === 'prep') this.#preps.set(key, parts);
    }
    this.longest = longest;
    this.id = stampOf(list.map(({ kind, key, larder, name }) => `${kind}:${key}:${larder ?? ''}:${name}`).join('\n'));
  }

  get(folded: string): OwnName | undefined { return this.#byFold.get(singular(folded)) ?? this.#byFold.get(folded); }
  get empty(): boolean { return this.#byFold.size === 0; }

  /** The preps whose last words these are ("the syrup" for "spiced pear syrup"). */
  endingIn(parts: readonly string[]): string[] {
    const out: string[] = [];
    for (const [key, name] of this.#preps) {
      if (parts.length > name.length) continue;
      const tail = name.slice(name.length - parts.length);
      if (tail.every((part, index) => singular(part) === singular(parts[index] ?? ''))) out.push(key);
    }
    return out;
  }
}
export const NO_NAMES = new OwnNames([]);
