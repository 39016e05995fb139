import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changedLines } from './lines.ts';

describe('changed lines', () => {
  it('of a text with itself are none, whatever its spaces', () => {
    fc.assert(fc.property(fc.array(fc.constantFrom('60 ml rum', '20 ml lime', 'shake 12 s', ''), { maxLength: 30 }), (lines) => {
      expect(changedLines(lines.join('\n'), lines.map((l) => `  ${l} `).join('\n\n'))).toEqual([]);
    }));
  });
  it('stand side by side where one takes the place of another, and alone else', () => {
    expect(changedLines('Sour\n60 ml rum\n20 ml lime\nshake', 'Sour\n45 ml rum\n20 ml lime\nshake\nstrain')).toEqual([{ a: '60 ml rum', b: '45 ml rum' }, { a: null, b: 'strain' }]);
    expect(changedLines('a\nb\nc', 'a\nc')).toEqual([{ a: 'b', b: null }]);
  });
  it('make one text of the other: what is common and the one side in order are that text', () => {
    fc.assert(fc.property(fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 14 }), fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 14 }), (x, y) => {
      const changed = changedLines(x.join('\n'), y.join('\n')), gone = changed.filter((c) => c.a !== null).length, come = changed.filter((c) => c.b !== null).length;
      expect(x.length - gone).toBe(y.length - come);
    }));
  });
  it('of a text longer than the most are told all the same', () => {
    const long = Array.from({ length: 500 }, (_, i) => `${i} ml rum`);
    expect(changedLines(long.join('\n'), [...long.slice(1), 'strain'].join('\n'))).toEqual([{ a: '0 ml rum', b: null }, { a: null, b: 'strain' }]);
  });
});
