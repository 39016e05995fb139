import { describe } from 'vitest';
import { battery } from './battery.ts';

// Melting ranges (Belitz, Food Chemistry, fats; from memory of the table): coconut 20-28, butter 28-38, lard to 40, cocoa butter to 36 °C, olive oil below 0.
const melting = 'melting ranges of fats, Belitz';
const wash = (...lines: string[]) => ['A', 'Washed (fat wash):', '300 ml white rum 40 %', ...lines, 'freeze 12 h at -18 °C', 'strain through cheesecloth', 'Build:', '60 ml washed'].join('\n');

describe('does the fat wash', () => {
  battery('fat-set-hard', {
    remedies: 'all',
    raises: [
      { text: wash('40 g refined coconut oil, melted at 40 °C', 'shake 30 s', 'rest 4 h at 20 °C'), why: 'coconut oil at 20 °C is set, it melts at 28', source: melting },
      { text: wash('50 g butter, melted', 'rest 4 h'), why: 'butter in a room', source: melting },
      { text: wash('50 g lard, melted', 'infuse 4 h at 25 °C'), why: 'lard at 25 °C', source: melting },
      { text: wash('40 g virgin coconut oil, melted at 40 °C', 'shake 30 s'), why: 'straight from the shaker into the freezer', source: melting },
    ],
    twins: [
      { text: wash('40 g refined coconut oil, melted at 40 °C', 'shake 30 s', 'rest 4 h at 35 °C'), why: 'kept warm', source: melting },
      { text: wash('40 g olive oil', 'rest 4 h'), why: 'olive oil is liquid in a room', source: melting },
      { text: wash('50 g lard, melted', 'sous vide 2 h at 60 °C'), why: 'kept in a warm bath', source: melting },
    ],
    edges: [
      { text: wash('50 g cocoa butter, melted', 'rest 4 h at 36 °C'), why: 'at the end of its melting range', source: melting },
    ],
  });
});
