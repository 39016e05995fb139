import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLOCK, at } from '../matter/constituents.ts';
import { enthalpy, enthalpyOfIce, freezingPoint, temperatureOf } from '../liquids/index.ts';
import { advance } from './advance.ts';
import { areaOfPieces } from './solid.ts';

const L = 0, H = BLOCK, T = BLOCK + 1, V = BLOCK + 2, I = BLOCK + 4, S = BLOCK + 8, A = BLOCK + 12;
const bodies = { liquid: L, enthalpy: H, celsius: T, vessel: V, ice: I };

function sour({ ice = 150, iceAt = -5, agitation = 2200, toVessel = 30, toAir = 0.5, ambient = 20, size = 30, start = 20 } = {}): Float64Array {
  const s = new Float64Array(BLOCK + 16);
  s[at.water] = 70; s[at.ethanol] = 19; s[at.sucrose] = 12; s[at.citric] = 1.4;
  s[H] = enthalpy(s, L, start); s[T] = start;
  s[V] = 20; s[V + 1] = 150;
  s[I] = ice; s[I + 1] = iceAt; s[I + 2] = ice; s[I + 3] = areaOfPieces(ice, size) * 1.5;
  s[S] = ambient; s[S + 1] = agitation; s[S + 2] = toVessel; s[S + 3] = toAir;
  return s;
}
const total = (s: Float64Array) => s[H]! + s[I]! * enthalpyOfIce(s[I + 1]!) + s[V]! * s[V + 1]!;

