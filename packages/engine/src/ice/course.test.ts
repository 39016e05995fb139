import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLOCK, at } from '../matter/constituents.ts';
import { WATER_0_J_G, enthalpy, enthalpyOfIce, freezingPoint } from '../liquids/index.ts';
import { advance } from './advance.ts';
import { areaOfPieces } from './solid.ts';

const L = 0, H = BLOCK, T = BLOCK + 1, V = BLOCK + 2, I = BLOCK + 4, S = BLOCK + 8, A = BLOCK + 12;
const bodies = { liquid: L, enthalpy: H, celsius: T, vessel: V, ice: I };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const drinks = fc.record({
  water: number(50, 150), ethanol: number(1, 40), sucrose: number(0, 40), citric: number(0, 4), start: number(2, 30), ice: number(20, 300), iceAt: number(-20, 0), size: number(5, 50),
  agitation: number(100, 3000), vessel: fc.constantFrom(0, 60, 150), toAir: number(0, 1), ambient: number(5, 30),
});
interface Drawn { readonly water: number; readonly ethanol: number; readonly sucrose: number; readonly citric: number; readonly start: number; readonly ice: number; readonly iceAt: number; readonly size: number; readonly agitation: number; readonly vessel: number; readonly toAir: number; readonly ambient: number }

function poured(d: Drawn): Float64Array {
  const s = new Float64Array(BLOCK + 16);
  s[at.water] = d.water; s[at.ethanol] = d.ethanol; s[at.sucrose] = d.sucrose; s[at.citric] = d.citric;
  s[H] = enthalpy(s, L, d.start); s[T] = d.start;
  s[V] = d.start; s[V + 1] = d.vessel;
  s[I] = d.ice; s[I + 1] = d.iceAt; s[I + 2] = d.ice; s[I + 3] = areaOfPieces(d.ice, d.size);
  s[S] = d.ambient; s[S + 1] = d.agitation; s[S + 2] = 30; s[S + 3] = d.toAir;
  return s;
}
/** The drink at each of so many seconds, in calls that follow each other. */
function course(d: Drawn, seconds: number, calls: number): { celsius: number; ice: number; water: number; freezes: number }[] {
  const s = poured(d), out = [];
  for (let i = 0; i < calls; i++) { advance(s, bodies, S, seconds / calls, A); out.push({ celsius: s[T]!, ice: s[I]!, water: s[at.water]!, freezes: freezingPoint(s, L) }); }
  return out;
}

