import { describe, expect, it } from 'vitest';
import { pair, pass } from './pair.ts';

/** Drink to ice, drink to vessel, vessel to air in W/K, the vessel's J/K. */
const ROWS = [[90, 30, 0.5, 150], [3, 60, 1, 400], [90, 5, 0.3, 60], [0, 30, 0.5, 150], [90, 30, 0, 150], [90, 0, 1, 150], [90, 30, 1, 0]] as const;

function started([toIce, toVessel, toAir, vesselHeat]: readonly [number, number, number, number]) {
  return Object.assign(pair(), { drink: 20, vessel: -10, heat: 350, vesselHeat, toIce, toVessel, toAir, surface: -6, ambient: 22 });
}

describe('a drink and its vessel', () => {
  it.each(ROWS)('is what a hundred thousand small steps of the two equations give: %s, %s, %s W/K, %s J/K', (...row) => {
    const b = started(row), n = 100_000, dt = 12 / n, [toIce, toVessel, toAir, vesselHeat] = row;
    let drink = 20, vessel = -10, above = 0, air = 0;
    for (let i = 0; i < n; i++) {
      const between = vesselHeat > 0 ? toVessel * (drink - vessel) : 0, fromAir = vesselHeat > 0 ? toAir * (22 - vessel) : 0;
      above += (drink + 6) * dt; air += fromAir * dt;
      drink -= ((toIce * (drink + 6) + between) / 350) * dt;
      if (vesselHeat > 0) vessel += ((between + fromAir) / vesselHeat) * dt;
    }
    pass(Object.assign(b, { seconds: 12 }));
    expect(b.drink).toBeCloseTo(drink, 2);
    expect(b.vessel).toBeCloseTo(vessel, 2);
    expect(b.above).toBeCloseTo(above, 1);
    expect(b.fromAir).toBeCloseTo(air, 1);
  });
  it('composes to rounding, however long', () => {
    for (const row of ROWS) for (const time of [1, 600, 1e6]) {
      const one = started(row), two = started(row);
      pass(Object.assign(one, { seconds: time }));
      pass(Object.assign(two, { seconds: time / 3 }));
      pass(Object.assign(two, { seconds: (2 * time) / 3 }));
      expect(two.drink).toBeCloseTo(one.drink, 9);
      expect(two.vessel).toBeCloseTo(one.vessel, 9);
    }
  });
  it('gives one temperature to both where nothing leads away', () => {
    const b = started([0, 30, 0, 150]);
    pass(Object.assign(b, { seconds: 1e6 }));
    expect(b.drink).toBeCloseTo((350 * 20 - 150 * 10) / 500, 9);
    expect(b.vessel).toBeCloseTo(b.drink, 9);
  });
});