describe('time passes for drink, ice and vessel', () => {
  it('closes its energy to a thousandth of a joule', () => {
    const s = sour(), before = total(s);
    advance(s, bodies, S, 12, A);
    expect(total(s) - before - s[A]!).toBeCloseTo(0, 3);
    expect(temperatureOf(s, L, s[H]!, 0)).toBeCloseTo(s[T]!, 9);
  });
  it('keeps water: what melts is what the drink gains', () => {
    const s = sour();
    advance(s, bodies, S, 12, A);
    expect(s[at.water]! - 70).toBeCloseTo(150 - s[I]!, 9);
    expect(s[A + 1]!).toBeCloseTo(150 - s[I]!, 9);
  });
  it.each([[12, 5], [30, 11], [1800, 700]])('composes: %d s in one or two calls agree within 0.02 K and 0.05 g', (time, first) => {
    for (const agitation of [200, 900, 2200]) {
      const one = sour({ agitation }), two = sour({ agitation });
      advance(one, bodies, S, time, A);
      advance(two, bodies, S, first, A);
      advance(two, bodies, S, time - first, A);
      expect(Math.abs(one[T]! - two[T]!)).toBeLessThan(0.02);
      expect(Math.abs(one[I]! - two[I]!)).toBeLessThan(0.05);
    }
  });
  it('agrees with two hundred short calls within 0.1 K and 0.4 g, whatever the vessel, the ice and the drink begin at', () => {
    fc.assert(fc.property(fc.record({
      agitation: fc.constantFrom(20, 350, 900, 2200, 4000), toVessel: fc.constantFrom(0, 8, 30, 60), toAir: fc.constantFrom(0, 0.5, 1), size: fc.constantFrom(8, 30), ice: fc.double({ min: 40, max: 250, noNaN: true }),
      iceAt: fc.double({ min: -18, max: 0, noNaN: true }), start: fc.constantFrom(4, 22, 70), vessel: fc.constantFrom(-10, 20), time: fc.constantFrom(5, 12, 30, 300),
    }), ({ vessel, time, ...rest }) => {
      const one = sour(rest), many = sour(rest);
      one[V] = many[V] = vessel;
      advance(one, bodies, S, time, A);
      for (let i = 0; i < 200; i++) advance(many, bodies, S, time / 200, A);
      expect(Math.abs(one[T]! - many[T]!)).toBeLessThan(0.1);
      expect(Math.abs(one[I]! - many[I]!)).toBeLessThan(0.4);
    }));
  });
  it('takes weeks of stirring for what they are: all is melted and as warm as the room', () => {
    const s = sour(), before = total(s);
    advance(s, bodies, S, 23 * 86_400, A);
    expect(s[I]).toBe(0);
    expect(s[T]!).toBeCloseTo(20, 3);
    expect(total(s) - before - s[A]!).toBeCloseTo(0, 3);
  });
  it('closes its energy where hot sugar with next to no water melts ice that is warmer than the surface it makes', () => {
    for (const water of [0.5, 1.5, 4]) for (const iceAt of [-15, -5, 0]) {
      const s = sour({ ice: 20, iceAt, agitation: 2050, size: 15 });
      s.fill(0, 0, BLOCK); s[at.water] = water; s[at.sucrose] = 41; s[H] = enthalpy(s, L, 100); s[T] = 100;
      const before = total(s);
      advance(s, bodies, S, 8, A);
      expect(total(s) - before - s[A]!, `${water} g, ${iceAt} °C`).toBeCloseTo(0, 6);
      expect(s[at.water]! - water).toBeCloseTo(20 - s[I]!, 9);
    }
  });
  it('bears a drop on a bucket of ice, and a glass without water: energy closes, water stays above nothing', () => {
    for (const water of [0.07, 0]) {
      const s = sour({ ice: 1400, agitation: 4000 });
      s.fill(0, 0, BLOCK); s[at.water] = water; s[at.sucrose] = 0.3; s[H] = enthalpy(s, L, 20);
      const before = total(s);
      advance(s, bodies, S, 20, A);
      expect(s[at.water]!).toBeGreaterThanOrEqual(0);
      expect(total(s) - before - s[A]!).toBeCloseTo(0, 3);
      expect(s.every((v) => Number.isFinite(v))).toBe(true);
    }
  });
  it('levels off: 15 s of shaking do nine tenths of what 60 s do (common practice, no source: the plateau by 12 to 15 s)', () => {
    const a = sour(), b = sour();
    advance(a, bodies, S, 15, A);
    advance(b, bodies, S, 60, A);
    expect((20 - a[T]!) / (20 - b[T]!)).toBeGreaterThan(0.88);
    expect(a[T]!).toBeLessThan(-2);
  });
  it('never cools below the freezing point of the drink as diluted', () => {
    for (const iceAt of [-30, -18, -5, 0]) {
      const s = sour({ iceAt });
      advance(s, bodies, S, 60, A);
      expect(s[T]!).toBeGreaterThan(freezingPoint(s, L) - 0.02);
    }
  });
  it('is faster with small ice and with more agitation', () => {
    const run = (o: object) => { const s = sour(o); advance(s, bodies, S, 6, A); return s[T]!; };
    expect(run({ size: 10 })).toBeLessThan(run({ size: 30 }));
    expect(run({ agitation: 900 })).toBeGreaterThan(run({ agitation: 2200 }));
  });
  it('melts all of too little ice and goes on without it', () => {
    const s = sour({ ice: 10 }), before = total(s);
    advance(s, bodies, S, 600, A);
    expect(s[I]).toBe(0);
    expect(s[at.water]!).toBeCloseTo(80, 9);
    expect(total(s) - before - s[A]!).toBeCloseTo(0, 3);
  });
  it('100 g of water at 20 °C over 0 °C ice without losses ends at 0 °C with 83 / 333.6 of its heat melted (walstra2003: latent heat against 4.19 J/(g K))', () => {
    const s = sour({ ice: 200, iceAt: 0, toVessel: 0, toAir: 0 });
    s.fill(0, 0, BLOCK); s[at.water] = 100; s[H] = enthalpy(s, L, 20); s[V + 1] = 0;
    advance(s, bodies, S, 300, A);
    expect(s[T]!).toBeCloseTo(0, 2);
    expect(200 - s[I]!).toBeCloseTo((100 * 4.19 * 20) / 333.6, 0);
  });
  it('without ice, a long rest ends at the surroundings and its account holds the heat', () => {
    const s = sour({ ice: 0, ambient: 4, toAir: 0.3 }), before = total(s);
    advance(s, bodies, S, 12 * 3600, A);
    expect(s[T]!).toBeCloseTo(4, 1);
    expect(total(s) - before - s[A]!).toBeCloseTo(0, 3);
    const two = sour({ ice: 0, ambient: 4, toAir: 0.3 });
    advance(two, bodies, S, 1800, A);
    const one = sour({ ice: 0, ambient: 4, toAir: 0.3 });
    advance(one, bodies, S, 700, A);
    advance(one, bodies, S, 1100, A);
    expect(Math.abs(one[T]! - two[T]!)).toBeLessThan(0.02);
  });
});
