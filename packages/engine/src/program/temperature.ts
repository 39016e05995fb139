import type { Measure, Step } from '../document/types.ts';
import type { Context, Source } from './context.ts';
import { spreadAbout } from './inputs.ts';

const PLACES = [
  { below: -5, row: 'place/freezer' }, { below: 12, row: 'place/fridge' }, { below: 30, row: 'place/room' },
] as const;

/** Input for a temperature that was written: a place's when it is that of a place, else what a thermometer shows. */
export function writtenTemperature(ctx: Context, celsius: number, at: Measure['path'], key: string, word?: string): number {
  const vague = word ? ctx.tables.assumption(`word/${word}`) : undefined;
  if (vague && typeof vague.low === 'number' && typeof vague.high === 'number') {
    return ctx.book.add({ key: `word/${word}`, value: celsius, unit: '°C', spread: { kind: 'range', low: vague.low, high: vague.high }, grade: vague.grade, source: vague.source, role: 'place', at });
  }
  const row = ctx.tables.spread('tool/thermometer')!;
  return ctx.book.add({ key, value: celsius, unit: '°C', spread: spreadAbout(row, celsius), grade: row.grade, source: row.source, role: 'tool', at });
}

/** Input for the temperature a step keeps: written, or that of its place. */
export function placeTemperature(ctx: Context, step: Step, place: string): number {
  const t = step.temperature;
  if (!t) return ctx.assume(place, step.path, 'place');
  const row = PLACES.find((p) => t.celsius < p.below)?.row;
  if (!row || t.word) return writtenTemperature(ctx, t.celsius, step.path, `temperature/${step.path.join('/')}`, t.word);
  return ctx.spread(`${row}/${t.celsius}`, row, t.celsius, '°C', 'place', { at: step.path });
}

/** Where a thing's temperature comes from when it goes in: an input, or for a prep what it rests at. */
export interface Start { readonly input: number; readonly offset: number }

/** How warm a measure goes in: as held, as written, a prep as it rests, else by its class. */
export function startTemperature(ctx: Context, m: Measure, source: Source, occurrence: string): Start {
  const treated = m.treatments.find((t) => t.celsius !== undefined && t.key !== 'soaked');
  const celsius = m.temperature?.celsius ?? m.held?.celsius ?? treated?.celsius;
  if (celsius !== undefined) return { input: writtenTemperature(ctx, celsius, m.path, `start/${occurrence}`, m.temperature?.word), offset: -1 };
  if (source.prep) return { input: -1, offset: source.prep.rest_C };
  return { input: ctx.assume(ctx.tables.assumption(source.start) ? source.start : 'place/room', m.path, 'place'), offset: -1 };
}
