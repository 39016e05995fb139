import type { Path } from '../document/types.ts';
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
  readonly at?: Path;
  /** set when nothing was written: the words that would replace it */
  readonly assumed?: { readonly say: string };
}

/** What is taken as given beside numbers: a glass, a kind of ice, a bottle meant by a word. */
export interface AssumedWord { readonly key: string; readonly value: string; readonly grade: Grade; readonly source: SourceKey; readonly at: Path; readonly say: string }

/** Collects inputs while a recipe is compiled; the first to name a key settles it. */
export class InputBook {
  readonly list: Input[] = [];
  readonly words: AssumedWord[] = [];
  /** by input: how many operations stood when it was first named, so that none of them can depend on it */
  readonly firstOp: number[] = [];
  private readonly index = new Map<string, number>();
  private readonly operations: () => number;

  constructor(operations: () => number) { this.operations = operations; }

  /** Index of the input in `x`. @source none - definition */
  add(input: Input): number {
    const known = this.index.get(input.key);
    if (known !== undefined) return known;
    this.index.set(input.key, this.list.length);
    this.list.push(input);
    this.firstOp.push(this.operations());
    return this.list.length - 1;
  }

  word(word: AssumedWord): void {
    if (!this.words.some((w) => w.key === word.key && w.at.join('/') === word.at.join('/'))) this.words.push(word);
  }
}

const BOUNDS: Readonly<Record<string, { min?: number; max?: number }>> = {
  share: { min: 0 }, g: { min: 0 }, mL: { min: 0 }, s: { min: 0 }, min: { min: 0 }, '% vol': { min: 0, max: 100 }, mm: { min: 0 },
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

/** A row of the assumptions table as an input. @source none - definition */
export function assumed(key: string, row: AssumptionRow, role: Role, at: Path): Input {
  const value = Number(row.value);
  const bounds = BOUNDS[row.unit] ?? {};
  const spread: Spread = row.low === null || row.high === null || row.low === row.high
    ? { kind: 'exact' } : { kind: 'range', low: row.low, high: row.high, ...bounds };
  return { key, value, unit: row.unit, spread, grade: row.grade, source: row.source, role, at, assumed: { say: row.say } };
}
