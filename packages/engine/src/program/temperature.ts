import type { Measure, Span, Step, Treatment } from '../document/types.ts';
import { iceAt } from '../liquids/index.ts';
import type { Context, Source } from './context.ts';
import { depression } from './frozen.ts';
import { behindMeasure, insteadOf } from './words.ts';

/** A place this cold is a freezer. °C */
const FREEZER = -5;
const PLACES = [
  { below: FREEZER, row: 'place/freezer' }, { below: 12, row: 'place/fridge' }, { below: 30, row: 'place/room' },
] as const;

/** Words for how warm a thing is, and the rows that have their ranges. */
const VAGUE: Readonly<Record<string, string>> = {
  room: 'word/room temperature', cold: 'word/cold', chilled: 'word/chilled', warm: 'word/warm', hot: 'word/hot', boiling: 'word/boiling', melted: 'word/melted', lukewarm: 'word/lukewarm', frozen: 'word/frozen',
};
/** Words for where a step leaves it. */
const WHERE: Readonly<Record<string, string>> = { fridge: 'place/fridge', freezer: 'place/freezer', room: 'place/room' };

/** Does a step leave a thing in a freezer? @source common-practice */
export const inFreezer = (step: Step): boolean => (step.temperature ? step.temperature.celsius < FREEZER : step.verb === 'freeze');

/** Does a step leave a thing where water freezes? @source none - definition */
export const belowZero = (step: Step): boolean => (step.temperature ? step.temperature.celsius < 0 : step.verb === 'freeze');

/** Input for a temperature that was written: what a thermometer shows, or as wide as the word for it. */
export function writtenTemperature(ctx: Context, celsius: number, at: Measure['path'], key: string): number {
  return ctx.spread(key, 'tool/thermometer', celsius, '°C', 'tool', { at });
}

/** Input for a word such as "chilled": a number replaces it behind the thing, or comes behind "melted". */
function vagueTemperature(ctx: Context, m: Measure, word: string, span: Span): number {
  const key = VAGUE[word] ?? 'word/room temperature', { say } = ctx.tables.assumption(key)!, { text } = ctx.document;
  const before = span.from <= m.thing.span.from;
  const off = before ? [{ from: span.from, to: span.from < m.thing.span.from && span.to + 1 >= m.thing.span.from ? m.thing.span.from : span.to + 1, insert: '' }] : [];
  return ctx.assume(key, m.path, 'place', key, before ? [...off, ...behindMeasure(m, say, text)] : insteadOf(span, span.from === span.to ? ` ${say}` : say));
}

/** Input for the temperature a step keeps: written, or that of its place. */
export function placeTemperature(ctx: Context, step: Step, place: string): number {
  const t = step.temperature;
  if (!t) return ctx.assume(place, step.path, 'place');
  if (t.word) return ctx.assume(WHERE[t.word] ?? place, step.path, 'place');
  const row = PLACES.find((p) => t.celsius < p.below)?.row;
  if (!row) return writtenTemperature(ctx, t.celsius, step.path, `temperature/${step.path.join('/')}`);
  return ctx.spread(`${row}/${t.celsius}`, row, t.celsius, '°C', 'place', { at: step.path });
}

/** Where a thing's temperature comes from when it goes in: an input, or for a prep what it rests at, and the ice in a gram of it, where it may hold some. */
export interface Start { readonly input: number; readonly offset: number; readonly ice?: number }

/** How warm a measure goes in: as held, as written, as its words have it, a prep as it rests, else by its class. */
export function startTemperature(ctx: Context, m: Measure, source: Source, occurrence: string): Start {
  const start = warmth(ctx, m, source, occurrence);
  if (start.input < 0 || !(ctx.book.list[start.input]!.value < 0) || source.form === 'ice') return start;
  // so cold it has come to rest with its ice, as long ago as it was put there
  const ice = ctx.layout.take(1), factor = depression(ctx);
  ctx.ops.push(({ s, x }) => { s[ice] = iceAt(s, source.block, x[start.input]! / x[factor]!); });
  return { ...start, ice };
}

function warmth(ctx: Context, m: Measure, source: Source, occurrence: string): Start {
  const treated = m.treatments.find((t) => t.celsius !== undefined && t.key !== 'soaked');
  const celsius = m.temperature?.word === undefined ? m.temperature?.celsius ?? m.held?.celsius ?? treated?.celsius : m.held?.celsius;
  if (celsius !== undefined) return { input: writtenTemperature(ctx, celsius, m.path, `start/${occurrence}`), offset: -1 };
  const word = m.temperature?.word, melted = m.treatments.find((t): t is Treatment => t.key === 'melted');
  if (word !== undefined && VAGUE[word] !== undefined) return { input: vagueTemperature(ctx, m, word, m.temperature!.span), offset: -1 };
  if (melted) return { input: vagueTemperature(ctx, m, 'melted', { from: melted.span.to, to: melted.span.to }), offset: -1 };
  if (source.prep) {
    ctx.parts.reads(source.prep.rest_C);
    if (source.prep.ice !== undefined) ctx.parts.reads(source.prep.ice);
    return { input: -1, offset: source.prep.rest_C, ...(source.prep.ice === undefined ? {} : { ice: source.prep.ice }) };
  }
  const row = ctx.tables.assumption(source.start);
  if (!row) return { input: ctx.assume('place/room', m.path, 'place'), offset: -1 };
  // what stands in a room or a fridge is as warm as they are
  const own = source.start.startsWith('start/') ? behindMeasure(m, row.say, ctx.document.text) : undefined;
  return { input: ctx.assume(source.start, m.path, 'place', source.start, own), offset: -1 };
}
