/** Packed rows found by what stands before their first tab; the index is made at the first look-up, a row is taken apart when asked for. */
export class Rows<T> {
  readonly #text: string;
  readonly #read: (line: string) => T;
  readonly #made = new Map<string, T>();
  #lines: Map<string, string> | undefined;

  constructor(text: string, read: (line: string) => T) {
    this.#text = text;
    this.#read = read;
  }

  get keys(): readonly string[] { return [...this.#index().keys()]; }

  of(key: string): T | undefined {
    const made = this.#made.get(key);
    if (made !== undefined) return made;
    const line = this.#index().get(key);
    if (line === undefined) return undefined;
    const row = this.#read(line);
    this.#made.set(key, row);
    return row;
  }

  #index(): Map<string, string> {
    this.#lines ??= new Map(this.#text.split('\n').map((line) => [line.slice(0, line.indexOf('\t')), line]));
    return this.#lines;
  }
}
