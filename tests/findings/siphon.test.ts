import { describe, expect, it } from 'vitest';
import { battery, read } from './battery.ts';

const trade = 'common practice, no source';
const SHEETS = '4 gold gelatin sheets, soaked 10 min in cold water';
const foam = (size: number, chargers: number, ...lines: string[]) => ['A', 'Cloud (siphon foam):', ...lines, `charge ${chargers} N2O in a ${size} ml siphon`, 'chill 4 h at 4 °C', 'Build:', '60 ml white rum 40 %', '20 g cloud'].join('\n');
const cold = ['strain through a fine sieve', 'cool to 20 °C'];

describe('what a siphon takes', () => {
  battery('siphon-overfull', {
    remedies: [0, 1],
    raises: [
      { text: foam(500, 2, SHEETS, '600 ml orange juice, at 60 °C', ...cold), why: '620 mL in half a litre', source: trade },
      { text: foam(250, 1, SHEETS, '300 ml orange juice, at 60 °C', ...cold), why: '320 mL in a quarter', source: trade },
      { text: foam(1000, 3, SHEETS, '1100 ml orange juice, at 60 °C', ...cold), why: 'more than the largest takes: nothing to buy mends it', source: trade },
    ],
    twins: [
      { text: foam(500, 1, SHEETS, '400 ml orange juice, at 60 °C', ...cold), why: 'room above it', source: trade },
      { text: foam(1000, 2, SHEETS, '700 ml orange juice, at 60 °C', ...cold), why: 'in a litre', source: trade },
      { text: foam(250, 1, '200 ml heavy cream', '10 ml simple syrup 1:1'), why: 'cream in a quarter', source: trade },
    ],
    edges: [{ text: foam(500, 2, SHEETS, '442 ml orange juice, at 60 °C', ...cold), why: 'to the mark', source: trade }],
  });
  battery('siphon-undercharged', {
    remedies: [0, 1],
    raises: [
      { text: foam(1000, 1, SHEETS, '800 ml orange juice, at 60 °C', ...cold), why: 'one charger for most of a litre', source: trade },
      { text: foam(1000, 1, SHEETS, '620 ml orange juice, at 60 °C', ...cold), why: 'one for more than half a litre', source: trade },
      { text: foam(500, 1, SHEETS, '1200 ml orange juice, at 60 °C', ...cold), why: 'one for far too much: no number of chargers is right here', source: trade },
    ],
    twins: [
      { text: foam(1000, 2, SHEETS, '800 ml orange juice, at 60 °C', ...cold), why: 'two for a litre', source: trade },
      { text: foam(500, 1, SHEETS, '400 ml orange juice, at 60 °C', ...cold), why: 'one for half a litre', source: trade },
      { text: foam(250, 1, '200 ml heavy cream'), why: 'one for a quarter', source: trade },
    ],
    edges: [{ text: foam(500, 1, SHEETS, '440 ml orange juice, at 60 °C', ...cold), why: 'as much as one is for', source: trade }],
  });
  battery('siphon-charged-warm', {
    remedies: 'all',
    raises: [
      { text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', 'strain through a fine sieve'), why: 'straight from the pan; worked gas law: 8 g over half a litre stand 2 bar higher at 20 °C than at 5', source: 'Henry\'s constant, Sander 2023' },
      { text: foam(500, 2, SHEETS, '350 ml orange juice, at 60 °C', 'strain through a fine sieve', 'cool to 45 °C'), why: 'at 45 °C', source: trade },
      { text: foam(1000, 2, SHEETS, '700 ml coconut milk, at 60 °C', 'strain through a fine sieve'), why: 'warm coconut milk', source: trade },
    ],
    twins: [
      { text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold), why: 'cooled to a room', source: trade },
      { text: foam(500, 1, '350 ml heavy cream'), why: 'cream from the fridge', source: trade },
      { text: foam(500, 1, '60 ml pasteurised egg white', '240 ml lemon juice', 'strain through a fine sieve'), why: 'egg white and juice from the fridge', source: trade },
    ],
    edges: [{ text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', 'strain through a fine sieve', 'cool to 30 °C'), why: 'lukewarm: cooler than 25 °C is asked', source: trade }],
  });
  battery('siphon-blocks', {
    remedies: 'all',
    raises: [
      { text: foam(500, 1, SHEETS, '300 ml water at 70 °C', '20 g mint', 'cool to 20 °C'), why: 'mint leaves in the siphon', source: trade },
      { text: foam(500, 1, SHEETS, '300 ml water at 70 °C', '15 g fresh ginger', 'cool to 20 °C'), why: 'ginger in pieces', source: trade },
      { text: foam(500, 1, '300 ml heavy cream', '5 g cinnamon'), why: 'cinnamon bark in cream', source: trade },
    ],
    twins: [
      { text: foam(500, 1, SHEETS, '300 ml water at 70 °C', '20 g mint', ...cold), why: 'strained fine', source: trade },
      { text: foam(500, 1, SHEETS, '350 ml orange juice, strained, at 60 °C', 'cool to 20 °C'), why: 'a juice that was strained', source: trade },
      { text: foam(500, 1, '300 ml heavy cream', '20 ml simple syrup 1:1'), why: 'nothing coarse', source: trade },
    ],
  });
  battery('foam-short-rest', {
    remedies: 'all',
    raises: [
      { text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold).replace('4 h', '10 min'), why: 'ten minutes: gelatin and dairy ask 30 to 120', source: trade },
      { text: foam(500, 1, '300 ml heavy cream', '60 ml simple syrup 1:1').replace('4 h', '5 min'), why: 'cream, five minutes', source: trade },
      { text: foam(1000, 2, SHEETS, '700 ml orange juice, at 60 °C', ...cold).replace('4 h', '20 min'), why: 'a litre, twenty minutes', source: trade },
    ],
    twins: [
      { text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold), why: 'four hours', source: trade },
      { text: foam(500, 1, '300 ml heavy cream').replace('4 h', '2 h'), why: 'cream, two hours', source: trade },
      { text: foam(500, 1, '60 ml pasteurised egg white', '240 ml lemon juice', 'strain through a fine sieve').replace('4 h', '10 min'), why: 'egg white needs no setting', source: trade },
    ],
    edges: [
      { text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold).replace('4 h', '45 min'), why: 'between the least and the usual', source: trade },
    ],
  });
  battery('foam-drains', {
    remedies: 'all',
    raises: [
      { text: ['A', 'Air (foam):', '2 g soy lecithin', '300 ml lime juice', 'Build:', '60 ml gin 40 %', '10 g air'].join('\n'), why: 'lecithin makes an air that falls', source: trade },
      { text: ['A', 'Air (foam):', '1.5 g sucrose ester', '300 ml pineapple juice', 'heat to 50 °C', 'Build:', '60 ml gin 40 %', '10 g air'].join('\n'), why: 'sucrose ester alone', source: trade },
      { text: ['A', 'Air (foam):', '0.6 g quillaja extract', '300 ml water', 'Build:', '60 ml gin 40 %', '10 g air'].join('\n'), why: 'soap bark alone', source: trade },
    ],
    twins: [
      { text: ['A', 'Air (foam):', '2 g soy lecithin', '1 g xanthan', '300 ml lime juice', 'Build:', '60 ml gin 40 %', '10 g air'].join('\n'), why: 'with xanthan', source: trade },
      { text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold), why: 'gelatin keeps its foam', source: trade },
      { text: foam(500, 1, '300 ml heavy cream'), why: 'cream', source: trade },
    ],
  });
  battery('foam-amount-unclear', {
    remedies: 'all',
    raises: ['60 ml cloud', '1 oz cloud', '40 ml cloud'].map((line) => ({ text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold).replace('20 g cloud', line), why: line, source: trade })),
    twins: [
      { text: foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold), why: 'weighed', source: trade },
      { text: foam(500, 1, '300 ml heavy cream'), why: 'weighed as well', source: trade },
      { text: ['A', 'Syrup (syrup):', '100 g sugar', '100 ml water', 'Build:', '20 ml syrup'].join('\n'), why: 'no foam', source: trade },
    ],
  });
});

it('a foam of gelatin whose rest is not written only warns (common practice, no source)', () => {
  const { reading } = read(foam(500, 1, SHEETS, '350 ml orange juice, at 60 °C', ...cold).replace('chill 4 h at 4 °C\n', ''));
  expect(reading.findings.filter((f) => f.code === 'foam-short-rest').map((f) => f.severity)).toEqual(['warn']);
});
