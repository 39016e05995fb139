import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inverse, splice } from './splice.ts';

/** Splices that may be made in a text: sorted places, no line end and no character split. */
const splicesIn = (text: string): fc.Arbitrary<{ from: number; to: number; insert: string }[]> => fc.array(fc.tuple(fc.nat(text.length), fc.nat(3), fc.string({ unit: 'grapheme', maxLength: 4 })), { maxLength: 6 }).map((raw) => {
  const out: { from: number; to: number; insert: string }[] = [];
  let last = -1;
  for (const [from, size, insert] of raw.sort((a, b) => a[0] - b[0])) {
    let a = from, b = Math.min(text.length, from + size);
    const splits = (at: number): boolean => at > 0 && at < text.length && ((text[at - 1] === '\r' && text[at] === '\n') || (/[\ud800-\udbff]/.test(text[at - 1] ?? '') && /[\udc00-\udfff]/.test(text[at] ?? '')));
    if (splits(a)) a++;
    if (splits(b)) b++;
    if (a <= last || b < a) continue;
    out.push({ from: a, to: b, insert });
    last = b;
  }
  return out;
});
const texts = fc.array(fc.oneof(fc.constantFrom('\r\n', '\n', '60 ml gin', '💧', 'é', '\ufeff'), fc.string({ maxLength: 5 }).map((text) => text.replace(/[\ud800-\udfff]/g, ''))), { maxLength: 12 }).map((parts) => parts.join(''));

test('every code unit outside the splices stays, and the inverse brings the text back', () => {
  fc.assert(fc.property(texts.chain((text) => fc.tuple(fc.constant(text), splicesIn(text))), ([text, list]) => {
    const out = splice(text, list);
    let at = 0, to = 0;
    for (const one of list) { const kept = text.slice(at, one.from); expect(out.slice(to, to + kept.length)).toBe(kept); to += kept.length + one.insert.length; at = one.to; }
    expect(out.slice(to)).toBe(text.slice(at));
    expect(splice(out, inverse(text, list))).toBe(text);
  }), { numRuns: 500 });
});
test('after a thousand random splices everything outside them is unchanged, and undo brings all of it back', () => {
  const marks = Array.from({ length: 40 }, (_, n) => `«${n}» keep this line ${n} as it is\r\n`);
  const first = marks.map((mark, n) => `${mark}${n} ml gin\r\n`).join('');
  let text = first, seed = 7;
  const next = (below: number): number => { seed = (seed * 1103515245 + 12345) % 2147483648; return seed % below; };
  const undo: { from: number; to: number; insert: string }[][] = [];
  for (let round = 0; round < 1000; round++) {
    const n = next(40), mark = marks[n] ?? '';
    const from = text.indexOf(mark) + mark.length, end = n === 39 ? text.length : text.indexOf(marks[n + 1] ?? '');
    const size = end - 2 - from;
    const a = from + next(size + 1), list = [{ from: a, to: a + Math.min(next(3), end - 2 - a), insert: ['', '7', 'x', '½', ' oz'][next(5)] ?? '' }];
    undo.push(inverse(text, list));
    text = splice(text, list);
  }
  for (const mark of marks) expect(text).toContain(mark);
  for (const list of undo.reverse()) text = splice(text, list);
  expect(text).toBe(first);
});
test('a lone surrogate is never put in', () => { expect(() => splice('abc', [{ from: 1, to: 1, insert: '\ud800' }])).toThrow('bad-insert'); });
test('a place outside the text is refused', () => { expect(() => splice('abc', [{ from: 2, to: 9, insert: '' }])).toThrow('outside'); });
