import { describe, expect, it } from 'vitest';
import { brokenBy, contactCooling, contactRate, reached, slowness } from './infusion.ts';

/** Share of what can come out after so many minutes at a temperature. */
const out = (minutes: number, celsius: number) => reached(minutes * contactRate(celsius));

describe('tea leaf against print', () => {
  // tea-arizona table 1, black tea at 0.96 g leaf in 100 mL, boiling water on a bag: polyphenols 642, 997, 1064 mg/L after 1, 2-3 and 4 min or more. The time
  // constant is fitted to these three, so they only say that one constant does for all: within 6 %, the cups differ by more
  it.each([[1, 642], [2.5, 997], [5, 1064]])('%d min: %d mg/L of polyphenols', (minutes, mg_L) => {
    expect((1070 * out(minutes, 95)) / mg_L).toBeGreaterThan(0.94);
    expect((1070 * out(minutes, 95)) / mg_L).toBeLessThan(1.06);
  });
  // jaganyi-price-1999, abstract: caffeine of a black tea of 1.4-2 mm at 80 °C 0.99 a minute. Whole teas differ fourfold (price-spiro-1985): within a factor of two
  it('caffeine at 80 °C', () => {
    expect(contactRate(80) / 0.99).toBeGreaterThan(0.5);
    expect(contactRate(80) / 0.99).toBeLessThan(2);
  });
  // farakte-2015, abstract: fractions of a granulated tea at 60 °C 0.257 to 0.685 a minute; leaf is coarser, so at the slow end, within a factor of two
  it('gallic acid equivalents at 60 °C', () => {
    expect(contactRate(60)).toBeGreaterThan(0.257 / 2);
    expect(contactRate(60)).toBeLessThan(0.685);
  });
  // farakte-2015: diffusivity 2.23e-10 at 60 °C, 4.34e-10 m2/s at 80 °C; activation energies of 30 to 50 kJ/mol are printed (price-spitzer-1994), so 1.8 to 2.8 times
  it('20 K warmer is about twice as fast', () => {
    const printed = 4.34 / 2.23;
    expect(contactRate(80, 30) / contactRate(60, 30)).toBeLessThan(printed);
    expect(contactRate(80, 50) / contactRate(60, 50)).toBeGreaterThan(printed);
    expect(contactRate(80) / contactRate(60) / printed).toBeLessThan(1.25);
  });
  // yang-2007, as retold by a reader: caffeine in mg/L after 4 min at 100, 85, 70 °C: green 227, 198, 140; oolong 229, 210, 143; black 254, 248, 213
  it.each([[85, 198 / 227, 248 / 254], [70, 140 / 227, 213 / 254]])('4 min at %d °C against 4 min at 100 °C lies among the teas', (celsius, least, most) => {
    const share = out(4, celsius) / out(4, 100);
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(most);
  });
  // yang-2007: cold water of 4 °C gives in 16 h hardly more than in 8 h, and more than hot water in 4 min; of 25 °C, most of it in 2 h
  it('cold water takes hours', () => {
    expect(out(960, 4) / out(480, 4)).toBeLessThan(1.1);
    expect(out(480, 4)).toBeGreaterThan(0.9);
    expect(out(120, 25)).toBeGreaterThan(0.9);
    expect(out(4, 4)).toBeLessThan(0.1);
  });
});

describe('a liquid that cools to its place', () => {
  // exact: with no time to cool it is the rate at the place, with all the time in the world the rate at the start
  it('lies between both ends', () => {
    expect(contactCooling(95, 20, 10, 0)).toBeCloseTo(10 * contactRate(20), 12);
    expect(contactCooling(95, 20, 10, 1e6) / (10 * contactRate(95))).toBeCloseTo(1, 3);
    expect(contactCooling(20, 20, 60, 30)).toBeCloseTo(60 * contactRate(20), 12);
    expect(contactCooling(95, 20, 0, 30)).toBe(0);
  });
  it.each([[95, 20, 30, 40], [95, 4, 600, 90], [60, 20, 1440, 60], [4, 22, 720, 120], [100, -18, 2000, 60]])('from %d to %d °C in %d min as a sum of small steps', (from, place, minutes, cooling) => {
    let sum = 0;
    const n = 20000, step = minutes / n;
    for (let i = 0; i < n; i++) sum += step * contactRate(place + (from - place) * Math.exp(-((i + 0.5) * step) / cooling));
    expect(contactCooling(from, place, minutes, cooling) / sum).toBeCloseTo(1, 2);
  });
  it('never falls with time or warmth', () => {
    for (const place of [-18, 4, 20, 85]) for (let m = 1; m < 3000; m *= 1.7) {
      expect(contactCooling(90, place, 1.7 * m, 50)).toBeGreaterThan(contactCooling(90, place, m, 50));
      expect(contactCooling(91, place, m, 50)).toBeGreaterThanOrEqual(contactCooling(90, place, m, 50));
    }
  });
});

describe('other solids', () => {
  // common practice, no source: tea in spirit half an hour to two hours, fresh mint half a day, peel one to three days, whole spice days
  it.each([['tea-leaf-dry', 'coffee-tea', 1.5], ['spearmint', 'herb', 8], ['orange-peel', 'garnish', 36], ['gentian-root', 'herb', 72], ['clove', 'spice', 96]])('%s in spirit at 20 °C has given most of it after so many hours, little after a twentieth', (id, category, hours) => {
    const slow = slowness({ id, category });
    expect(reached((hours * 60 * contactRate(20)) / slow)).toBeGreaterThan(0.75);
    expect(reached((hours * 3 * contactRate(20)) / slow)).toBeLessThan(0.4);
  });
  it('a row of no category takes as long as whole spice; only what breaks gives at once', () => {
    expect(slowness({ id: 'x', category: 'unheard of' })).toBe(slowness({ id: 'clove', category: 'spice' }));
    expect(reached(brokenBy('blend'))).toBeGreaterThan(0.9);
    for (const verb of ['stir', 'why', 'source', 'rest']) expect(brokenBy(verb)).toBe(0);
    expect(reached(-1)).toBe(0);
  });
});
