import { expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const ethanol = (text: string) => readText(text, { tables, quick: true }).reading.figures['ethanol']!.value;
const pan = (step: string) => `A\n\nPan (mix):\n200 ml white wine 12 %\n300 ml apple juice\n${step}\n\nBuild:\n100 ml pan`;
/** g of ethanol of the whole pan against the same pan only warmed. */
const kept = (step: string) => {
  const whole = (one: string) => { const { reading } = readText(pan(one), { tables, quick: true }); const p = reading.preps['pan']!.figures; return (p['strength']!.value * p['volume']!.value) / 100; };
  return whole(step) / whole('heat to 60 °C');
};

// USDA Table of Nutrient Retention Factors, Release 6, codes 5004 to 5009: ethanol kept of what was stirred in and simmered for so long, %.
it.each([[15, 40], [30, 35], [60, 25], [90, 20], [120, 10], [150, 5]])('simmered %i min keeps %i % of the ethanol', (minutes, percent) => {
  expect(Math.abs(100 * kept(`simmer ${minutes} min`) - percent)).toBeLessThan(0.5);
});
// The same table, code 5002: added to boiling liquid and taken off the heat, 85 %: a boil of a minute or two.
it('a short boil keeps what is kept of spirit stirred into something boiling', () => {
  expect(kept('boil 2 min')).toBeGreaterThan(0.85);
  expect(kept('boil 3 min')).toBeLessThan(0.85);
});
it('under a lid nothing goes', () => { expect(kept('simmer 30 min, covered')).toBeCloseTo(1, 6); });
it('a drink simmered at the glass loses as much as one simmered before', () => {
  const build = (step: string) => ethanol(`A\nglass: mug\n100 ml white wine 12 %\n${step}\nserve`);
  expect(build('simmer 30 min') / build('heat to 60 °C')).toBeCloseTo(0.35, 2);
});
// No source needed: the flame's heat goes up, and what burns takes its own along; found by a drawn drink that was colder than its freezing point.
it.each(['60 ml rum 60 % at 5 °C', '60 ml overproof rum 75 % at 20 °C', '100 ml white wine 12 % at 2 °C'])('%s: what is set alight is as warm as it was', (line) => {
  const celsius = (step: string) => readText(`A\nglass: mug\n${line}\n${step}\nserve`, { tables, quick: true }).reading.figures['temperature']!.value;
  expect(celsius('ignite')).toBeCloseTo(celsius('swirl'), 6);
});
// The same table, code 5003: flamed, 75 %.
it('what is set alight keeps three quarters', () => {
  const rum = (step: string) => ethanol(`A\nglass: mug\n60 ml rum 50 %\n${step}\nserve`);
  expect(rum('ignite') / rum('swirl')).toBeCloseTo(0.75, 3);
  expect(rum('flame an orange peel over the drink') / rum('swirl')).toBeCloseTo(1, 6);
});
