import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cross, shelves, spread } from './column.ts';

describe('figures on their shelves', () => {
  it('keeps the order, the pitch and the room', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 0, max: 800, noNaN: true }), { maxLength: 9 }), (wishes) => {
      const ys = spread([...wishes].sort((a, b) => a - b), 60, 100, 700);
      for (const [i, y] of ys.entries()) {
        expect(y).toBeGreaterThanOrEqual(100 - 1e-6);
        expect(y).toBeLessThanOrEqual(700 + 1e-6);
        if (i > 0) expect(y - (ys[i - 1] ?? 0)).toBeGreaterThanOrEqual(60 - 1e-6);
      }
    }));
  });
  it('leaves a figure at its own height where nothing is near', () => {
    expect(spread([150, 400, 600], 60, 100, 700)).toEqual([150, 400, 600]);
  });
  it('squeezes evenly where there is no room', () => {
    const ys = spread([0, 0, 0, 0], 60, 0, 90);
    expect(ys.map((y) => Math.round(y))).toEqual([0, 30, 60, 90]);
  });
  it('finds leaders that cross', () => {
    expect(cross({ x: 0, y: 0 }, 100, { x: 0, y: 50 }, 20, 200)).toBe(true);
    expect(cross({ x: 0, y: 0 }, 20, { x: 0, y: 50 }, 100, 200)).toBe(false);
  });
  it('lets no leader cross another', () => {
    const anchor = fc.record({ x: fc.double({ min: 0, max: 180, noNaN: true }), y: fc.double({ min: 0, max: 600, noNaN: true }) });
    fc.assert(fc.property(fc.uniqueArray(anchor, { minLength: 1, maxLength: 5, selector: (a) => Math.round(a.y / 4) }), (anchors) => {
      const placed = shelves(anchors, 240, 60, 100, 700);
      expect(placed).toHaveLength(anchors.length);
      for (const [i, a] of placed.entries()) for (const b of placed.slice(i + 1)) {
        const p = anchors[a.index], q = anchors[b.index];
        if (p !== undefined && q !== undefined) expect(cross(p, a.y, q, b.y, 240)).toBe(false);
      }
    }));
  });
});
