import { describe, expect, it } from 'vitest';
import { beerPressure, beerVolumes, bottlePressure, carbonationFactor, carbonDioxideFromSugar, carbonDioxideHeld, carbonDioxidePressure, gramsPerLitre, volumes, wineGrams, wineLitres } from './carbonation.ts';

describe('beer', () => {
  // Carbonation chart, Brewing Techniques 1994: volumes at gauge psi.
  it.each([[32, 5, 2.15], [36, 12, 2.67], [40, 10, 2.3], [41, 15, 2.7], [44, 20, 2.99], [46, 24, 3.23]])('%f °F and %f psi: %f volumes', (fahrenheit, psi, printed) => { expect(Math.abs(beerVolumes(fahrenheit, psi) - printed)).toBeLessThan(0.06); });
  it('2.5 volumes at 36 °F take 10.2 psi (printed beside the formula)', () => { expect(Math.abs(beerPressure(36, 2.5) - 10.2)).toBeLessThan(0.15); });
  it('pressure and volumes undo each other', () => { for (let v = 1.5; v < 4; v += 0.25) expect(beerVolumes(45, beerPressure(45, v))).toBeCloseTo(v, 9); });
});

describe('wine and spirit', () => {
  it('EU formula: 0.86 L/L of water at 1 atm and 20 °C; 6 bar over 12 % vol and 10 g/L sugar is 8.54 g/L', () => {
    expect(wineLitres(101325, 0, 0)).toBeCloseTo(0.86, 3); expect(wineGrams(600000, 12, 10)).toBeCloseTo(8.54, 1);
  });
  it('what is held agrees with the EU formula at 20 °C within 4 %', () => {
    for (const pct of [0, 5, 12, 15]) expect(Math.abs(carbonDioxideHeld(300, 20, pct, 20) / wineGrams(300000, pct, 20) - 1)).toBeLessThan(0.04);
  });
  it('falls to a flat minimum and rises to pure ethanol', () => {
    expect(carbonationFactor(12, 0)).toBeCloseTo(0.74 / 0.86, 9); expect(carbonationFactor(20, 0)).toBe(carbonationFactor(30, 0));
    expect(carbonationFactor(50, 0)).toBeGreaterThan(carbonationFactor(30, 0)); expect(carbonationFactor(100, 0)).toBeCloseTo(3.1929, 3);
  });
});

describe('bottle', () => {
  it('pressure undoes what is held', () => { expect(carbonDioxidePressure(carbonDioxideHeld(350, 4, 8, 60), 4, 8, 60)).toBeCloseTo(350, 6); });
  it('without headspace all is in the liquid, with it some is not', () => {
    expect(Math.abs(bottlePressure(4, 1, 0, 10) / carbonDioxidePressure(4, 10) - 1)).toBeLessThan(0.003);
    expect(bottlePressure(4, 1, 0.1, 10)).toBeLessThan(bottlePressure(4, 1, 0, 10));
  });
  it('soda of 4 volumes stands near 2.9 bar at 4 °C and 5 at 20', () => {
    expect(carbonDioxidePressure(gramsPerLitre(4), 4) / 100).toBeGreaterThan(2.5); expect(carbonDioxidePressure(gramsPerLitre(4), 20) / 100).toBeGreaterThan(4.3);
  });
  it('one volume is 1.977 g/L (CRC, 22.26 L/mol)', () => { expect(gramsPerLitre(1)).toBeCloseTo(1.977, 3); expect(volumes(1.977)).toBeCloseTo(1, 3); });
  it('4 g/L of sugar are a volume (stoichiometry)', () => { expect(volumes(carbonDioxideFromSugar(4.05))).toBeCloseTo(1, 2); });
});
