import type { Amount, Document, Measure, Path } from '../document/types.ts';
import type { Tables, UnitRow } from '../larder/types.ts';
import type { Context, RemedySeed, Source } from './context.ts';
import { isDry, spooned } from './pieces.ts';
import type { ProbeOp } from './program.ts';
import { inHead, plain } from './words.ts';

/** Systems a card can say it is written in. */
const SYSTEMS = ['us', 'uk', 'au', 'metric', 'us-1910'] as const;
/** Two readings nearer than this are one: a teaspoon of 4.93 or 5 mL. */
const SAME = 0.02;

/**
 * A number that stands for a reading which was not settled: moved to its other end, it says what the other reading would give.
 * Judged after the run by what it does to the figures.
 */
export interface Choice { readonly code: string; readonly at: Path; readonly input: number; readonly words: Readonly<Record<string, string | number>>; readonly sources: readonly string[];
  /** the other reading as a share of the input's value, where that is not one of the input's ends */
  readonly share?: number;
  /** numbers of the run to be put into the words */
  readonly live?: Readonly<Record<string, ProbeOp>>;
  readonly remedy?: RemedySeed | ((numbers: Readonly<Record<string, number>>) => RemedySeed | undefined);
}

/** The system that `measures:` of the head asks for; null where none is written, or none that is known. */
export function headSystem(document: Document): string | null {
  const written = document.head.measures?.value.toLowerCase();
  return SYSTEMS.find((system) => system === written) ?? null;
}

/** What an amount's unit is read as: by the words of the line, the head, else as assumed. */
export function systemOf(ctx: Context, amount: Amount): { readonly system: string | null; readonly settled: boolean } {
  const head = headSystem(ctx.document);
  if (amount.system !== undefined && amount.systemAssumed !== true) return { system: amount.system, settled: true };
  return head !== null ? { system: head, settled: true } : { system: amount.system ?? null, settled: false };
}

/** Every size a unit has in the systems, as factors to mL; the one assumed first. */
export function sizesOf(unit: string, tables: Pick<Tables, 'unit'>): readonly UnitRow[] {
  const rows = [tables.unit(unit, null), ...SYSTEMS.map((system) => tables.unit(unit, system))].filter((row) => row !== undefined);
  return rows.filter((row, i) => rows.findIndex((other) => other === row) === i);
}

const middle = (amount: Amount) => ((amount.low + amount.high) / 2) * (((amount.factorLow ?? 1) + (amount.factorHigh ?? 1)) / 2);

/** An amount written anew as a number of mL or g. */
function rewritten(amount: Amount, value: number, of: 'ml' | 'g'): RemedySeed {
  const { number, unitSpan } = amount;
  return {
    key: 'write-plain', words: { amount: `${plain(value)} ${of}` },
    splices: unitSpan && unitSpan.from >= number.to && unitSpan.from - number.to <= 1
      ? [{ from: number.from, to: unitSpan.to, literal: `${plain(value)} ${of}` }]
      : unitSpan ? [{ from: number.from, to: number.to, literal: plain(value) }, { from: unitSpan.from, to: unitSpan.to, literal: number.from === number.to ? `${plain(value)} ${of}` : of }] : [],
  };
}

/** A key of the head with its value: behind the name, or in place of what it says now. */
export function sayInHead(document: Document, key: 'measures' | 'part', line: string): RemedySeed['splices'] {
  const known = document.head[key];
  if (known) return [{ from: known.span.from, to: known.span.to, literal: line.slice(line.indexOf(':') + 2) }];
  return inHead(document, line).map(({ from, to, insert }) => ({ from, to, literal: insert }));
}

/**
 * An input for the size of a unit that means several things, in mL; -1 where it means one, or it is said which.
 * @source none - definition
 */
export function meaning(ctx: Context, m: Measure, amount: Amount, unit: string, row: UnitRow, settled: boolean): number {
  if (settled || row.of !== 'ml') return -1;
  const sizes = sizesOf(unit, ctx.tables), said = SAID[unit] ?? 'measures: us';
  if (new Set(sizes.map((r) => r.factor)).size < 2 && SAID[unit] === undefined) return -1;
  const low = Math.min(...sizes.map((r) => r.low)), high = Math.max(...sizes.map((r) => r.high));
  if (high / low - 1 < SAME) return -1;
  const input = ctx.about(`unit/${unit}`, row.factor, low, high, 'mL', 'measure', { at: m.path, source: row.source, row: `units ${unit}`, assumed: { say: said } });
  const other = row.factor - low > high - row.factor ? low : high;
  choose(ctx, {
    code: 'unit-two-meanings', at: m.path, input, sources: [row.source], words: { unit: spoken(ctx, amount, unit), as: row.factor, other },
    remedy: { key: 'say-measures', words: { said }, splices: sayInHead(ctx.document, 'measures', said) },
  });
  return input;
}
/** What settles a unit in the head, as it is read. */
const SAID: Readonly<Record<string, string>> = { measure: 'measures: uk', double: 'measures: uk' };

/** An ounce of something dry: by weight, as assumed, or by the cup. */
export function ounce(ctx: Context, m: Measure, amount: Amount, source: Source): number {
  if (!isDry(source.ingredient, source.form)) return -1;
  const packed = spooned(ctx, m, source), fluid = ctx.tables.unit('oz', 'us'), weight = ctx.tables.unit('oz-weight', null);
  if (packed < 0 || !fluid || !weight) return -1;
  const share = (fluid.factor * ctx.book.list[packed]!.value) / weight.factor;
  if (Math.abs(share - 1) < SAME) return -1;
  const input = ctx.about(`unit/oz/${m.thing.words.toLowerCase()}`, 1, Math.min(1, share), Math.max(1, share), 'share', 'measure', { at: m.path, source: weight.source, row: 'units oz-weight' });
  const grams = middle(amount) * weight.factor;
  choose(ctx, { code: 'unit-two-meanings', at: m.path, input, sources: [weight.source], words: { unit: spoken(ctx, amount, 'oz'), as: grams, other: grams * share, degree: 'dry', thing: m.thing.words }, remedy: rewritten(amount, grams, 'g') });
  return input;
}

/** The unit as it stands in the line. */
function spoken(ctx: Context, amount: Amount, unit: string): string {
  return amount.unitSpan ? ctx.document.text.slice(amount.unitSpan.from, amount.unitSpan.to) : unit;
}

/** Notes a choice once: the first line that hangs on it is its place. */
export function choose(ctx: Context, choice: Choice): void {
  if (!ctx.choices.some((c) => c.input === choice.input && c.code === choice.code)) ctx.choices.push(choice);
}
