import { describe, expect, it } from 'vitest';
import { clears, heightAt, streamWidth, type Fall } from './fall.ts';
import { levelOf, vesselFor } from './vessel.ts';
import { letterOf } from './flow.ts';

const FALL: Fall = { lip: [100, 50], wall: 3, side: 1, land: [180, 210], width: 8 };

describe('what is poured', () => {
  it('leaves the lip level and lands where it should, as a parabola', () => {
    expect(heightAt(FALL, 100)).toBe(46);
    expect(heightAt(FALL, 180)).toBeCloseTo(210, 9);
    expect(heightAt(FALL, 140)).toBeCloseTo(46 + 164 / 4, 9);
    expect(heightAt(FALL, 90)).toBeNull();
  });
  it('knows whether it clears the near lip', () => {
    expect(clears(FALL, [140, 140])).toBe(true);
    expect(clears(FALL, [140, 90])).toBe(false);
  });
  it('is broader the more is poured', () => {
    expect(streamWidth(300, false)).toBeGreaterThan(streamWidth(60, false));
    expect(streamWidth(1, false)).toBe(4);
  });
  it('fills a jar to the height that its volume takes', () => {
    // 276 mL in a cylinder of radius 41 mm: 276 000 / (π 41²) = 52.3 mm.
    expect(levelOf(vesselFor('jar', 276), 276)).toBeCloseTo(52.26, 1);
  });
  it('takes the smallest vessel that holds it with room', () => {
    expect(vesselFor('jar', 100).mL).toBe(130);
    expect(vesselFor('jar', 130).mL).toBe(630);
    expect(vesselFor('jar', 90000).mL).toBe(20000);
  });
  it('uses no letter that reads as a figure', () => {
    const letters = Array.from({ length: 24 }, (_, i) => letterOf(i));
    expect(letters.slice(0, 9).join('')).toBe('ABCDEFGHJ');
    expect(letters.join('')).not.toMatch(/[IOQS]/);
    expect(letters[22]).toBe('AA');
    expect(new Set(letters).size).toBe(24);
  });
});
