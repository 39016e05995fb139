import { CODE_NAMES, type AcceptEntry } from '@washline/engine';
import { fold } from '../names/fold.ts';
import { edits } from '../names/nearest.ts';

/**
 * One line of `Accept:`: "CODE at LINE: reason". LINE may itself hold colons: the longest part before a colon that stands in the
 * spec as a line or a section is taken, else the part before the first colon and a blank.
 */
export function acceptEntry(line: string, from: number, known: ReadonlySet<string>): AcceptEntry | undefined {
  const head = /^([a-z][a-z0-9-]*)\s+(?:at|bei|in)\s+/i.exec(line);
  if (head === null) return undefined;
  const rest = line.slice(head[0].length);
  let cut = -1;
  for (let at = rest.indexOf(':'); at >= 0; at = rest.indexOf(':', at + 1)) if (known.has(fold(rest.slice(0, at)))) cut = at;
  if (cut < 0 && !known.has(fold(rest))) cut = rest.search(/:(?:\s|$)/);
  const at = (cut < 0 ? rest : rest.slice(0, cut)).trim();
  if (at === '') return undefined;
  return { code: (head[1] ?? '').toLowerCase(), at, reason: cut < 0 ? '' : rest.slice(cut + 1).trim(), span: { from, to: from + line.length } };
}

/** The finding whose code is meant: null where the code is one, else the code that comes nearest. */
export function nearestCode(code: string): string | null {
  if (CODE_NAMES.includes(code)) return null;
  const far = CODE_NAMES.map((known) => ({ known, distance: edits(code, known, 40) }));
  return far.reduce((best, one) => (one.distance < best.distance ? one : best)).known;
}
