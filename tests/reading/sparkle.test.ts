import { expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const read = (text: string, later = false) => readText(text, { tables, later: later ? 'alone' : null, quick: true }).reading;
const gas = (text: string) => read(text).figures['co2'];
const drink = (lines: string) => `A\nglass: highball\n${lines}`;

// knowledge-builders.org, how much carbonation is in a soda: typical soft drink 6 to 8 g/L.
it('tonic water alone, poured cold, keeps most of the 6 to 8 g/L of a soft drink', () => {
  const { value, low, high } = gas(drink('200 ml tonic water at 4 °C\nserve'))!;
  expect(value).toBeGreaterThan(6);
  expect(value).toBeLessThan(8);
  expect(low).toBeLessThan(value);
  expect(high).toBeGreaterThan(value);
});
// ACS Omega 6 (2021) 9672, table 1: 8 g/L of champagne in the flute.
it('sparkling wine in its glass has the 8 g/L that were measured there', () => {
  const { low, high } = gas('A\nglass: flute\n100 ml sparkling wine brut at 10 °C\nserve')!;
  expect(low).toBeLessThan(8);
  expect(high).toBeGreaterThan(8);
});
it('a still drink has no such figure', () => { expect(gas(drink('60 ml rum 40 %\n20 ml lime juice\nshake with ice\nstrain'))).toBeUndefined(); });
it('still liquid beside it spreads the gas over more', () => {
  expect(gas(drink('50 ml rum 40 %\nbuild over 150 g cubes\ntop with 100 ml soda water'))!.value).toBeLessThan(gas(drink('build over 150 g cubes\ntop with 150 ml soda water'))!.value * 0.75);
});
it('warm soda keeps less, stirred soda less, shaken soda no more than open water holds', () => {
  const cold = gas(drink('150 ml soda water at 4 °C\nserve'))!.value;
  expect(gas(drink('150 ml soda water at 20 °C\nserve'))!.value).toBeLessThan(cold);
  const over = (step: string) => gas(drink(`build over 150 g cubes at -5 °C\ntop with 100 ml soda water at 4 °C\n${step}`))!;
  expect(over('stir 5 s').value).toBeLessThan(over('serve').value * 0.97);
  expect(gas(drink('150 ml soda water at 4 °C\nshake with 100 g ice 12 s\nstrain'))!.value).toBeLessThan(3.5);
});
it('a carbonated prep brings its gas along', () => {
  const prep = read('A\nglass: highball\n\nFizz (carbonate):\n300 ml water\n100 ml rum 40 %\ncarbonate at 3 bar, 2 °C\n\nBuild:\n150 ml fizz');
  expect(prep.figures['co2']!.value).toBeLessThan(prep.preps['fizz']!.figures['co2']!.value);
  expect(prep.figures['co2']!.value).toBeGreaterThan(0.7 * prep.preps['fizz']!.figures['co2']!.value);
});
// Beaumont et al., Curr. Res. Nutr. Food Sci. 7 (2019), abstract: four glasses of sparkling wine lose 34 to 58 % in the ten minutes after pouring.
it('ten minutes in the glass take 34 to 58 %', () => {
  const reading = read('A\nglass: flute\n100 ml sparkling wine brut at 10 °C\nserve', true);
  const left = (minutes: number) => reading.later!.find((l) => l.minutes === minutes)!.figures['co2']!.value / reading.figures['co2']!.value;
  expect(left(10)).toBeGreaterThan(0.42);
  expect(left(10)).toBeLessThan(0.66);
  for (const [a, b] of [[2, 5], [5, 10], [10, 20], [20, 30]] as const) expect(left(b)).toBeLessThan(left(a));
});
