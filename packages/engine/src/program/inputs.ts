import type { Path, Splice } from '../document/types.ts';
import type { AssumptionRow, SpreadRow } from '../larder/types.ts';
import type { Grade, SourceKey, Spread } from '../provenance/types.ts';

export type Role = 'measure' | 'label' | 'nature' | 'tool' | 'place' | 'time' | 'model';

/** Everything uncertain or adjustable, once. The key says what is shared: the same key is the same number wherever it is used. */
export interface Input {
  readonly key: string;
  readonly value: number;
  readonly unit: string;
  readonly spread: Spread;
  readonly grade: Grade;
  readonly source: SourceKey;
  readonly role: Role;
  /** where its width stands: a row of a table (`spreads label/strength/spirits`, `assumptions ice/mass/shake`, `units oz`), or `written` in the line */
  readonly row: string;
  /** where its nominal value stands, when a table has it: `ingredients white-rum abv_pct` */
  readonly from?: string;
  readonly at?: Path;
  /** set when nothing was written: the words that would replace it, and where they go (without places, into the head) */
  readonly assumed?: Said;
}

/** Words that replace an assumption: `key` where it is told apart from its input's; one splice for every place that hangs on it. */
export interface Said { readonly say: string; readonly key?: string; readonly splices?: readonly Splice[] }

/** What is taken as given beside numbers: a glass, a kind of ice, a bottle meant by a word. */
export interface AssumedWord { readonly key: string; readonly value: string; readonly grade: Grade; readonly source: SourceKey; readonly at: Path; readonly say: string; readonly splices?: readonly Splice[] }

/** Collects inputs while a recipe is compiled; the first to name a key settles it. */
export class InputBook {
  readonly list: Input[] = [];
  readonly words: AssumedWord[] = [];
  /** by input: how many operations stood when it was first named, so that none of them can depend on it */
  readonly firstOp: number[] = [];
  private readonly index = new Map<string, number>();
  private readonly operations: () => number;
  private readonly used: (input: number) => void;

  /** `operations`: how many there are so far; `used` is told of every input that is asked for. */
  constructor(operations: () => number, used: (input: number) => void) { this.operations = operations; this.used = used; }

  /** Index of the input in `x`. @source none - definition */
  add(input: Input): number {
    const known = this.index.get(input.key);
    if (known !== undefined) {
      this.alsoAt(known, input.assumed?.splices);
      this.used(known);
      return known;
    }
    this.index.set(input.key, this.list.length);
    this.list.push(input);
    this.firstOp.push(this.operations());
    this.used(this.list.length - 1);
    return this.list.length - 1;
  }

  /** A further place where the words would have to stand. */
  private alsoAt(i: number, splices: readonly Splice[] | undefined): void {
    const before = this.list[i]!;
    if (!before.assumed?.splices || !splices) return;
    const more = splices.filter((x) => !before.assumed!.splices!.some((y) => y.from === x.from && y.to === x.to));
    if (more.length > 0) this.list[i] = { ...before, assumed: { ...before.assumed, splices: [...before.assumed.splices, ...more] } };
  }

  /** Index of an input by its key; -1 where there is none. */
  at(key: string): number {
    const i = this.index.get(key) ?? -1;
    if (i >= 0) this.used(i);
    return i;
  }

  /** Says of an assumption that is in the book already where else, or in which other words, it is replaced. */
  say(i: number, said: Said): void {
    const before = this.list[i]!;
    if (before.assumed) this.list[i] = { ...before, assumed: before.assumed.splices && said.splices ? { ...said, splices: [...before.assumed.splices, ...said.splices] } : said };
  }

  /** The same word at several places is one assumption with several places. */
  word(word: AssumedWord): void {
    const i = this.words.findIndex((w) => w.key === word.key), before = this.words[i];
    if (!before) { this.words.push(word); return; }
    const more = (word.splices ?? []).filter((x) => !before.splices?.some((y) => y.from === x.from && y.to === x.to));
    if (more.length > 0) this.words[i] = { ...before, splices: [...before.splices ?? [], ...more] };
  }
}

const BOUNDS: Readonly<Record<string, { min?: number; max?: number }>> = {
  share: { min: 0 }, g: { min: 0 }, mL: { min: 0 }, s: { min: 0 }, min: { min: 0 }, '% vol': { min: 0, max: 100 }, mm: { min: 0 }, pH: { min: 0, max: 14 },
};

/** A row of the spreads table as a spread about `value`. @source none - definition */
export function spreadAbout(row: SpreadRow, value: number): Spread {
  const bounds = BOUNDS[row.unit] ?? {};
  switch (row.kind) {
    case 'normal sd': return { kind: 'normal', sd: row.a, ...bounds };
    case 'lognormal cv': return value > 0 ? { kind: 'lognormal', cv: row.a } : { kind: 'exact' };
    case 'offset': return { kind: 'range', low: value + row.a, high: value + row.b, ...bounds };
    case 'per cent': return { kind: 'range', low: value * (1 + row.a / 100), high: value * (1 + row.b / 100), ...bounds };
    case 'absolute': return { kind: 'range', low: Math.min(row.a, value), high: Math.max(row.b, value), ...bounds };
  }
}

/**
 * A row of the spreads table as a factor about 1, for what is drawn as a share of `value`.
 * @source none - definition
 */
export function shareAbout(row: SpreadRow, value: number): Spread {
  switch (row.kind) {
    case 'normal sd': return { kind: 'normal', sd: row.a / value, min: 0 };
    case 'lognormal cv': return { kind: 'lognormal', cv: row.a };
    case 'offset': return { kind: 'range', low: 1 + row.a / value, high: 1 + row.b / value, min: 0 };
    case 'per cent': return { kind: 'range', low: 1 + row.a / 100, high: 1 + row.b / 100, min: 0 };
    case 'absolute': return { kind: 'range', low: Math.min(row.a / value, 1), high: Math.max(row.b / value, 1), min: 0 };
  }
}

/** A row of the assumptions table as an input. @source none - definition */
export function assumed(key: string, row: AssumptionRow, role: Role, at: Path, name: string, splices?: readonly Splice[]): Input {
  const value = Number(row.value);
  const bounds = BOUNDS[row.unit] ?? {};
  const spread: Spread = row.low === null || row.high === null || row.low === row.high
    ? { kind: 'exact' } : { kind: 'range', low: row.low, high: row.high, ...bounds };
  return { key, value, unit: row.unit, spread, grade: row.grade, source: row.source, role, at, row: `assumptions ${name}`, from: `assumptions ${name}`, assumed: { say: row.say, ...(splices ? { splices } : {}) } };
}
