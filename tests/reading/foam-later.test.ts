import { expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const read = (agent: string) => readText(`A\nglass: coupe\n\nCloud (siphon foam):\n400 ml pineapple juice, held 5 min at 85 °C\n${agent}\ncharge with 2 N2O in a 1 l siphon\nchill 4 h at 4 °C\n\nBuild:\n60 ml rum 40 %\n30 ml apple juice\nstir 20 s over 150 g cubes\nstrain\ncrown with 40 ml cloud`, { tables, later: 'alone', quick: true }).reading;
const told = (agent: string) => read(agent).later!.map(({ minutes, figures }) => ({ minutes, stands: figures['foam_volume']!, mm: figures['foam_mm']!, drained: figures['drained']!.value }));

// Definition of a half-life; how long is common practice, no source.
it('its liquid drains by halves, none is lost', () => {
  const reading = read('6 g gelatin powder 200 bloom'), overrun = reading.preps['cloud']!.figures['overrun']!.value;
  const liquid = 40 / (1 + overrun / 100);
  const all = told('6 g gelatin powder 200 bloom');
  for (const { minutes, drained } of all) expect(Math.abs(drained / (liquid * (1 - 2 ** (-minutes / 60))) - 1)).toBeLessThan(0.02);
  for (let i = 1; i < all.length; i++) {
    expect(all[i]!.stands.value).toBeLessThan(all[i - 1]!.stands.value);
    expect(all[i]!.mm.value).toBeLessThan(all[i - 1]!.mm.value);
    expect(all[i]!.mm.value / all[i]!.stands.value).toBeCloseTo(all[0]!.mm.value / all[0]!.stands.value, 9);
  }
});
it('what only bubbles is gone sooner than what sets, and none of it is sure', () => {
  const set = told('6 g gelatin powder 200 bloom')[4]!, airy = told('3 g sucrose ester')[4]!;
  expect(airy.stands.value).toBeLessThan(0.6 * set.stands.value);
  expect(set.stands.high - set.stands.low).toBeGreaterThan(0.15 * set.stands.value);
});
it('a drink without foam says nothing of it', () => {
  const { reading } = readText('A\nglass: coupe\n60 ml rum 40 %\nserve', { tables, later: 'alone', quick: true });
  expect(reading.later![0]!.figures['foam_volume']).toBeUndefined();
});
