import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CLEAR_COLADA, DOUBLE_ROCKS } from '../test/readings.ts';
import { clearColada } from '../test/documents.ts';
import { drinks, made } from '../test/random.ts';
import { draw, type DrawOptions } from './draw.ts';
import { overlap, textBox, type Box } from './pen/pad.ts';
import type { Drawing, TextShape } from './shapes.ts';

const ROOMS: readonly Pick<DrawOptions, 'width' | 'height'>[] = [{ width: 954, height: 862 }, { width: 840, height: 682 }, { width: 700, height: 640 }, { width: 375, height: 545 }];

function boxes(drawing: Drawing): { text: string; box: Box }[] {
  return drawing.shapes.filter((s): s is TextShape => s.kind === 'text').map((s) => ({ text: s.runs.map((r) => r.text).join(' '), box: textBox(s.x, s.y, s.runs, s.anchor) }));
}
function collisions(drawing: Drawing): string[] {
  const all = boxes(drawing), out: string[] = [];
  for (const [i, a] of all.entries()) for (const b of all.slice(i + 1)) if (overlap(a.box, b.box, -0.1)) out.push(`${a.text} over ${b.text}`);
  for (const a of all) if (a.box.x < -0.05 || a.box.x + a.box.width > drawing.width + 0.05 || a.box.y < -0.05 || a.box.y + a.box.height > drawing.height + 0.05) out.push(`${a.text} outside`);
  return out;
}

