import { expect, test } from 'vitest';
import { LIMITS, utf8Length } from './limits.ts';

// RFC 3629, section 3: one byte to U+007F, two to U+07FF, three to U+FFFF, four beyond; half a pair is written as U+FFFD, three bytes (Encoding Standard, encoder of UTF-8)
test.each([['', 0], ['gin', 3], ['\u007F', 1], ['\u0080', 2], ['\u07FF', 2], ['\u0800', 3], ['\uFFFF', 3], ['\u{10000}', 4], ['\u{10FFFF}', 4], ['\uD83C\uDF78', 4], ['\uD83C', 3], ['\uDF78', 3], ['\uD83Cx', 4], ['\uDBFF\uDC00é', 6], ['\uDF78\uDF78', 6], ['\uD83C\uD83C\uDF78', 7]])('%j', (text, bytes) => {
  expect(utf8Length(text)).toBe(bytes);
  expect(utf8Length(text)).toBe(new TextEncoder().encode(text).length);
});
// what the manual of specs promises
test('a text may hold a quarter of a mebibyte, sixty-four sections and four hundred lines', () => { expect(LIMITS).toMatchObject({ bytes: 262144, sections: 64, lines: 400, lineUnits: 500 }); });
