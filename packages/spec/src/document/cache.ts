import { readLine, type LineRead } from '../line/line.ts';
import type { Place } from '../phrase/phrase.ts';

/** Reads a line; `indent` puts the columns of its problems where they stand in the text. */
export function cachedLine(text: string, place: Place, indent: number): LineRead {
  const read = readLine(text, place);
  return indent === 0 ? read : { ...read, problems: read.problems.map((one) => ({ ...one, column: one.column + indent })) };
}
