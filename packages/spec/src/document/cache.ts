import type { Action, Problem, Span } from '@washline/engine';
import { readLine, type LineRead } from '../line/line.ts';
import { withNearest } from '../phrase/near.ts';
import type { Place } from '../phrase/phrase.ts';
import type { Language } from '../vocabulary/vocabulary.ts';

interface Kept { readonly read: LineRead; base: number; line: number; path: string; placed: LineRead }

/** Lines read before, by what they say and where they may stand; read at offset 0, moved where they are wanted. */
const known = new Map<string, Kept>();
const MOST = 4000;

/** Reads a line, or takes it from those read before; `indent` puts the columns of its problems where they stand in the text. */
export function cachedLine(text: string, place: Place, indent: number, language: Language): LineRead {
  const key = `${language}|${place.own.id}|${place.where}|${place.listed ? 1 : 0}${place.poured ? 1 : 0}|${place.system ?? ''}|${place.language ?? ''}|${place.inside ?? ''}|${text}`;
  const kept = known.get(key);
  const path = place.path.join('/');
  if (kept === undefined) {
    const raw = readLine(text, { ...place, base: 0, path: ['', 0], line: 0 });
    const read = { ...raw, actions: raw.actions.map((action) => withNearest(action, language)) };
    if (known.size >= MOST) known.clear();
    const placed = move(read, place, indent);
    known.set(key, { read, base: place.base, line: place.line, path, placed });
    return placed;
  }
  if (kept.base === place.base && kept.line === place.line && kept.path === path) return kept.placed;
  kept.placed = move(kept.read, place, indent);
  kept.base = place.base;
  kept.line = place.line;
  kept.path = path;
  return kept.placed;
}

/** The same reading at another place: spans and paths anew, all else shared. */
function move(read: LineRead, place: Place, indent: number): LineRead {
  const shift = place.base;
  const path = (own: readonly (string | number)[]): (string | number)[] => (own.length > 2 ? [...place.path, own[2] as number] : [...place.path]);
  const span = (one: Span): Span => ({ from: one.from + shift, to: one.to + shift });
  const moved = (value: object): unknown => {
    if (Array.isArray(value)) return value.length === 0 ? value : value.map((one: unknown) => (typeof one === 'object' && one !== null ? moved(one) : one));
    const out: Record<string, unknown> = {};
    for (const key in value) {
      const one = (value as Record<string, unknown>)[key];
      if (typeof one !== 'object' || one === null || key === 'link' || key === 'flags') out[key] = one;
      else if (key === 'path') out[key] = path(one as (string | number)[]);
      else if (key === 'span' || key === 'number' || key === 'unitSpan' || key === 'named') out[key] = span(one as Span);
      else out[key] = moved(one);
    }
    return out;
  };
  return {
    kind: read.kind, label: read.label, actions: moved(read.actions) as Action[],
    problems: read.problems.map((one): Problem => ({ ...one, path: one.path === null ? null : path(one.path), line: place.line, column: one.column + indent, span: span(one.span) })),
  };
}
