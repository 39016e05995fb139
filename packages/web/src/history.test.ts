import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between, carried, done, EMPTY, inverse, lineAfter, redone, spliced, undone } from './history.ts';

const cuts = (text: string) => fc.array(fc.tuple(fc.nat(text.length), fc.nat(text.length)), { maxLength: 4 }).map((pairs) => {
  const places = pairs.flat().sort((a, b) => a - b);
  return pairs.map((_, i) => ({ from: places[2 * i] ?? 0, to: places[2 * i + 1] ?? 0, insert: 'xyz'.slice(0, i) })).filter((s, i, all) => i === 0 || s.from > (all[i - 1]?.to ?? 0) || s.from === 0);
});

describe('the stack of splices', () => {
  it('takes back any splices, byte for byte', () => {
    fc.assert(fc.property(fc.string({ maxLength: 60 }).chain((text) => fc.tuple(fc.constant(text), cuts(text))), ([text, splices]) => {
      expect(spliced(spliced(text, splices), inverse(text, splices))).toBe(text);
    }));
  });
  it('finds the one splice between two texts', () => {
    fc.assert(fc.property(fc.string(), fc.string(), (a, b) => {
      const splice = between(a, b);
      expect(splice === null ? a : spliced(a, [splice])).toBe(b);
    }));
  });
  it('goes back and forth to the same texts', () => {
    let text = '60 ml rum', history = EMPTY;
    for (const [splice, typed, at] of [[{ from: 0, to: 2, insert: '4' }, true, 0], [{ from: 1, to: 1, insert: '5' }, true, 100], [{ from: 8, to: 8, insert: '\nstir' }, false, 200]] as const) {
      history = done(history, text, [splice], typed, at);
      text = spliced(text, [splice]);
    }
    expect(text).toBe('45 ml ru\nstirm');
    expect(history.undo).toHaveLength(2);
    const one = undone(text, history);
    expect(one?.text).toBe('45 ml rum');
    const two = undone(one?.text ?? '', one?.history ?? EMPTY);
    expect(two?.text).toBe('60 ml rum');
    expect(redone('60 ml rum', two?.history ?? EMPTY)?.text).toBe('45 ml rum');
    expect(undone('60 ml rum', two?.history ?? EMPTY)).toBeNull();
  });
  it('carries a caret over a splice before it', () => {
    expect(carried(9, [{ from: 0, to: 2, insert: '120' }])).toBe(10);
    expect(carried(1, [{ from: 3, to: 4, insert: '' }])).toBe(1);
    expect(carried(4, [{ from: 2, to: 6, insert: 'a' }])).toBe(3);
  });
  it('says in words what taking back would bring: the line as it was', () => {
    const text = 'Rum\r\n60 ml rum\r\n20 ml lime juice\r\n', splices = [{ from: 5, to: 7, insert: '75' }], next = spliced(text, splices);
    expect(lineAfter(next, inverse(text, splices))).toBe('60 ml rum');
    expect(lineAfter(text, splices)).toBe('75 ml rum');
    expect(lineAfter(text, [])).toBe('');
  });
});
