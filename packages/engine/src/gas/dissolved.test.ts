import { describe, expect, it } from 'vitest';
import { bunsen, bunsenInEthanol, carbonDioxide, gasVolume, henry, ostwald } from './dissolved.ts';

describe('CO2 in water', () => {
  // CRC Handbook 8-90: 1000 x mole fraction at 100 kPa; the correlation is within 0.7 % of it.
  it.each([[0, 100, 1.337], [5, 100, 1.123], [15, 100, 0.815], [20, 100, 0.704], [30, 100, 0.541], [5, 30, 0.338], [20, 50, 0.353]])('%f °C, %f kPa: %f', (celsius, kPa, printed) => {
    expect(Math.abs((1000 * carbonDioxide(celsius, kPa)) / printed - 1)).toBeLessThan(0.012);
  });
  // Murray and Riley 1971, 2 % below the correlation.
  it.each([[5, 1.4199], [10, 1.1926], [20, 0.8652]])('Bunsen coefficient at %f °C is %f', (celsius, printed) => { expect(Math.abs(bunsen('CO2', celsius) / printed - 1)).toBeLessThan(0.03); });
  it('Ostwald coefficient at 22 °C is 0.872 (Kunerth 1922, 3-5 % low)', () => { expect(Math.abs(ostwald('CO2', 22) - 0.872)).toBeLessThan(0.055); });
});

describe('other gases', () => {
  it.each([['N2O', 5, 1.05, 0.05], ['N2O', 15, 0.74, 0.02], ['N2O', 20, 0.63, 0.02], ['N2', 15, 0.0179, 0.0024]] as const)('%s at %f °C: Bunsen %f (Kaye and Laby)', (gas, celsius, printed, tol) => {
    expect(Math.abs(bunsen(gas, celsius) - printed)).toBeLessThan(tol);
  });
  it('N2O in ethanol at 15 °C: 3.27 volumes (Bunsen, Carius)', () => { expect(Math.abs(bunsenInEthanol('N2O', 15) - 3.2678)).toBeLessThan(0.26); });
  it('Henry constant of CO2 at 25 °C is 3.3e-4 to 3.4e-4 (Sander 2023, Sander et al. 2011), and agrees with the water table there', () => {
    expect(henry('CO2', 25)).toBeGreaterThanOrEqual(3.3e-4);
    expect(henry('CO2', 25)).toBeLessThanOrEqual(3.4e-4);
    // 100 kPa: mole fraction over molar mass of water, 997 kg/m3
    expect((henry('CO2', 25) * 1e5) / ((carbonDioxide(25, 100) * 997) / 0.0180153)).toBeCloseTo(1, 1);
  });
  it('Henry constant of N2O at 25 °C is 2.4e-4 (Sander 2023)', () => { expect(henry('N2O', 25)).toBeCloseTo(2.4e-4, 12); });
  it('8 g N2O are 4.37 L at 20 °C and 1 atm', () => { expect(gasVolume('N2O', 8, 20)).toBeCloseTo(4.37, 2); });
});
