import { describe, expect, it } from 'vitest';
import { CLEAR_COLADA, DOUBLE_ROCKS } from '../../test/readings.ts';
import { drawFilm, type FilmOptions, type FilmStand } from './draw.ts';

const WIDE: FilmOptions = { width: 1440, height: 820, scheme: 'light', split: 648, top: 14, foot: 808, high: 380, low: 470, time: null };
const STIRRED: FilmStand = { kind: 'vessel', vessel: 'stirring glass', room_mL: 400, mL: 149, ice_g: 176, colour: '#d8e0a8', turbidity: 0, strength: 16, bar: null, frozen: false, set: false };

describe('one step drawn', () => {
  it('a vessel at its level, and the level runs to the right edge', () => {
    const { drawing, rule } = drawFilm(STIRRED, WIDE);
    expect(rule.level).toBe(true);
    expect(rule.y).toBeGreaterThanOrEqual(380);
    expect(rule.y).toBeLessThanOrEqual(470);
    expect(drawing.washline_y! / drawing.mmPerPx).toBeCloseTo(rule.y, 6);
    // 149 ml and 176 g of ice in a stirring glass of 44 mm radius: (149 + 176 / 0.917) / (π 4.4²) = 5.61 cm, drawn to scale over its floor
    const level = drawing.shapes.find((s) => s.part === 'bench' && s.kind === 'path' && s.pen === 'level'), floor = drawing.shapes.filter((s) => s.part === 'bench' && s.kind === 'path' && s.pen === 'fill')[0];
    expect(level).toBeDefined();
    if (floor?.kind !== 'path') throw new Error('no liquid');
    const ys = [...floor.d.matchAll(/[ML]\s*[-\d.]+[ ,]([-\d.]+)/g)].map((m) => Number(m[1]));
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(56.1, 0);
    expect(drawing.parts.find((p) => p.role === 'vessel')?.name).toBe('stirring glass with 149 millilitres and 176 grams of ice');
  });
  it('every vessel and every level keeps its room', () => {
    for (const vessel of ['jar', 'bottle', 'pan', 'siphon', 'tray', 'freezer box', 'stirring glass', 'shaker'] as const) for (const mL of [1, 60, 320, 900, 5000]) for (const width of [1440, 375]) {
      const options = width === 1440 ? WIDE : { ...WIDE, width, height: 640, split: 190, top: 190, foot: 628, high: 240, low: 420 };
      const { drawing, rule } = drawFilm({ ...STIRRED, vessel, room_mL: mL, mL, ice_g: 0 }, options);
      expect(rule.y).toBeGreaterThanOrEqual(options.high - 1);
      for (const shape of drawing.shapes.filter((s) => s.part === 'bench')) if (shape.kind === 'path') for (const [, x, y] of shape.d.matchAll(/[ML]\s*([-\d.]+)[ ,]([-\d.]+)/g)) {
        expect(Number(x) / drawing.mmPerPx).toBeGreaterThan(-12);
        expect(Number(x) / drawing.mmPerPx).toBeLessThan(options.split + 20);
        expect(Number(y) / drawing.mmPerPx).toBeGreaterThan(options.top - 8);
        expect(Number(y) / drawing.mmPerPx).toBeLessThan(options.foot + 4);
      }
    }
  });
  it('the triangle stands where the time is; done it stands at the end', () => {
    const at = (gone: number) => drawFilm({ kind: 'glass', glass: DOUBLE_ROCKS }, { ...WIDE, time: { seconds: 25, gone } }).rule;
    expect(at(0).at).toBe(at(0).from);
    expect((at(10).at - at(10).from) / (at(10).to - at(10).from)).toBeCloseTo(0.4, 9);
    expect(at(99).at).toBe(at(99).to);
    const drawing = drawFilm({ kind: 'glass', glass: CLEAR_COLADA.glass! }, { ...WIDE, time: { seconds: 25, gone: 10 } }).drawing;
    expect(drawing.parts.filter((p) => p.role === 'layer')).toHaveLength(2);
  });
  it('without a state there is a rule for the time and no level', () => {
    const { drawing, rule } = drawFilm(null, { ...WIDE, time: { seconds: 14_400, gone: 0 } });
    expect(rule.level).toBe(false);
    expect(drawing.washline_y).toBeNull();
    expect(drawing.shapes.some((s) => s.kind === 'path' && s.pen === 'washline')).toBe(false);
    expect(drawFilm(null, WIDE).drawing.shapes).toEqual([]);
  });
});
