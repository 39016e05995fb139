import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CLEAR_COLADA, DOUBLE_ROCKS, figure } from '../../test/readings.ts';
import { overlap, textBox } from '../pen/pad.ts';
import type { Reading } from '../reading.ts';
import type { Drawing, PathShape, TextShape } from '../shapes.ts';
import { coursesOf } from './course.ts';
import { drawLater } from './draw.ts';
import { evenAt, evenCurve } from './even.ts';
import { terminalLater } from './terminal.ts';

const at = (minutes: number, celsius: number, strength: number, mL: number, ice: number) => ({ minutes, figures: { temperature: figure(celsius, '°C', 2.4, 'predicted'), strength: figure(strength, '% vol', 0.9), volume: figure(mL, 'mL', 9), ice_left: figure(ice, 'g', 9) } });
const LATER: Reading = { ...CLEAR_COLADA, later: [at(2, -0.4, 15.6, 150, 107), at(5, -1.2, 15, 158, 99), at(10, -2, 14.2, 166, 91), at(20, -1.9, 13.1, 180, 77), at(30, -1.3, 12.4, 191, 66)] };
const LIQUID: Reading = { ...LATER, glass: { ...DOUBLE_ROCKS, layers: DOUBLE_ROCKS.layers.slice(0, 1) } };
const texts = (drawing: Drawing): TextShape[] => drawing.shapes.filter((s): s is TextShape => s.kind === 'text');
const lettered = (drawing: Drawing): string[] => texts(drawing).map((s) => s.runs.map((r) => r.text).join(' '));

describe('half an hour as curves', () => {
  it('sets no text over another or out of the drawing, at any width, on one row or on many', () => {
    fc.assert(fc.property(fc.integer({ min: 300, max: 1400 }), fc.boolean(), fc.constantFrom(LATER, LIQUID), (width, all, reading) => {
      const drawing = drawLater(reading, { width, scheme: 'light', all })!;
      const boxes = texts(drawing).map((s) => ({ text: s.runs[0]?.text ?? '', box: textBox(s.x, s.y, s.runs, s.anchor) }));
      for (const [i, a] of boxes.entries()) {
        for (const b of boxes.slice(i + 1)) expect(overlap(a.box, b.box, -0.1), `${a.text} over ${b.text} at ${width}`).toBe(false);
        expect(a.box.x >= -0.05 && a.box.x + a.box.width <= drawing.width + 0.05 && a.box.y >= 0 && a.box.y + a.box.height <= drawing.height + 0.05, `${a.text} outside at ${width}`).toBe(true);
      }
    }));
  });
  it('says what it is at the end with its unit and its spread', () => {
    const said = lettered(drawLater(LATER, { width: 375, scheme: 'dark' })!);
    for (const text of ['temperature', 'strength', 'ice left', 'liquid', '−1.3 °C', '± 2.4', '12.4 % vol', '± 0.9', '66 g', '191 ml', '30 min']) expect(said, text).toContain(text);
  });
  it('draws what has room and says the rest in words, so that nothing is lost', () => {
    for (const width of [520, 700, 940, 1300]) {
      const drawing = drawLater(LATER, { width, scheme: 'light' })!;
      expect(drawing.parts.map((p) => p.id).sort()).toEqual(['course:ice_left', 'course:strength', 'course:temperature', 'course:volume']);
      expect(drawing.parts.every((p) => p.name?.includes('30'))).toBe(true);
    }
  });
  it('starts with what is poured where that is the same liquid, else with the first time told', () => {
    expect(coursesOf(LATER).map((c) => [c.name, c.points[0]!.minutes])).toEqual([['temperature', 0], ['strength', 2], ['ice_left', 2], ['volume', 2]]);
    expect(coursesOf(LIQUID).map((c) => [c.name, c.points[0]!.minutes])).toEqual([['temperature', 0], ['strength', 0], ['ice_left', 2], ['volume', 0]]);
    expect(drawLater(CLEAR_COLADA, { width: 900, scheme: 'light' })).toBeNull();
  });
  it('draws the band from the lowest to the highest at its end: heights are in the ratio of the numbers', () => {
    const drawing = drawLater(LIQUID, { width: 375, scheme: 'light' })!, of = (pen: string) => drawing.shapes.filter((s): s is PathShape => s.kind === 'path' && s.part === 'course:strength' && s.pen === pen);
    const ends = of('extension').map((s) => Number(/^M\S+ ([\d.]+)/.exec(s.d)![1]));
    const dots = drawing.shapes.flatMap((s) => (s.kind === 'circle' && s.part === 'course:strength' ? [s.y] : []));
    const perUnit = (Math.max(...ends) - Math.min(...ends)) / 1.8;
    expect((dots[1]! - dots[0]!) / perUnit).toBeCloseTo(15.3 - 12.4, 1);
  });
});

// A monotone cubic has no extremum of its own: Fritsch and Carlson, SIAM Journal on Numerical Analysis 17 (1980), 238.
it('the curve goes through its points and nowhere beyond two neighbours', () => {
  fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: -50, max: 50 })), { minLength: 2, maxLength: 7 }), (list) => {
    let x = 0;
    const points = list.map(([dx, y]) => { x += dx; return [x, y] as const; }), height = evenAt(points);
    expect(evenCurve(points)).toHaveLength(points.length);
    for (const [i, [px, py]] of points.entries()) {
      expect(height(px)).toBeCloseTo(py, 6);
      const next = points[i + 1];
      if (next === undefined) continue;
      for (let t = 0; t <= 1; t += 0.1) {
        const y = height(px + t * (next[0] - px));
        expect(y).toBeGreaterThanOrEqual(Math.min(py, next[1]) - 1e-9);
        expect(y).toBeLessThanOrEqual(Math.max(py, next[1]) + 1e-9);
      }
    }
  }));
});

describe('half an hour in characters', () => {
  it('keeps to its width, shows band, median and the ends of the scale', () => {
    const lines = terminalLater(LATER, { width: 80 });
    expect(Math.max(...lines.map((l) => l.length))).toBeLessThanOrEqual(80);
    for (const text of ['temperature, °C', 'strength, % vol', '░', '●', '30 min', '16.5', '11.5']) expect(lines.join('\n')).toContain(text);
  });
  it('keeps to ASCII but for the degree sign', () => { expect(terminalLater(LATER, { width: 80, ascii: true }).join('')).toMatch(/^[ -~°]*$/); });
  it('has one median in every column of a course from its first time on', () => {
    const [, ...rows] = terminalLater({ ...LIQUID, later: LIQUID.later!.map(({ minutes, figures }) => ({ minutes, figures: { strength: figures['strength']! } })) }, { width: 80, ascii: true }), cells = rows.slice(0, 6).map((row) => row.slice(9).padEnd(26));
    for (let k = 0; k < 26; k += 1) expect(cells.filter((row) => row[k] === '*')).toHaveLength(1);
  });
  it('is empty where nothing is told', () => { expect(terminalLater(CLEAR_COLADA, { width: 80 })).toEqual([]); });
});