// What the laws of heat ask of any drink on ice; no numbers from print.
describe('a drawn drink on ice', () => {
  it('where nothing comes in from outside: cools, then stands still or rises with its own dilution; there is one turn, no more', () => {
    fc.assert(fc.property(drinks, (drawn) => {
      const all = course({ ...drawn, toAir: 0, vessel: 0 }, 240, 60);
      const coldest = all.reduce((low, one, i) => (one.celsius < all[low]!.celsius ? i : low), 0);
      for (let i = 1; i < all.length; i++) {
        if (i <= coldest) expect(all[i]!.celsius).toBeLessThanOrEqual(all[i - 1]!.celsius + 0.01);
        else if (all[i]!.ice > 0) expect(all[i]!.celsius).toBeGreaterThanOrEqual(all[i - 1]!.celsius - 0.01);
      }
    }));
  });
  it('after its end point, with heat from outside, neither warms less nor dilutes less while ice remains', () => {
    fc.assert(fc.property(drinks, (drawn) => {
      const all = course({ ...drawn, vessel: 150, toAir: Math.max(0.2, drawn.toAir), ambient: Math.max(15, drawn.ambient) }, 1800, 60);
      const coldest = all.reduce((low, one, i) => (one.celsius < all[low]!.celsius ? i : low), 0);
      // cold ice takes water of the drink on before it gives any
      const heaviest = all.reduce((most, one, i) => (one.ice > all[most]!.ice ? i : most), 0);
      for (let i = Math.max(coldest, heaviest) + 1; i < all.length && all[i]!.ice > 0; i++) {
        expect(all[i]!.celsius).toBeGreaterThanOrEqual(all[i - 1]!.celsius - 0.01);
        expect(all[i]!.water).toBeGreaterThanOrEqual(all[i - 1]!.water - 1e-9);
      }
    }));
  });
  // ice that is warmer than the surface melts on its own warmth and thins the drink while that lags behind: a fifth of a kelvin
  it('is never under the freezing point of what it is by then', () => {
    fc.assert(fc.property(drinks, (drawn) => {
      for (const { celsius, ice, freezes } of course(drawn, 120, 40)) if (ice > 0) expect(celsius).toBeGreaterThan(freezes - 0.2);
    }));
  });
  it('left to itself until nothing changes: more ice, dry and colder than the end point, is never warmer', () => {
    fc.assert(fc.property(drinks, number(1.05, 2), (drawn, more) => {
      const d = { ...drawn, iceAt: -20, toAir: 0, vessel: 0, agitation: 3000, size: 5 };
      const [less, most] = [course(d, 3600, 4)[3]!, course({ ...d, ice: d.ice * more }, 3600, 4)[3]!];
      if (less.celsius > -19.5) expect(most.celsius).toBeLessThanOrEqual(less.celsius + 0.02);
    }));
  });
  // ice at 0 °C chills a drink below 0 °C: the freezing point of the drink as poured is the fourth that can be coldest
  it('is never colder than the coldest of ice, drink with its vessel, room and the freezing point it began with', () => {
    fc.assert(fc.property(drinks, number(1, 2), fc.constantFrom(5, 60, 600, 3600), (drawn, more, seconds) => {
      const d = { ...drawn, ice: drawn.ice * more }, coldest = Math.min(d.iceAt, d.start, d.ambient, freezingPoint(poured(d), L));
      for (const { celsius } of course(d, seconds, 12)) expect(celsius).toBeGreaterThan(coldest - 0.02);
    }));
  });
  // of sixty thousand draws 13 are beyond 0.1 % of the heat that the ice took up, the worst 0.14 %: coarse ice at 0 °C that hardly moves in a cold strong drink
  it('composes: one call and two that are as long together agree within 0.1 K and 0.2 % of the heat that moved', () => {
    fc.assert(fc.property(drinks, number(0.1, 0.9), fc.constantFrom(5, 12, 30), (d, share, seconds) => {
      const { celsius, heat } = parted(d, share, seconds);
      expect(celsius).toBeLessThan(0.1);
      expect(heat).toBeLessThan(0.002);
    }));
  });
  it('composes within 0.1 % of the heat that moved in 998 of a thousand draws at least', () => {
    const all = fc.sample(fc.tuple(drinks, number(0.1, 0.9), fc.constantFrom(5, 12, 30)), 4000).map(([d, share, seconds]) => parted(d, share, seconds).heat);
    expect(all.filter((heat) => heat < 0.001).length).toBeGreaterThanOrEqual(3992);
  });
});

/** By how much one call differs from two: K, and of the heat that ice and what melted of it took up (of 5 g of fusion at least). */
function parted(d: Drawn, share: number, seconds: number): { readonly celsius: number; readonly heat: number } {
  const one = poured(d), two = poured(d);
  advance(one, bodies, S, seconds, A);
  advance(two, bodies, S, seconds * share, A);
  advance(two, bodies, S, seconds * (1 - share), A);
  const took = one[I]! * enthalpyOfIce(one[I + 1]!) + (d.ice - one[I]!) * WATER_0_J_G - d.ice * enthalpyOfIce(d.iceAt);
  return { celsius: Math.abs(one[T]! - two[T]!), heat: Math.abs(one[H]! - two[H]!) / Math.max(5 * 334, Math.abs(took)) };
}
