import { describe } from 'vitest';
import { battery } from './battery.ts';

const geometry = 'geometry; densities of ice and water, CRC Handbook';
const trade = 'common practice, no source';
const sour = (k: number, shake: string) => ['A', `${60 * k} ml white rum 40 %`, `${30 * k} ml lime juice`, `${20 * k} ml simple syrup 1:1`, shake, 'strain'].join('\n');
const rocks = (glass: string, ice: string) => ['A', `glass: ${glass}`, '60 ml white rum 40 %', '10 ml simple syrup 1:1', 'stir 20 s over 200 g cubes', `strain over ${ice}`].join('\n');

describe('vessels and ice', () => {
  battery('vessel-overfull', {
    remedies: 'none',
    raises: [
      { text: sour(6, 'shake 12 s over 500 g cubes'), why: '660 mL and half a litre of ice in a shaker of 800', source: geometry },
      { text: sour(2, 'shake 12 s over 500 g cubes in a 500 ml shaker'), why: 'a small shaker', source: geometry },
      { text: ['A', '300 ml gin 40 %', '100 ml sweet vermouth', 'stir 30 s over 600 g cubes', 'strain'].join('\n'), why: 'five martinis in one mixing glass', source: geometry },
    ],
    twins: [
      { text: sour(1, 'shake 12 s over 150 g cubes'), why: 'one drink', source: geometry },
      { text: sour(2, 'shake 12 s over 300 g cubes'), why: 'two', source: geometry },
      { text: ['A', '120 ml gin 40 %', '40 ml sweet vermouth', 'stir 30 s over 250 g cubes', 'strain'].join('\n'), why: 'two, stirred', source: geometry },
    ],
    edges: [{ text: sour(4, 'shake 12 s over 320 g cubes'), why: 'about to the rim of some shakers', source: geometry }],
  });
  battery('ice-does-not-fit', {
    remedies: [0, 1],
    raises: [
      { text: rocks('highball', '1 clear cube 50 mm'), why: '71 mm from corner to corner', source: geometry },
      { text: rocks('flute', '1 sphere 55 mm'), why: 'a sphere over a flute', source: geometry },
      { text: rocks('double rocks', '1 clear cube 80 mm'), why: 'a block no glass takes', source: geometry },
    ],
    twins: [
      { text: rocks('double rocks', '1 clear cube 50 mm'), why: 'a double rocks', source: geometry },
      { text: rocks('double rocks', '1 sphere 55 mm'), why: 'a sphere goes by its width', source: geometry },
      { text: rocks('highball', '150 g cubes'), why: 'small cubes', source: geometry },
    ],
    edges: [{ text: rocks('rocks', '1 clear cube 50 mm'), why: 'glasses of one name differ', source: geometry }],
  });
  battery('gas-lost', {
    remedies: 'all',
    raises: [
      { text: ['A', '50 ml gin 40 %', '100 ml tonic water', 'shake 10 s over 150 g cubes', 'strain'].join('\n'), why: 'tonic in the shaker', source: trade },
      { text: ['A', '40 ml white rum 40 %', '90 ml soda water', '20 ml lime juice', 'shake 10 s over 150 g cubes', 'strain'].join('\n'), why: 'soda shaken', source: trade },
      { text: ['A', '60 ml pineapple juice', '90 ml sparkling wine', 'blend 10 s over 150 g crushed', 'pour'].join('\n'), why: 'sparkling wine in a blender', source: trade },
    ],
    twins: [
      { text: ['A', 'glass: highball', '50 ml gin 40 %', 'build over 150 g cubes', 'top with 100 ml tonic water'].join('\n'), why: 'poured on top', source: trade },
      { text: ['A', '40 ml white rum 40 %', '20 ml lime juice', 'shake 10 s over 150 g cubes', 'strain', 'top with 90 ml soda water'].join('\n'), why: 'after the shake', source: trade },
      { text: ['A', '60 ml gin 40 %', '20 ml lime juice', 'shake 10 s over 150 g cubes', 'strain'].join('\n'), why: 'nothing sparkles', source: trade },
    ],
  });
  battery('gushes', {
    remedies: 'all',
    raises: [
      { text: ['A', 'Fizz (carbonate):', '500 ml pineapple juice', 'carbonate at 2.8 bar at 4 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'juice with its pulp', source: trade },
      { text: ['A', 'Fizz (carbonate):', '500 ml water', '40 g fresh ginger', 'carbonate at 2.8 bar at 4 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'ginger in the bottle', source: trade },
      { text: ['A', 'Fizz (carbonate):', '300 ml orange juice', '100 ml gin 40 %', 'carbonate at 3 bar at 4 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'orange juice', source: trade },
    ],
    twins: [
      { text: ['A', 'Fizz (carbonate):', '500 ml pineapple juice', 'strain through a paper filter', 'carbonate at 2.8 bar at 4 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'filtered', source: trade },
      { text: ['A', 'Fizz (carbonate):', '400 ml water', '100 ml gin 40 %', 'carbonate at 2.8 bar at 4 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'nothing in it', source: trade },
      { text: ['A', 'Fizz (mix):', '500 ml pineapple juice', 'Build:', '100 ml fizz'].join('\n'), why: 'no gas', source: trade },
    ],
  });
  battery('acid-in-metal', {
    remedies: 'all',
    raises: [
      { text: ['A', 'glass: copper mug', '50 ml gin 40 %', '15 ml lime juice', 'build over 150 g cubes', 'top with 100 ml ginger beer'].join('\n'), why: 'lime in copper', source: 'food code 4-101.14, from memory: copper not below pH 6' },
      { text: ['A', 'glass: copper mug', '50 ml white rum 40 %', '60 ml pineapple juice', 'build over 150 g cubes'].join('\n'), why: 'pineapple in copper', source: 'food code 4-101.14, from memory' },
      { text: ['A', 'glass: copper mug', '50 ml gin 40 %', '100 ml orange juice', 'build over 150 g cubes'].join('\n'), why: 'orange in copper', source: 'food code 4-101.14, from memory' },
    ],
    twins: [
      { text: ['A', 'glass: highball', '50 ml gin 40 %', '15 ml lime juice', 'build over 150 g cubes'].join('\n'), why: 'glass', source: trade },
      { text: ['A', 'glass: mug', '50 ml gin 40 %', '15 ml lime juice', 'build over 150 g cubes'].join('\n'), why: 'another mug', source: trade },
      { text: ['A', 'glass: copper mug', '200 ml whole milk', 'build'].join('\n'), why: 'milk, pH 6.7', source: 'pH of milk, handbook' },
    ],
  });
  battery('carbonation-low', {
    remedies: 'all',
    raises: [
      { text: ['A', 'Fizz (carbonate):', '500 ml water', 'carbonate at 0.5 bar at 15 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'half a bar in a cool room: about 3 g/L', source: 'CO2 in water, Carroll 1991' },
      { text: ['A', 'Fizz (carbonate):', '400 ml water', '100 ml gin 40 %', 'carbonate at 0.8 bar at 20 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'warm, with gin', source: 'CO2 in wine, EU formula' },
      { text: ['A', 'Fizz (carbonate):', '300 ml water', '200 ml simple syrup 1:1', 'carbonate at 1 bar at 20 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'warm and sweet', source: 'CO2 in wine, EU formula' },
    ],
    twins: [
      { text: ['A', 'Fizz (carbonate):', '500 ml water', 'carbonate at 2.8 bar at 4 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'about 10 g/L', source: 'CO2 in water, Carroll 1991' },
      { text: ['A', 'Fizz (carbonate):', '400 ml water', '100 ml gin 40 %', 'carbonate at 3 bar at 2 °C', 'Build:', '100 ml fizz'].join('\n'), why: 'cold', source: 'CO2 in wine, EU formula' },
      { text: ['A', 'Fizz (mix):', '500 ml water', 'Build:', '100 ml fizz'].join('\n'), why: 'nothing is carbonated', source: trade },
    ],
  });
  battery('glass-underfilled', {
    remedies: 'none',
    raises: [
      { text: 'A\nglass: highball\n50 ml white rum 40 %', why: 'a spirit in a highball of 330 mL', source: trade },
      { text: 'A\nglass: pint\n60 ml gin 40 %\n20 ml lime juice', why: '80 mL in a pint', source: trade },
      { text: 'A\nglass: hurricane\n60 ml white rum 40 %', why: '60 mL in a hurricane glass', source: trade },
    ],
    twins: [
      { text: 'A\nglass: highball\n50 ml gin 40 %\nbuild over 150 g cubes\ntop with 100 ml tonic water', why: 'full', source: trade },
      { text: 'A\nglass: snifter\n45 ml aged rum 40 %', why: 'a snifter is meant to be', source: trade },
      { text: 'A\n50 ml white rum 40 %', why: 'no glass is written', source: trade },
    ],
  });
});
