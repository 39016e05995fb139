import { fold, foldTyped } from '../names/fold.ts';
import { compact, type Language } from './vocabulary.ts';

export interface NameRow {
  readonly id: string;
  readonly name: string;
  /** of a preferred name: the capitals it is printed with */
  readonly printed?: string;
  readonly kind: 'preferred' | 'synonym' | 'spelling' | 'plural' | 'old' | 'ambiguous';
  /** of an ambiguous name: the reading taken when nothing else decides */
  readonly assumed: boolean;
  /** of an ambiguous name, when the reading holds: v by volume, c counted, w weighed, j after "juice of", p of the peel, o in old books */
  readonly when: string;
}

const KINDS: Readonly<Record<string, NameRow['kind']>> = { '=': 'preferred', '+': 'synonym', '~': 'spelling', '*': 'plural', '^': 'old', '?': 'ambiguous' };
/** A name whose words are folded as they stand. */
const PLAIN = /^[a-z0-9 ]*$/;

/** All names of one language. Read once for their folded forms; what else a name says is taken from its cell when it is asked for. */
export class Names {
  /** beginnings of names at the ends of their words, folded: where none of them fits, no longer name does */
  readonly beginnings: ReadonlySet<string>;
  /** every word of every name, folded */
  readonly words: ReadonlySet<string>;
  readonly #ids: string[] = [];
  readonly #cells: string[] = [];
  readonly #made: NameRow[] = [];
  readonly #byFold = new Map<string, number | number[]>();
  #rows: readonly NameRow[] | undefined;
  #preferred: ReadonlyMap<string, string> | undefined;

  constructor(language: Language) {
    const beginnings = new Set<string>(), words = new Set<string>();
    for (const entry of compact.names[language]?.split('\n') ?? []) {
      const [id = '', ...cells] = entry.split('|');
      for (const cell of cells) {
        const at = this.#cells.push(cell) - 1;
        this.#ids.push(id);
        const name = nameIn(cell), plain = PLAIN.test(name);
        let folded = '';
        for (const part of plain ? name.split(' ') : name.split(/[\s-]+/)) { const word = plain ? part : fold(part); words.add(word); folded += word; beginnings.add(folded); }
        this.#put(folded, at);
        if (!plain && language === 'de' && /[äöü]/i.test(name)) { const typed = foldTyped(name); this.#put(typed, at); beginnings.add(typed); }
      }
    }
    this.beginnings = beginnings;
    this.words = words;
  }

  /** One row of each thing that has this folded name; undefined where none has. */
  of(folded: string): readonly NameRow[] | undefined {
    const at = this.#byFold.get(folded);
    return at === undefined ? undefined : typeof at === 'number' ? [this.#row(at)] : at.map((one) => this.#row(one));
  }
  has(folded: string): boolean { return this.#byFold.has(folded); }
  get rows(): readonly NameRow[] { return (this.#rows ??= this.#cells.map((_, at) => this.#row(at))); }
  get preferred(): ReadonlyMap<string, string> { return (this.#preferred ??= new Map(this.rows.filter((row) => row.kind === 'preferred').map((row) => [row.id, row.name]))); }

  #put(folded: string, at: number): void {
    const known = this.#byFold.get(folded);
    if (known === undefined) this.#byFold.set(folded, at);
    else if (typeof known === 'number') { if (this.#ids[known] !== this.#ids[at]) this.#byFold.set(folded, [known, at]); }
    else if (!known.some((other) => this.#ids[other] === this.#ids[at])) known.push(at);
  }

  #row(at: number): NameRow {
    const known = this.#made[at];
    if (known !== undefined) return known;
    const cell = this.#cells[at]!, id = this.#ids[at]!, kind = KINDS[cell.charAt(0)] ?? 'synonym', ambiguous = kind === 'ambiguous';
    const name = nameIn(cell), printed = cell.slice(cell.length - name.length);
    return (this.#made[at] = { id, name, ...(printed === name ? {} : { printed }), kind, assumed: ambiguous && cell.charAt(1) === 'a', when: ambiguous ? cell.slice(2, cell.indexOf(':')) : '' });
  }
}

/** The name in a cell, in small letters: behind its mark, of an ambiguous one behind the colon. */
function nameIn(cell: string): string { return cell.slice(cell.charAt(0) === '?' ? cell.indexOf(':') + 1 : 1).toLowerCase(); }

const known = new Map<Language, Names>();

/** All names of one language, made when they are first asked for. */
export function names(language: Language): Names {
  let made = known.get(language);
  if (made === undefined) { made = new Names(language); known.set(language, made); }
  return made;
}

/** German adjectives stand in one ending in the table; the stem of every word but the last is what is compared. */
export function stemGerman(text: string): string {
  const parts = text.split(/[\s-]+/);
  return parts.map((part, index) => (index === parts.length - 1 ? fold(part) : fold(part).replace(/(e[rsnm]?)$/, ''))).join('');
}

const stems = new Map<string, NameRow[]>();

/** German names of more than one word by their stem: asked only where no name fits as it is written. */
export function germanStems(): ReadonlyMap<string, readonly NameRow[]> {
  if (stems.size === 0) {
    for (const row of names('de').rows) {
      if (!row.name.includes(' ')) continue;
      const key = stemGerman(row.name), list = stems.get(key);
      if (list === undefined) stems.set(key, [row]);
      else if (!list.some((other) => other.id === row.id)) list.push(row);
    }
  }
  return stems;
}
