import { describe, expect, it } from 'vitest';
import { Z95 } from '../numeric/index.ts';
import { EndSums } from './ends.ts';

const endsOf = (moves: readonly (readonly [number, number])[]): [number, number] => {
  const sums = new EndSums(), out = new Float64Array(2);
  for (const [down, up] of moves) sums.add(down, up);
  sums.ends(out);
  return [out[0]!, out[1]!];
};

describe('the ends of a sum of independent parts', () => {
  it('are those of a normal where all parts are straight (JCGM 100:2008, 5.1.2)', () => {
    const [low, high] = endsOf([[-3, 3], [4, -4]]);
    expect(low).toBeCloseTo(-5, 12);
    expect(high).toBeCloseTo(5, 12);
  });
  it('are the two points of the part where there is but one, however uneven', () => {
    expect(endsOf([[-1, 7]])).toEqual([-1, 7]);
  });
  it('hold the nominal and go as far as a near normal about its own mean: halves of normals, mean 0.399 and variance 0.341 of the slope in any table', () => {
    const [low, high] = endsOf(Array.from({ length: 20 }, () => [0, Z95] as const)), mean = 20 * 0.39894, sd = Math.sqrt(20 * (0.5 - 0.39894 ** 2));
    expect(Math.abs(low)).toBe(0);
    expect(Math.abs(high - (mean + Z95 * sd))).toBeLessThan(0.3 * sd);
  });
  it('are those of the others where one is left out, of all where none is (JCGM 100:2008, 5.1.2: 3 and 4 make 5, with 12 they make 13)', () => {
    const down = Float64Array.of(9, 9, 9, -3, 4, -12), up = down.map((d) => -d), sums = new EndSums(), out = new Float64Array(2);
    const endsWithout = (left: number) => { sums.without(left, { down, up }, 3, 1, out); return [...out]; };
    for (const [left, end] of [[2, 5], [-1, 13], [0, Math.sqrt(160)]] as const) for (const [i, side] of [-end, end].entries()) expect(endsWithout(left)[i]).toBeCloseTo(side, 12);
  });
  it('are numbers however small the parts, and nothing where there are none', () => {
    for (const tiny of [1e-40, 1e-82, 1e-150, 1e-300]) {
      const [low, high] = endsOf([[-tiny, tiny], [2 * tiny, -tiny]]);
      expect(Number.isFinite(low) && Number.isFinite(high) && low <= 0 && high >= 0).toBe(true);
    }
    for (const nothing of [[], [[0, 0]]] as const) for (const end of endsOf(nothing)) expect(Math.abs(end)).toBe(0);
  });
});
