import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { lines } from '../lines/lines.ts';
import { parse } from './parse.ts';

const colada = readFileSync(new URL('./clear-colada.drink', import.meta.url), 'utf8');
const pieces = ['60 ml ', 'gin', '1/2', '½', ' oz ', 'lime juice', ':', ' / ', '(', ')', 'fat wash', '\n', '\r\n', '\t', '#', ' #', ';', ',', '.', '-', '–', '%', '40 %', '1:1', 'at ', '°C', '4 °C', '-18', 'shake', ' 10 s', 'over ', 'ice', 'cubes', 'Build:', 'Shelf:', 'Accept:', 'x (mix):\n', 'the rest of the ', 'each ', 'and ', 'then ', 'or ', 'to ', 'top with ', 'juice of ', 'a ', 'half ', 'dozen ', 'N2O', '1,000', '1e9', '1/0', '\u0000', '\ud800', '\u200f', 'ß', 'é', 'halben', 'auffüllen', 'c. à s. ', "d'", '💧', '@', '×', '+', 'of ', 'in ', 'held ', 'for ', '"', "'"];
const soup = fc.array(fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 6 }), fc.nat(5000).map(String)), { maxLength: 40 }).map((parts) => parts.join(''));

function checkSpans(value: unknown, length: number): void {
  if (typeof value !== 'object' || value === null) return;
  const span = value as { from?: unknown; to?: unknown };
  if (typeof span.from === 'number' && typeof span.to === 'number') { expect(span.from).toBeGreaterThanOrEqual(0); expect(span.to).toBeGreaterThanOrEqual(span.from); expect(span.to).toBeLessThanOrEqual(length); }
  for (const one of Object.values(value)) checkSpans(one, length);
}

test('any text is read: nothing is thrown, spans lie in the text, numbers are numbers', () => {
  fc.assert(fc.property(soup, (text) => {
    const document = parse(text);
    expect(document.text).toBe(text);
    checkSpans(document.sections, text.length);
    checkSpans(document.problems, text.length);
    expect(JSON.stringify(document.sections)).not.toMatch(/"(?:low|high|celsius|value|low|seconds)":null/);
    for (const one of document.problems) { expect(one.line).toBeGreaterThanOrEqual(1); expect(one.column).toBeGreaterThanOrEqual(1); }
  }), { numRuns: 1500 });
});
test('any line is read by itself', () => {
  fc.assert(fc.property(fc.oneof(soup, fc.string({ unit: 'binary', maxLength: 60 })), (text) => { expect(lines(text).length).toBeLessThanOrEqual(text.split('\n').length); }), { numRuns: 1500 });
});
test('a spec with anything changed in it is still read', () => {
  fc.assert(fc.property(fc.nat(colada.length), fc.nat(12), fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 4 })), (at, gone, put) => {
    const text = colada.slice(0, at) + put + colada.slice(at + gone);
    expect(parse(text).text).toBe(text);
  }), { numRuns: 600 });
});
test('the same line is read the same wherever it stands', () => {
  fc.assert(fc.property(soup.map((text) => text.replace(/[\r\n]/g, ' ')), fc.nat(5), (line, shift) => {
    const strip = (value: unknown): string => JSON.stringify(value, (key, one: unknown) => (key === 'span' || key === 'number' || key === 'unitSpan' || key === 'named' || key === 'path' ? undefined : one));
    const one = parse(`A\nBuild:\n60 ml gin\n${line}`), two = parse(`A\nBuild:\n60 ml gin\n${'10 ml water\n'.repeat(shift)}${line}`);
    const a = one.sections[0]?.lines ?? [], b = two.sections[0]?.lines ?? [];
    fc.pre(one.sections.length === 1 && two.sections.length === 1 && a.length === 2);
    expect(b).toHaveLength(2 + shift);
    expect(strip(b.at(-1)?.actions)).toBe(strip(a.at(-1)?.actions));
  }), { numRuns: 300 });
});
test('a long line of anything is read in time that grows with its length', () => {
  const worst = ['gin ', '1 ', 'a ', 'x-', ',', '(', ')', '()', 'and shake ', '1:', 'half a ', '½', 'stir 5 s over ', 'juice of ', '% ', 'c. à s. ', 'or gin ', '1 oz + ', 'the ', 'in 5 ml ', 'at 4 °C ', 'to ', "d'", '. ', '; ', 'set aside ', 'each '];
  for (const piece of worst) {
    const line = piece.repeat(Math.floor(498 / piece.length));
    lines(line);
    const before = performance.now();
    lines(line);
    expect(performance.now() - before, piece).toBeLessThan(60);
  }
});
