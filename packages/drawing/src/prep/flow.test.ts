import { expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { flowOf } from './flow.ts';

/** What is bought or taken for the drink, as it is lettered. */
const poured = (...lines: string[]) => {
  const { reading, document } = readText(['Long', '', 'Syrup (syrup):', '100 g sugar', '100 ml water', '', 'Build:', ...lines].join('\n'), { tables, quick: true });
  const { build, glass } = flowOf(reading, document);
  return [...build.bought, ...glass.bought].map(({ text }) => text).concat([...build.takes, ...glass.takes].map(({ from }) => from));
};

it('what is listed and poured by a later line, whole or in part, is drawn once', () => {
  expect(poured('50 ml gin', '20 ml syrup', '120 ml tonic water', 'top with tonic water')).toEqual(['50 ml gin', '120 ml tonic water', 'syrup']);
  expect(poured('50 ml gin', '20 ml syrup', 'heat 10 ml of the syrup to 60 °C')).toEqual(['50 ml gin', 'syrup']);
});

it('what comes on top does not stand in the shaker, and what the shaker holds is found whatever its line ends with', () => {
  for (const lines of [['Shake 10 s.', 'Strain into a highball over ice.', 'Top with tonic water.'], ['shake 10 s and strain into a highball over ice', 'top with tonic water']]) {
    const { reading, document } = readText(['Long', '50 ml gin', '20 ml lime juice', '120 ml tonic water', ...lines].join('\n'), { tables, quick: true }), { build, glass } = flowOf(reading, document);
    expect(build.bought.map(({ text }) => text)).toEqual(['50 ml gin', '20 ml lime juice']);
    expect(glass.bought.map(({ text }) => text)).toEqual(['120 ml tonic water']);
    expect(build.stage!.figures['volume']!.value).toBeLessThan(reading.figures['volume']!.value - 100);
  }
});
