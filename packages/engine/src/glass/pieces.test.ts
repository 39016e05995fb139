import { describe, expect, it } from 'vitest';
import { areaPerGram, BED, CUBE, cutOf, pieceArea, pieceBelow, pieceHeight, pieceMass, pieceSize, solidShare, SPEAR, SPHERE } from './pieces.ts';

describe('ice pieces at 0.9167 g/mL', () => {
  it.each([[CUBE, 20, 7.3, 3.27], [CUBE, 25, 14.3, 2.62], [CUBE, 32, 30.0, 2.05], [CUBE, 50, 114.6, 1.31], [SPHERE, 60, 103.7, 1.09], [SPHERE, 65, 131.8, 1.01]] as const)('cut %i of %f mm weighs %f g, %f cm²/g', (cut, mm, grams, area) => {
    expect(pieceMass(cut, mm)).toBeCloseTo(grams, 1);
    expect(areaPerGram(cut, mm)).toBeCloseTo(area, 2);
  });
  it('size undoes mass', () => { for (const cut of [CUBE, SPHERE, SPEAR, BED] as const) expect(pieceSize(cut, pieceMass(cut, 33))).toBeCloseTo(33, 9); expect(pieceSize(CUBE, 0)).toBe(0); });
  it('a spear stands nearly three times as high as it is wide', () => { expect(pieceHeight(SPEAR, 40)).toBeCloseTo(118, 9); expect(pieceArea(SPEAR, 40)).toBeCloseTo(2 * 16 + 4 * 40 * 1.18, 6); });
  it('half of a sphere is under at its middle', () => { expect(pieceBelow(SPHERE, 60, 30)).toBeCloseTo((Math.PI * 216) / 12, 9); });
  it('is all or nothing outside the piece', () => { expect(pieceBelow(CUBE, 30, -2)).toBe(0); expect(pieceBelow(CUBE, 30, 99)).toBe(27); });
  it('crushed is denser than flakes (FAO stowage)', () => {
    expect(solidShare('crushed')).toBeGreaterThan(0.727); expect(solidShare('crushed')).toBeLessThan(0.779);
    expect(solidShare('shaved')).toBeLessThan(0.5);
  });
  it('reads the words of a spec', () => { expect(cutOf('large cube')).toBe(CUBE); expect(cutOf('pebble')).toBe(BED); expect(cutOf('no such')).toBe(CUBE); });
});