describe('the drawing of a reading', () => {
  it('sets no text over another or out of the drawing, for the worked drink', () => {
    for (const room of ROOMS) for (const scheme of ['light', 'dark'] as const) expect(collisions(draw(CLEAR_COLADA, { ...room, scheme, document: clearColada() }))).toEqual([]);
  });
  it('sets no text over another at true size on paper, for the worked drink and for random ones', () => {
    // the room the page gives it on a sheet of A4: 180 x 186 mm at 96 px an inch
    const paper = { width: (180 / 25.4) * 96, height: (186 / 25.4) * 96, mmPerPx: 25.4 / 96, scheme: 'light' as const };
    expect(collisions(draw(CLEAR_COLADA, { ...paper, document: clearColada() }))).toEqual([]);
    fc.assert(fc.property(drinks, (d) => {
      const { reading, document } = made(d);
      expect(collisions(draw(reading, { ...paper, document })).filter((said) => said.includes('1 : 1'))).toEqual([]);
    }));
  });
  it('draws the ice that a liquid has of its own, and letters it, from half a per cent of its water on', () => {
    const { dilution: _, ...figures } = CLEAR_COLADA.figures, of = (ice: number) => draw({ ...CLEAR_COLADA, figures: { ...figures, frozen: { ...CLEAR_COLADA.figures['strength']!, value: ice, low: ice, high: ice, unit: '%' } } }, { ...ROOMS[0]!, scheme: 'light', document: clearColada() });
    const full = (drawing: Drawing) => drawing.shapes.filter((s) => s.kind === 'path' && s.part.startsWith('layer:') && s.hatch === 'ice').length, words = (drawing: Drawing) => boxes(drawing).map(({ text }) => text);
    expect([full(of(12)), full(of(0.4))]).toEqual([1, 0]);
    expect(words(of(12))).toEqual(expect.arrayContaining(['12.0 %', 'of its water ice']));
    expect(words(of(0.4))).not.toContain('of its water ice');
    expect(collisions(of(12))).toEqual([]);
  });
  it('stands vessels as they stood where it is told, and sets no text over another so either', () => {
    fc.assert(fc.property(drinks, drinks, fc.constantFrom(...ROOMS), (one, two, room) => {
      const first = made(one), then = made({ ...two, preps: one.preps }), options = { ...room, scheme: 'light' as const };
      const { arranged } = draw(first.reading, { ...options, document: first.document });
      expect(draw(first.reading, { ...options, document: first.document, like: arranged })).toEqual(draw(first.reading, { ...options, document: first.document }));
      const like = draw(then.reading, { ...options, document: then.document, like: arranged }), anew = draw(then.reading, { ...options, document: then.document });
      expect(collisions(like)).toEqual([]);
      expect(like.arranged!.cost).toBeLessThanOrEqual(Math.max(arranged!.cost, anew.arranged!.cost));
    }));
  });
  it('arranges others than it is told of anew', () => {
    const options = { width: 954, height: 862, scheme: 'light' as const, document: clearColada() }, whole = draw(CLEAR_COLADA, options);
    expect(whole.arranged!.over).toBeGreaterThan(1);
    expect(draw(CLEAR_COLADA, { ...options, like: { ...whole.arranged!, of: 'another', over: 10, cost: Infinity } })).toEqual(whole);
    expect(draw(CLEAR_COLADA, { ...options, like: { ...whole.arranged!, over: 10, cost: Infinity } }).arranged!.over).toBe(10);
  });
  it('sets no text over another or out of the drawing, for random drinks', () => {
    fc.assert(fc.property(drinks, fc.constantFrom(...ROOMS), (d, room) => {
      const { reading, document } = made(d);
      expect(collisions(draw(reading, { ...room, scheme: 'light', document }))).toEqual([]);
    }));
  });
  it('keeps the crest of each fall on the sheet, and no dimension lies on the washline, for random drinks', () => {
    const paper = { width: (180 / 25.4) * 96, height: (186 / 25.4) * 96, mmPerPx: 25.4 / 96 };
    fc.assert(fc.property(drinks, fc.constantFrom(...ROOMS, paper), (d, room) => {
      const { reading, document } = made(d), drawing = draw(reading, { ...room, scheme: 'light', document });
      for (const shape of drawing.shapes) {
        if (shape.kind === 'path' && shape.part.startsWith('fall:') && shape.pen === 'fall') expect(Math.min(...[...shape.d.matchAll(/[MLC][^MLCZ]*/g)].map(([step]) => Number(step.trim().split(/[\s,]+/).at(-1)!)))).toBeGreaterThanOrEqual(-0.05);
        // letters as they are drawn: from the base line up to the height of a digit
        if (shape.kind === 'text' && shape.part === 'dimensions' && drawing.washline_y !== null) {
          const high = 0.72 * shape.runs[0]!.size, half = 0.75 * drawing.mmPerPx;
          expect(shape.y < drawing.washline_y - half || shape.y - high > drawing.washline_y + half).toBe(true);
        }
      }
    }), { numRuns: 300 });
  });
  it('draws every level where the reading has it: a millimetre of the glass is a unit of the drawing', () => {
    for (const room of ROOMS) {
      const drawing = draw(CLEAR_COLADA, { ...room, scheme: 'light' });
      const y = (pen: string, part: string): number[] => drawing.shapes.flatMap((s) => (s.kind === 'path' && s.part === part && s.pen === pen ? [Number(/^M\S+ (\S+?)[LZ]/.exec(s.d)?.[1])] : []));
      const line = y('washline', 'washline')[0] ?? Number.NaN;
      const floor = Math.max(...layerYs(drawing, 'layer:0'));
      expect(floor - line).toBeCloseTo(DOUBLE_ROCKS.washline_mm, 1);
      expect(floor - (y('level', 'levels')[0] ?? Number.NaN)).toBeCloseTo(DOUBLE_ROCKS.liquid_mm, 1);
      expect(drawing.washline_y).toBeCloseTo(line, 2);
    }
  });
  it('draws the ice at its true size and height', () => {
    const drawing = draw(CLEAR_COLADA, { width: 954, height: 862, scheme: 'light' });
    const floor = Math.max(...layerYs(drawing, 'layer:0')), ys = layerYs(drawing, 'ice:0');
    expect(floor - Math.max(...ys)).toBeCloseTo(15.2, 1);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(50, 1);
  });
  it('is 1 : 1 on paper when told the millimetres of a px', () => {
    const drawing = draw(CLEAR_COLADA, { width: 680, height: 700, scheme: 'light', mmPerPx: 25.4 / 96 });
    expect(drawing.width).toBeCloseTo((680 * 25.4) / 96, 6);
  });
  it('leaves the glass where it stands when the level moves', () => {
    const lower = draw({ ...CLEAR_COLADA, glass: { ...DOUBLE_ROCKS, washline_mm: 60, layers: DOUBLE_ROCKS.layers.slice(0, 1), ice: [] } }, { width: 954, height: 862, scheme: 'light' });
    const wall = (d: Drawing): string | undefined => d.shapes.flatMap((s) => (s.part === 'wall' && s.kind === 'path' ? [s.d] : []))[0];
    expect(wall(lower)).toBe(wall(draw(CLEAR_COLADA, { width: 954, height: 862, scheme: 'light' })));
  });
  it('draws a glass without a line for a text that holds nothing', () => {
    const drawing = draw({ ...CLEAR_COLADA, figures: {}, glass: null, preps: {}, stages: [] }, { width: 954, height: 862, scheme: 'light' });
    expect(drawing.washline_y).toBeNull();
    expect(drawing.parts.some((p) => p.role === 'washline' || p.figure !== undefined)).toBe(false);
    expect(drawing.shapes.some((s) => s.part === 'wall')).toBe(true);
  });
  it('stays a drawing however much is poured', () => {
    for (const factor of [2, 30, 1e4, 1e9]) {
      const high = DOUBLE_ROCKS.washline_mm * factor;
      const glass = { ...DOUBLE_ROCKS, washline_mm: high, liquid_mm: high, washline: { ...DOUBLE_ROCKS.washline, value: high, low: high * 0.9, high: high * 1.1 }, layers: [{ ...DOUBLE_ROCKS.layers[0], name: 'drink', kind: 'liquid' as const, colour: '#d8e0a8', turbidity: 0, mL: 149 * factor, strength: 16, from_mm: 0, to_mm: high }], ice: DOUBLE_ROCKS.ice.map((i) => ({ ...i, from_mm: high - 20, to_mm: high })) };
      for (const room of ROOMS) {
        const drawing = draw({ ...CLEAR_COLADA, glass }, { ...room, scheme: 'light', document: clearColada() });
        expect(collisions(drawing)).toEqual([]);
        expect(drawing.shapes.length).toBeLessThan(700);
        expect(drawing.parts.find((p) => p.role === 'washline')?.washline_mm).toBe(high);
      }
    }
  });
  it('marks figures, layers, preps and the washline for whoever checks', () => {
    const { parts } = draw(CLEAR_COLADA, { width: 954, height: 862, scheme: 'light', document: clearColada() });
    expect(parts.filter((p) => p.reading === 'drink')).toHaveLength(1);
    expect(parts.flatMap((p) => (p.layer === undefined ? [] : [p.layer]))).toEqual(['drink', 'pineapple cloud']);
    expect(parts.find((p) => p.role === 'washline')?.washline_mm).toBe(74.1);
    expect(parts.find((p) => p.id === 'figure:strength')?.figure).toEqual({ reading: 'drink', name: 'strength', value: 15.3, unit: '% vol', low: 14.600000000000001, high: 16 });
    expect(parts.filter((p) => p.role === 'vessel').map((p) => p.prep)).toEqual(expect.arrayContaining(['coconut rum', 'clear pineapple', 'pineapple cloud']));
  });
  it('shows each figure of the drink once, under its reading', () => {
    const one = { ...CLEAR_COLADA, glass: { ...DOUBLE_ROCKS, layers: DOUBLE_ROCKS.layers.slice(0, 1), washline_mm: 59, top_mm: 65.2 } };
    for (const reading of [CLEAR_COLADA, one]) for (const room of ROOMS) {
      const { parts } = draw(reading, { ...room, scheme: 'light', document: clearColada() });
      const of = parts.filter((p) => p.figure?.reading === 'drink');
      expect(new Set(of.map((p) => p.figure?.name)).size).toBe(of.length);
      expect(of.every((p) => p.within === 'drink')).toBe(true);
      for (const name of ['washline', 'strength', 'volume', 'sugar', 'temperature']) expect(of.some((p) => p.figure?.name === name), `${name} at ${room.width}`).toBe(true);
    }
  });
  it('says a stop in words and with its block, never by colour alone', () => {
    const drawing = draw(CLEAR_COLADA, { width: 954, height: 862, scheme: 'light', document: clearColada(), findings: [{ severity: 'stop', head: 'The foam never sets.', rest: 'Fresh pineapple eats the gelatin.', path: ['preps', 'pineapple cloud', 1] }] });
    expect(drawing.shapes.some((s) => s.kind === 'path' && s.pen === 'stop')).toBe(true);
    expect(boxes(drawing).map((b) => b.text)).toContain('The foam never sets.');
    expect(collisions(drawing)).toEqual([]);
  });
});

function layerYs(drawing: Drawing, part: string): number[] {
  return drawing.shapes.flatMap((s) => (s.part === part && s.kind === 'path' ? [...s.d.matchAll(/(-?[\d.]+) (-?[\d.]+)(?=[A-Z])/g)].map((m) => Number(m[2])) : []));
}
