import { describe, expect, it } from 'vitest';
import { CLEAR_COLADA } from '../../test/readings.ts';
import { draw } from '../draw.ts';
import type { Drawing, PathShape } from '../shapes.ts';
import { combOf, quantile, spreadOf, tenthsOf, type Tide } from './comb.ts';
import { drawHands } from './draw.ts';
import { pieceOf } from './piece.ts';

const reading = CLEAR_COLADA;
/** Levels that lie evenly about a middle, every third of which fails; the last few are not known. */
function tideAbout(middle: number, width: number, n = 10_000, unknown = 0): Tide {
  return { levels: Float64Array.from({ length: n }, (_, i) => (i >= n - unknown ? NaN : middle + width * Math.sin(i * 1.7) ** 3)), holds: Uint8Array.from({ length: n }, (_, i) => (i % 3 === 0 ? 0 : 1)) };
}
const sum = (rows: readonly { holds: number; fails: number }[], of: 'holds' | 'fails'): number => rows.reduce((total, row) => total + row[of], 0);
const strokes = (drawing: Drawing, pen: string): [number, number, number][] => drawing.shapes.filter((s): s is PathShape => s.kind === 'path' && s.pen === pen && s.part === 'tide').flatMap((s) => [...s.d.matchAll(/M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2]), Number(m[3])] as [number, number, number]));

describe('a comb', () => {
  it('has a mark for a hundred hands, none lost between rows, whatever the step', () => {
    for (const step of [0.1, 0.61, 3, 500]) for (const width of [0.2, 9]) {
      const tide = tideAbout(70, width), rows = combOf(tide, 71.3, step);
      expect(sum(rows, 'holds') + sum(rows, 'fails')).toBe(100);
      expect(sum(rows, 'fails')).toBe(33);
      expect(combOf(tide, 71.3, step)).toEqual(rows);
    }
  });
  it('with a mark for each hand has as many as hands, in the rows of their levels', () => {
    const tide = tideAbout(70, 4, 1000), rows = combOf(tide, 70, 0.5, 1);
    expect(sum(rows, 'holds')).toBe(666);
    expect(sum(rows, 'fails')).toBe(334);
    for (const row of rows) expect(row.holds + row.fails).toBe([...Array(1000).keys()].filter((i) => Math.floor((tide.levels[i]! - 70) / 0.5 + 1e-9) === row.row).length);
  });
  it('leaves out what is not known', () => {
    expect(spreadOf(tideAbout(70, 4, 1000, 400)).known).toBe(600);
    expect(combOf({ levels: [NaN, NaN], holds: [1, 0] }, 70, 1, 1)).toEqual([]);
  });
});

describe('what is said of hands', () => {
  it('quantiles stand between neighbours', () => {
    expect([0, 0.25, 0.5, 1].map((p) => quantile(Float64Array.of(1, 2, 3, 4), p))).toEqual([1, 1.75, 2.5, 4]);
    expect(quantile(Float64Array.of(), 0.5)).toBeNaN();
  });
  it('nineteen of twenty are of those that hold alone', () => {
    const { hold, low, high } = spreadOf({ levels: [...Array(100).keys()], holds: [...Array(100).keys()].map((i) => (i < 41 ? 1 : 0)) });
    expect([hold, low, high]).toEqual([41, 1, 39]);
  });
  it('tenths hold all hands, in order', () => {
    const tenths = tenthsOf(tideAbout(70, 4));
    expect(tenths.map((t) => t.hands)).toEqual(Array(10).fill(1000));
    expect(tenths.reduce((n, t) => n + t.hold, 0)).toBe(6666);
    for (let i = 1; i < 10; i += 1) expect(tenths[i]!.from).toBeGreaterThanOrEqual(tenths[i - 1]!.to);
  });
});

