import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const gasOf = (text: string, name: string) => readText(text, { tables, quick: true }).reading.preps[name]!.gas!;
const cloud = (chargers: number, rest = 'chill 4 h at 4 °C') => `Check\n\nCloud (siphon foam):\n2 gold gelatin sheets, soaked 10 min in cold water\n300 ml water at 60 °C\ncool to 20 °C\ncharge ${chargers} N2O in a 500 ml siphon\n${rest}\n\nBuild:\n60 ml white rum 40 %\ntop with 15 g cloud`;

// Henry's constant of N2O in water, 2.4e-4 mol/(m3 Pa) at 25 °C, and its slope, 2600 K: Sander, Atmos. Chem. Phys. 15 (2015), table 6. Gas shared with the
// headspace as an ideal gas, reckoned here by hand. Water with a little gelatin: within 6 % for how much less it dissolves in a drink.
const bar = (grams: number, mix_L: number, head_L: number, celsius: number): number => {
  const T = celsius + 273.15, henry = 2.4e-4 * Math.exp(2600 * (1 / T - 1 / 298.15));
  return grams / 44.0128 / (head_L / 1000 / (8.314462618 * T) + (henry * mix_L) / 1000) / 1e5;
};

describe('a prep under pressure', () => {
  it('says how full its siphon is, what is free above, and stands at the pressure of both gases at its temperature', () => {
    const { kind, pressure, temperature, siphon } = gasOf(cloud(2), 'cloud'), s = siphon!;
    expect(kind).toBe('N2O');
    expect(s.fill.value + s.headspace.value).toBeCloseTo(s.gross.value, 6);
    expect(s.chargers.value).toBe(2);
    expect(s.gas.value).toBeCloseTo(16, 6);                            // two of 8 g, the size that is sold
    for (const [p, t] of [[pressure, temperature], [s.charged, s.charged_at]] as const) {
      const hand = bar(s.gas.value, s.fill.value / 1000, s.headspace.value / 1000, t.value);
      expect(Math.abs(p.value / hand - 1)).toBeLessThan(0.06);
      expect(p.low).toBeLessThan(p.value);
      expect(p.high).toBeGreaterThan(p.value);
    }
    // a vessel as full as it may be holds gas in its mix alone, an empty one in its headspace alone
    expect(pressure.value).toBeLessThan((16 / 44.0128) * 0.08314462618 * (temperature.value + 273.15) / (s.headspace.value / 1000));
  });
  it('stands higher warm than cold, and with a charger more', () => {
    const one = gasOf(cloud(1), 'cloud'), two = gasOf(cloud(2), 'cloud');
    expect(two.pressure.value).toBeGreaterThan(one.pressure.value * 1.9);
    expect(two.siphon!.charged.value).toBeGreaterThan(two.pressure.value);
  });
  it('carbonated: the pressure and the temperature of the line, bar on the gauge', () => {
    const text = (pressure: string) => `Check\n\nBottle (carbonate):\n300 ml water\ncarbonate at ${pressure} at 2 °C\n\nBuild:\n60 ml bottle`;
    const { kind, pressure, temperature, siphon } = gasOf(text('2 bar'), 'bottle');
    expect(kind).toBe('CO2');
    expect(pressure.value).toBeCloseTo(2, 6);
    expect(temperature.value).toBeCloseTo(2, 6);
    expect(siphon).toBeUndefined();
  });
  it('is not said of a prep without gas', () => {
    expect(readText('Check\n\nSyrup (syrup):\n100 g water\n100 g sugar\n\nBuild:\n20 ml syrup', { tables }).reading.preps['syrup']!.gas).toBeUndefined();
  });
});
