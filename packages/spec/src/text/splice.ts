import type { Splice } from '@washline/engine';

/** Why splices were refused. */
export class SpliceError extends Error {
  readonly reason: 'outside' | 'overlap' | 'splits-line-end' | 'splits-character' | 'bad-insert';
  constructor(reason: SpliceError['reason'], at: number) {
    super(`splice refused at ${at}: ${reason}`);
    this.reason = reason;
  }
}

const isHigh = (c: number): boolean => c >= 0xd800 && c <= 0xdbff;
const isLow = (c: number): boolean => c >= 0xdc00 && c <= 0xdfff;

/** An edge between CR and LF, or between the halves of a character, is no place to cut. */
function checkEdge(text: string, at: number): void {
  if (at <= 0 || at >= text.length) return;
  const before = text.charCodeAt(at - 1), after = text.charCodeAt(at);
  if (before === 13 && after === 10) throw new SpliceError('splits-line-end', at);
  if (isHigh(before) && isLow(after)) throw new SpliceError('splits-character', at);
}

function sorted(text: string, splices: readonly Splice[]): Splice[] {
  const list = [...splices].sort((a, b) => a.from - b.from || a.to - b.to);
  let last = 0, lastWasEmpty = -1;
  for (const { from, to, insert } of list) {
    if (!Number.isInteger(from) || !Number.isInteger(to) || from < 0 || to < from || to > text.length) throw new SpliceError('outside', from);
    if (from < last || (from === to && from === lastWasEmpty)) throw new SpliceError('overlap', from);
    checkEdge(text, from);
    checkEdge(text, to);
    for (let i = 0; i < insert.length; i++) {
      const c = insert.charCodeAt(i);
      if (isHigh(c) && isLow(insert.charCodeAt(i + 1))) { i++; continue; }
      if (isHigh(c) || isLow(c)) throw new SpliceError('bad-insert', from);
    }
    last = to;
    lastWasEmpty = from === to ? from : -1;
  }
  return list;
}

/**
 * Replaces each [from, to) by its insert; the only way a text is changed. Every code unit outside the splices stays.
 *
 * @param text the decoded text with its byte order mark
 * @param splices in any order, offsets in code units from 0 into `text`
 * @returns the new text
 * @throws SpliceError when splices overlap, lie outside, or would split a line end or a character
 * @source none - definition
 */
export function splice(text: string, splices: readonly Splice[]): string {
  let out = '', at = 0;
  for (const { from, to, insert } of sorted(text, splices)) {
    out += text.slice(at, from) + insert;
    at = to;
  }
  return out + text.slice(at);
}

/** The splices that undo these, to be applied to `splice(text, splices)`. */
export function inverse(text: string, splices: readonly Splice[]): Splice[] {
  let shift = 0;
  return sorted(text, splices).map(({ from, to, insert }) => {
    const back = { from: from + shift, to: from + shift + insert.length, insert: text.slice(from, to) };
    shift += insert.length - (to - from);
    return back;
  });
}