describe('tide marks on the wall', () => {
  const level = reading.glass!.washline_mm;
  it.each([[1440 - 470, 830], [375, 545], [690, 640]])('stand off the wall in rows of 2.2 px, dots first, off the line and off all words: %d x %d', (width, height) => {
    for (const spread of [0.3, 3, 14, 60]) {
      const tide = tideAbout(level, spread), drawing = draw(reading, { width, height, scheme: 'light', tide }), px = 1 / drawing.mmPerPx;
      const dots = strokes(drawing, 'tide'), dashes = strokes(drawing, 'tide-fails');
      expect(dots.length + dashes.length).toBe(100);
      expect(dashes.length).toBe(33);
      const line = drawing.washline_y! * px;
      for (const [x, y] of [...dots, ...dashes]) { expect(Math.abs(y * px - line)).toBeGreaterThan(2.5); expect(x * px).toBeLessThan(width - 10); }
      const marks = [...dots.map((d) => ({ y: d[1], x: d[0], dot: true })), ...dashes.map((d) => ({ y: d[1], x: (d[0] + d[2]) / 2, dot: false }))];
      for (const y of new Set(marks.map((m) => m.y))) {
        const row = marks.filter((m) => m.y === y);
        const order = [...row].sort((a, b) => a.x - b.x);
        expect(order.map((m) => m.dot)).toEqual([...order].sort((a, b) => Number(b.dot) - Number(a.dot)).map((m) => m.dot));
        expect((order.at(-1)!.x - order[0]!.x) * px).toBeLessThanOrEqual(60);
      }
    }
  });
  it('are a link to the hands, an image with a sentence, and say how many hold', () => {
    const { parts } = draw(reading, { width: 970, height: 830, scheme: 'light', tide: tideAbout(level, 4) });
    expect(parts.find((p) => p.id === 'tide-link')?.href).toBe('#hands');
    const own = parts.find((p) => p.role === 'tide')!;
    expect(own.tide).toBe(6666);
    expect(own.name).toMatch(/^6\s666 of 10\s000 hands hold; nineteen of twenty from [\d.]+ to [\d.]+ millimetres$/u);
  });
  it('are not there without a run, without a level, or where no level is known', () => {
    const tides = (drawing: Drawing): number => drawing.parts.filter((p) => p.role === 'tide').length;
    expect(tides(draw(reading, { width: 970, height: 830, scheme: 'light' }))).toBe(0);
    expect(tides(draw({ ...reading, glass: null }, { width: 970, height: 830, scheme: 'light', tide: tideAbout(70, 4) }))).toBe(0);
    expect(tides(draw(reading, { width: 970, height: 830, scheme: 'light', tide: tideAbout(70, 4, 100, 100) }))).toBe(0);
  });
  it('where all fail are dashes alone', () => {
    const tide = { ...tideAbout(level, 4), holds: new Uint8Array(10_000) }, drawing = draw(reading, { width: 970, height: 830, scheme: 'light', tide });
    expect([strokes(drawing, 'tide').length, strokes(drawing, 'tide-fails').length]).toEqual([0, 100]);
    expect(drawing.parts.find((p) => p.role === 'tide')?.name).toMatch(/^0 of 10\s000 hands hold$/u);
  });
});

describe('the wall drawn out', () => {
  const level = reading.glass!.washline_mm;
  it('keeps the washline where the glass alone has it', () => {
    const alone = draw(reading, { width: 970, height: 830, scheme: 'light' }), { drawing } = drawHands(reading, tideAbout(level, 5), { width: 970, height: 620, whole: 830, head: 172, scheme: 'light', upstream: false })!;
    expect(drawing.washline_y!).toBeCloseTo(alone.washline_y! / alone.mmPerPx, 6);
  });
  it('has a mark for each hand, but for those it says lie beyond', () => {
    for (const [width, spread] of [[970, 0.2], [970, 6], [970, 60], [375, 8]] as const) {
      const tide = tideAbout(level, spread), piece = pieceOf(tide, level, 300, 250)!;
      expect(sum(piece.rows, 'holds') + sum(piece.rows, 'fails') + piece.beyond).toBe(10_000);
      expect(piece.beyond).toBeLessThan(100);
      const { marks } = drawHands(reading, tide, { width, height: 620, whole: 830, head: 172, scheme: 'light', upstream: false })!;
      for (const row of marks.rows) { expect(row.y).toBeGreaterThan(marks.y - 1); expect(row.y).toBeLessThan(marks.y + marks.height + 1); expect(marks.from + (row.holds + row.fails) * marks.pitch).toBeLessThan(width - 10); }
    }
  });
  it('takes rows of a tenth of a millimetre where they can be seen', () => {
    expect(pieceOf(tideAbout(level, 4), level, 300, 250)!.step).toBe(0.1);
    expect(pieceOf(tideAbout(level, 60), level, 300, 250)!.step).toBeGreaterThan(0.1);
  });
  it('is not there without a level', () => {
    expect(drawHands({ ...reading, glass: null }, tideAbout(70, 4), { width: 970, height: 620, whole: 830, head: 172, scheme: 'light', upstream: false })).toBeNull();
    expect(drawHands(reading, tideAbout(70, 4, 50, 50), { width: 970, height: 620, whole: 830, head: 172, scheme: 'light', upstream: false })).toBeNull();
  });
});
