import { describe, expect, it } from 'vitest';
import { decimalsFor, figureShown, shown, spreadShown } from './numbers.ts';

describe('numbers as they are set', () => {
  it('rounds to the first digit of the spread, one more where that is 1', () => {
    for (const [low, high, want] of [[14.6, 16, 1], [13.4, 16.6, 1], [260, 292, 0], [0.031, 0.039, 2], [9.2, 15.2, 0]] as const) expect(decimalsFor(low, high)).toBe(want);
  });
  it('sets a true minus, and none before zero', () => {
    expect(shown(-1.62, 1)).toBe('−1.6');
    expect(shown(-0.01, 1)).toBe('0.0');
  });
  it('groups thousands by a thin space from five figures on', () => {
    expect(shown(12345, 0)).toBe('12\u2009345');
    expect(shown(1011, 0)).toBe('1011');
  });
  it('says a skewed spread by its ends', () => {
    expect(spreadShown({ value: 15, low: 13.9, high: 16.8, skewed: true }, 1)).toBe('13.9 to 16.8');
    expect(spreadShown({ value: 15.3, low: 14.6, high: 16, skewed: false }, 1)).toBe('± 0.7');
    expect(spreadShown({ value: 40, low: 40, high: 40, skewed: false }, 1)).toBe('');
  });
  it('writes millilitres small', () => {
    expect(figureShown({ value: 276.3, low: 268, high: 284, unit: 'mL' })).toBe('276 ml');
  });
});
