import { describe, expect, it } from 'vitest';
import { lineAt, typedLine } from './typing.ts';

describe('the line being typed', () => {
  it('is the one that changed, where the caret stands', () => {
    expect(typedLine('A\n60 ml ru', 'A\n60 ml rum', 11)).toBe(2);
    expect(typedLine('A\n60 ml rum\n20 ml lime', 'A\n6 ml rum\n20 ml lime', 3)).toBe(2);
  });
  it('is none after a paste, a new line, or a change made elsewhere', () => {
    expect(typedLine('A\n60 ml ru', 'B\n30 ml gin', 11)).toBeNull();
    expect(typedLine('A\n60 ml rum', 'A\n60 ml rum\n', 12)).toBeNull();
    expect(typedLine('A\n60 ml rum\n20 ml lime', 'A\n90 ml rum\n20 ml lime', 22)).toBeNull();
    expect(typedLine('A', 'A', 1)).toBeNull();
  });
  it('counts lines from 1', () => {
    expect([lineAt('a\nb', 0), lineAt('a\nb', 2)]).toEqual([1, 2]);
  });
});
