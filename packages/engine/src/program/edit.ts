import type { Line, Measure, Section, Step } from '../document/types.ts';
import type { RemedySeed } from './context.ts';

type Splice = RemedySeed['splices'][number];

/** The line an action stands in, with its section. @source none - definition */
export function lineOf(sections: readonly Section[], action: Measure | Step): { line: Line; section: Section } | undefined {
  for (const section of sections) for (const line of section.lines) {
    if (line.span.from <= action.span.from && action.span.to <= line.span.to) return { line, section };
  }
  return undefined;
}

/** Makes a line a note, so that it is not done: its text stays to be read. @source none - definition */
export function leaveOut(sections: readonly Section[], action: Measure | Step): Splice[] {
  const at = lineOf(sections, action);
  return at ? [{ from: at.line.span.from, to: at.line.span.from, literal: '# ' }] : [];
}

/** Puts words behind a thing: ", held 5 min at 85 °C". @source none - definition */
export function behind(action: Measure, key: string): Splice[] {
  const end = action.thing.span.to;
  return [{ from: end, to: end, key }];
}

/** A new line after the one an action stands in. @source none - definition */
export function lineAfter(sections: readonly Section[], action: Measure | Step, text: { key?: string; literal?: string }): Splice[] {
  const at = lineOf(sections, action);
  return at ? [{ from: at.line.span.to, to: at.line.span.to, literal: '\n' }, { from: at.line.span.to, to: at.line.span.to, ...text }] : [];
}

/** A new line before the one an action stands in. @source none - definition */
export function lineBefore(sections: readonly Section[], action: Measure | Step, text: { key?: string; literal?: string }): Splice[] {
  const at = lineOf(sections, action);
  return at ? [{ from: at.line.span.from, to: at.line.span.from, ...text }, { from: at.line.span.from, to: at.line.span.from, literal: '\n' }] : [];
}

/** A number with its unit in place of a written one, the word before it kept: "at 45 °C". `text`: of the spec. @source none - definition */
export function insteadOfNumber(text: string, span: { readonly from: number; readonly to: number }, literal: string): Splice {
  const word = /^(at|bei|und)\b/i.exec(text.slice(span.from))?.[0] ?? '';
  return { from: span.from, to: span.to, literal: `${word} ${literal}`.trim() };
}

/** A number as it would be written: at most three figures, no trailing zeros. @source none - definition */
export function written(value: number): string {
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  return String(Number(value.toFixed(digits)));
}
