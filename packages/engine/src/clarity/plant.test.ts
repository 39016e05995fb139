import { describe, expect, it } from 'vitest';
import { plantMixPH } from './plant.ts';

describe('the pH of a plant drink with acid', () => {
  const acids = (mol: number) => Float64Array.from({ length: 12 }, (_, i) => (i === 0 ? mol : 0));
  const ph = (protein: number, calcium: number, citric: number, times = 1) => plantMixPH(protein, calcium, 6.8, times, { acids: acids(citric), strong: 0, water_L: 1, serum_L: 0, strength: 0 });
  it('is its own without any, falls with acid, and less so with protein and calcium', () => {
    expect(ph(33, 3, 0)).toBeCloseTo(6.8, 3);
    const falls = [0.002, 0.005, 0.01, 0.02, 0.05].map((mol) => ph(33, 3, mol));
    falls.forEach((value, i) => { if (i > 0) expect(value).toBeLessThan(falls[i - 1]!); });
    expect(ph(33, 30, 0.01)).toBeGreaterThan(ph(33, 3, 0.01) + 0.5);
    expect(ph(6, 3, 0.01)).toBeLessThan(ph(33, 3, 0.01));
  });
  // Silken tofu, practice of the trade: about 3 g/L of glucono-delta-lactone, 17 mmol/L of one proton each, set soy milk of 3 to 4 % of protein below pH 6.
  it('takes up what the dose of silken tofu says', () => {
    // a third as much citric acid has given up nearly its third proton there: 2.6 of 3
    const set = ph(35, 4, 0.0168 / 2.6);
    expect(set).toBeGreaterThan(5.3);
    expect(set).toBeLessThan(6.0);
  });
});
