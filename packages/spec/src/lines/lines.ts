import { readLine, type LineRead } from '../line/line.ts';
import type { Label } from '../line/label.ts';
import { NO_NAMES } from '../phrase/own-names.ts';
import { badCharacter, rows } from '../text/rows.ts';
import { LIMITS } from '../document/limits.ts';

/** One line as the command `lines` shows it: words and judgements as in the manual's page on lines. */
export interface LineReading extends Label { readonly text: string; readonly problem?: { readonly code: string; readonly message?: string; readonly column: number; readonly words: Readonly<Record<string, string | number>> } }

const UNREAD: Label = { kind: 'unread', low: null, high: null, unit: null, ingredient: null, strength: null, verb: null, seconds: null, celsius: null };

/** Lines numbered "1." "2." count on. */
function isListed(texts: readonly string[], at: number): boolean {
  const number = (index: number): number | null => { const match = /^\s*(\d{1,3})[.)]\s/.exec(texts[index] ?? ''); return match === null ? null : Number(match[1]); };
  const own = number(at);
  return own !== null && (number(at + 1) === own + 1 || number(at - 1) === own - 1);
}

/**
 * Reads each line that is not blank by itself: no headings, keys or names.
 *
 * @param text any text
 * @returns one reading a line, in order; an unread line carries its problem
 * @source none - definition
 */
export function lines(text: string): LineReading[] {
  const texts = rows(text).map((row) => row.text).filter((line) => line.trim() !== '');
  return texts.map((line, at): LineReading => {
    const indent = line.length - line.trimStart().length;
    const unread = (code: 'line-too-long' | 'control-character', column: number, words: Record<string, string | number>): LineReading => ({ text: line, ...UNREAD, problem: { code, column, words } });
    if (line.length > LIMITS.lineUnits) return unread('line-too-long', 1, { limit: LIMITS.lineUnits });
    const bad = badCharacter(line);
    if (bad >= 0) return unread('control-character', bad + 1, { character: `U+${line.charCodeAt(bad).toString(16).toUpperCase().padStart(4, '0')}` });
    const remark = line.search(/\s#/);
    const read: LineRead = readLine((remark < 0 ? line : line.slice(0, remark)).trim(), { path: ['build', at], line: at + 1, base: 0, own: NO_NAMES, inside: null, system: null, where: 'build', listed: isListed(texts, at) });
    const first = read.problems[0];
    const label = read.kind === 'unread' ? UNREAD : shownUnit(read.label);
    return { text: line, ...label, ...(first !== undefined ? { problem: { code: first.code, column: first.column + indent, words: first.words } } : {}) };
  });
}

/** Unit words outside the list of the labelled lines keep their own key. */
function shownUnit(label: Label): Label {
  return label.unit === 'oz-weight' ? { ...label, unit: 'oz' } : label;
}
