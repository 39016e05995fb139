import { expect, test } from 'vitest';
import { at, BLOCK } from '../matter/constituents.ts';
import { boilOff, ethanolKeptAfterSimmering, ethanolKeptBy } from './index.ts';

// USDA Table of Nutrient Retention Factors, Release 6: 40, 35, 25, 20, 10, 5 % after 15 … 150 min stirred in; flamed 75 %
test.each([[15, 0.4], [30, 0.35], [60, 0.25], [90, 0.2], [120, 0.1], [150, 0.05]])('after %i minutes', (minutes, kept) => {
  expect(ethanolKeptAfterSimmering(minutes)).toBeCloseTo(kept, 12);
});
test('falls all the way and never reaches nothing', () => {
  expect(ethanolKeptAfterSimmering(0)).toBe(1);
  for (let m = 0; m < 300; m++) {
    expect(ethanolKeptAfterSimmering(m + 1)).toBeLessThan(ethanolKeptAfterSimmering(m));
    expect(ethanolKeptAfterSimmering(m)).toBeGreaterThan(0);
  }
});
test('by code or by words, else nothing', () => {
  expect(ethanolKeptBy('5003')).toBe(0.75);
  expect(ethanolKeptBy('flamed')).toBe(0.75);
  expect(ethanolKeptBy('grilled')).toBeUndefined();
});
test('boiling off loses nothing but to the air', () => {
  const pan = new Float64Array(BLOCK), air = new Float64Array(BLOCK);
  pan[at.water] = 200; pan[at.ethanol] = 20; pan[at.sucrose] = 50;
  const gone = boilOff(pan, 0, air, 0, 0.05, 0.4);
  expect(gone).toBeCloseTo(22, 12);
  expect(pan[at.water]! + air[at.water]!).toBeCloseTo(200, 12);
  expect(pan[at.ethanol]! + air[at.ethanol]!).toBeCloseTo(20, 12);
  expect(pan[at.sucrose]).toBe(50);
  expect(boilOff(pan, 0, air, 0, -1, 2)).toBe(0);
});
