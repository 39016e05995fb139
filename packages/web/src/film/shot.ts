import type { Splice } from '@washline/engine';
import { spliced } from '../history.ts';
import { setAmount, type Read } from '../read.ts';
import type { Shot } from './kept.ts';
import type { FilmStep } from './steps.ts';

/** The number of a line as written, in its own unit: of a range the middle; null where nothing can be typed for it. */
export function writtenOf(step: FilmStep): number | null { const amount = step.pours?.amount; return amount == null ? null : (amount.low + amount.high) / 2; }

/** The unit as the line has it; '' of a count. */
export function unitOf(step: FilmStep, text: string): string { const span = step.pours?.amount?.unitSpan; return span === undefined ? '' : text.slice(span.from, span.to); }

/** A number as it was typed, with a point or a comma; null where it is none, negative or beyond what a line may say. */
export function typedNumber(typed: string): number | null {
  const plain = typed.trim().replace(',', '.');
  if (!/^\d{1,6}(?:\.\d{0,4})?$|^\.\d{1,4}$/.test(plain)) return null;
  const value = Number(plain);
  return Number.isFinite(value) && value <= 100_000 ? value : null;
}

/** The splices that put what was poured into the text: only at lines that still stand as they stood, only where it was something else. */
export function shotSplices(steps: readonly FilmStep[], shots: readonly Shot[], now: Pick<Read, 'document' | 'reading'>): Splice[] {
  return steps.flatMap((step) => {
    const shot = shots.find((one) => one.id === step.id && one.words === step.words);
    if (shot === undefined || step.pours === null || shot.value === writtenOf(step)) return [];
    return setAmount(now.document, step.action.path, shot.value, now.reading.variant, false);
  });
}

/** The text as it was shot. */
export function shotText(text: string, splices: readonly Splice[]): string { return spliced(text, splices); }
