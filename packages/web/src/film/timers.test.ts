import { describe, expect, it } from 'vitest';
import { clock, goneOf, isOver, leftOf, ringing, runs, toggled } from './timers.ts';

const STIR = { id: 'stir', words: 'stir 25 s', seconds: 25 }, CHILL = { id: 'chill', words: 'chill 4 h', seconds: 14_400 };

describe('times of steps', () => {
  it('run on the clock, stand when they are touched and go on from there', () => {
    let timers = toggled([], STIR, 1000);
    expect(runs(timers[0]!, 11_000)).toBe(true);
    expect(leftOf(timers[0]!, 11_000)).toBe(15_000);
    timers = toggled(timers, STIR, 11_000);
    expect([runs(timers[0]!, 60_000), leftOf(timers[0]!, 60_000)]).toEqual([false, 15_000]);
    timers = toggled(timers, STIR, 60_000);
    expect(leftOf(timers[0]!, 65_000)).toBe(10_000);
    expect(isOver(timers[0]!, 75_000)).toBe(true);
  });
  it('several run at once and each is told of once, even after a long sleep', () => {
    const both = toggled(toggled([], CHILL, 0), STIR, 5000);
    expect(ringing(both, 10_000).due).toEqual([]);
    const first = ringing(both, 30_000);
    expect(first.due.map((t) => t.id)).toEqual(['stir']);
    expect(ringing(first.timers, 31_000).due).toEqual([]);
    expect(ringing(first.timers, 9e7).due.map((t) => t.id)).toEqual(['chill']);
    expect(ringing(both, 9e7).due.map((t) => t.id).sort()).toEqual(['chill', 'stir']);
  });
  it('one that has run out begins anew; a clock that was set back takes nothing', () => {
    const over = ringing(toggled([], STIR, 0), 40_000).timers, again = toggled(over, STIR, 50_000);
    expect(leftOf(again[0]!, 50_000)).toBe(25_000);
    expect(again[0]!.told).toBe(false);
    expect(goneOf(again[0]!, 10_000)).toBe(0);
  });
  it('a step whose time was changed in the text has no old time', () => {
    const longer = toggled(toggled([], STIR, 0), { ...STIR, seconds: 30 }, 10_000);
    expect(longer).toHaveLength(1);
    expect(leftOf(longer[0]!, 10_000)).toBe(30_000);
  });
  it.each([[7000, '7', 's'], [6001, '7', 's'], [0, '0', 's'], [99_000, '99', 's'], [120_000, '2:00', 'min'], [272_000, '4:32', 'min'], [3_599_000, '59:59', 'min'], [3_600_000, '1:00', 'h'], [14_340_000, '3:59', 'h'], [14_399_000, '4:00', 'h'], [86_400_000 * 3, '3', 'd']])('%i ms left is read as %s %s', (ms, number, unit) => {
    expect(clock(ms)).toEqual({ number, unit });
  });
});
