import { expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const foam = (litres: number, chargers: number) => readText(`A\n\nCloud (siphon foam):\n${litres * 1000} ml pineapple juice\n${litres * 10} g gelatin powder 200 bloom\nheat to 60 °C\ncharge with ${chargers} N2O in a 1 l siphon\nchill 4 h at 4 °C\n\nBuild:\n60 ml rum 40 %\n30 ml cloud`, { tables, quick: true }).reading.preps['cloud']!.figures['overrun']!;

// Ideal gas, 22.7 L/mol at 4 °C and 1 atm: 8.1 g of N2O (44.013 g/mol) can be 4.2 L of bubbles, in a litre no more than 420 % if all of it dissolved. 
it('a foam holds no more gas than was dissolved in it', () => {
  const most = (litres: number, chargers: number) => (100 * chargers * (8.1 / 44.013) * 22.74) / litres;
  for (const litres of [0.2, 0.5, 0.9]) for (const chargers of [1, 2]) expect(foam(litres, chargers).value).toBeLessThan(most(litres, chargers));
});
it('as it usually stands where there is gas enough, less where there is not', () => {
  expect(foam(0.5, 2).value).toBeCloseTo(foam(0.3, 2).value, 6);
  for (const litres of [0.5, 0.95]) expect(foam(litres, 1).value).toBeLessThan(foam(litres, 2).value);
});
