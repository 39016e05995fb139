import { describe, expect, it } from 'vitest';
import { battery, read } from './battery.ts';

const trade = 'common practice, no source';
const maker = 'gelatin makers\' tables of setting';
const spin = 'agar clarification, 2009: meet above 39 °C';
const compared = 'hydrocolloid suppliers\' tables of setting';
const strength = 'trial of gelatin in spirit: sets to about 30 % vol when dissolved in water first';
const jelly = (...lines: string[]) => ['A', 'Jelly (gel):', ...lines, 'chill 6 h at 4 °C', 'Build:', '60 ml white rum 40 %', '20 g jelly'].join('\n');
const clear = (...lines: string[]) => ['A', 'Clear (clarify with agar):', ...lines, 'chill 1 h at 4 °C', 'break the gel', 'strain through cheesecloth', 'Build:', '60 ml white rum 40 %', '20 ml clear'].join('\n');
const sheets = (n: number) => `${n} gold gelatin sheets, soaked 10 min in cold water`;

describe('gels', () => {
  battery('gel-dose-low', {
    remedies: 'all',
    raises: [
      { text: jelly(sheets(0.5), '400 ml orange juice, at 60 °C'), why: '2.5 g/kg of gelatin; 7 to 25 are usual', source: trade },
      { text: jelly('0.3 g agar', '300 ml apple juice', 'boil 2 min'), why: '1 g/kg of agar; a soft gel takes 2', source: trade },
      { text: jelly('0.2 g low acyl gellan', '400 ml apple juice', 'heat to 95 °C'), why: 'half a gram of gellan to a kilogram', source: trade },
    ],
    twins: [
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C'), why: '20 g/kg', source: trade },
      { text: jelly('2 g agar', '300 ml apple juice', 'boil 2 min'), why: '7 g/kg of agar', source: trade },
      { text: clear('1 g agar in 100 ml water', 'boil 2 min', '350 ml lime juice at 45 °C'), why: '2 g/kg clear a juice', source: 'agar clarification, 2010: 2 g per kg' },
    ],
    edges: [{ text: jelly(sheets(1), '330 ml orange juice, at 60 °C'), why: 'a little under the least that is usual', source: trade }],
  });
  battery('gel-dose-high', {
    remedies: 'all',
    raises: [
      { text: jelly(sheets(12), '300 ml orange juice, at 60 °C'), why: '60 g/kg is a gummy', source: trade },
      { text: jelly('12 g agar', '300 ml apple juice', 'boil 2 min'), why: '40 g/kg of agar', source: trade },
      { text: jelly('6 g low acyl gellan', '300 ml apple juice', 'heat to 95 °C'), why: '20 g/kg of gellan', source: trade },
    ],
    twins: [
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C'), why: '20 g/kg', source: trade },
      { text: jelly('2 g agar', '300 ml apple juice', 'boil 2 min'), why: '7 g/kg of agar', source: trade },
      { text: jelly('1 g low acyl gellan', '300 ml apple juice', 'heat to 95 °C'), why: '3 g/kg of gellan', source: trade },
    ],
    edges: [{ text: jelly('5.72 g agar', '300 ml apple juice', 'boil 2 min'), why: 'a quarter above the greatest that is usual', source: trade }],
  });
  battery('gel-too-strong', {
    remedies: 'all',
    raises: [
      { text: jelly(sheets(5), '40 ml water at 70 °C', '300 ml gin 47 %'), why: '35 % vol', source: strength },
      { text: jelly('3 g agar', '60 ml water', 'boil 2 min', '240 ml gin 47 %'), why: '36 % vol with agar', source: compared },
      { text: jelly(sheets(5), '50 ml water at 70 °C', '250 ml overproof rum 63 %'), why: 'overproof rum', source: strength },
    ],
    twins: [
      { text: jelly(sheets(5), '200 ml orange juice, at 70 °C', '60 ml white rum 40 %'), why: '8 % vol', source: strength },
      { text: jelly('3 g agar', '250 ml apple juice', 'boil 2 min'), why: 'no alcohol', source: trade },
      { text: jelly(sheets(5), '180 ml orange juice, at 70 °C', '120 ml white rum 40 %'), why: '15 % vol', source: strength },
    ],
    edges: [{ text: jelly(sheets(5), '100 ml orange juice, at 70 °C', '220 ml white rum 40 %'), why: '22 % vol: above the suppliers\' 20, below what a trial set', source: strength }],
  });
  battery('gel-sets-early', {
    remedies: 'all',
    raises: [
      { text: clear('0.8 g agar in 80 ml water', 'boil 2 min', '320 ml lime juice at 4 °C'), why: 'cold juice on a fifth of hot agar', source: spin },
      { text: clear('0.8 g agar in 80 ml water', 'boil 2 min', '320 ml pineapple juice, strained, at 20 °C'), why: 'juice of a room', source: spin },
      { text: jelly('2 g kappa carrageenan', '60 ml water', 'heat to 85 °C', '250 ml apple juice at 20 °C'), why: 'carrageenan sets from 60 °C down', source: compared },
    ],
    twins: [
      { text: clear('0.8 g agar in 80 ml water', 'boil 2 min', '320 ml lime juice at 45 °C'), why: 'warm juice', source: spin },
      { text: jelly('2 g agar', '300 ml apple juice', 'boil 2 min'), why: 'boiled in the juice', source: spin },
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C', '60 ml white rum 40 %'), why: 'gelatin sets in hours, not at once', source: maker },
    ],
    edges: [{ text: clear('0.8 g agar in 80 ml water', 'boil 2 min', '320 ml pineapple juice, strained, at 26 °C'), why: 'about where it sets', source: spin }],
  });
  battery('gel-not-set', {
    remedies: 'all',
    raises: [
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C').replace('6 h', '30 min'), why: 'half an hour for gelatin', source: maker },
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C').replace('6 h', '1 h'), why: 'an hour', source: maker },
      { text: jelly('2 g agar', '300 ml apple juice', 'boil 2 min').replace('6 h', '5 min'), why: 'five minutes for agar', source: compared },
    ],
    twins: [
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C'), why: 'six hours', source: maker },
      { text: jelly('2 g agar', '300 ml apple juice', 'boil 2 min').replace('6 h at 4 °C', '1 h at 20 °C'), why: 'agar sets in a room', source: compared },
      { text: clear('0.8 g agar in 80 ml water', 'boil 2 min', '320 ml lime juice at 45 °C'), why: 'an hour for agar', source: compared },
    ],
    edges: [
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C').replace('6 h', '3 h'), why: 'three hours of four', source: maker },
    ],
  });
  battery('gel-too-acid', {
    remedies: 'none',
    raises: [
      { text: jelly('2 g kappa carrageenan', '250 ml orange juice', 'heat to 85 °C'), why: 'carrageenan below pH 4', source: 'hydrocolloid suppliers\' pH windows' },
      { text: jelly('1 g low acyl gellan', '250 ml lime juice', 'heat to 95 °C'), why: 'gellan in lime, pH 2.3; it is meant for 3.5', source: 'hydrocolloid suppliers\' pH windows' },
      { text: jelly('2 g iota carrageenan', '250 ml lemon juice', 'heat to 85 °C'), why: 'carrageenan in lemon', source: 'hydrocolloid suppliers\' pH windows' },
    ],
    twins: [
      { text: clear('0.8 g agar in 80 ml water', 'boil 2 min', '320 ml lime juice at 45 °C'), why: 'agar boiled in water, the lime comes after', source: spin },
      { text: jelly('2 g agar', '250 ml orange juice', 'boil 2 min'), why: 'agar bears pH 2.5', source: 'hydrocolloid suppliers\' pH windows' },
      { text: jelly('2 g kappa carrageenan', '250 ml coconut milk', 'heat to 85 °C'), why: 'coconut milk is hardly sour', source: 'hydrocolloid suppliers\' pH windows' },
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C'), why: 'gelatin with enough of it', source: trade },
    ],
  });
  battery('gel-grade-missing', {
    remedies: 'all',
    raises: [
      { text: jelly('3 gelatin sheets, soaked 10 min in cold water', '250 ml orange juice, at 60 °C'), why: 'sheets', source: 'gelatin sheets: bronze 125-155 Bloom, platinum 235-265' },
      { text: jelly('4 gelatin sheets, soaked 10 min in cold water', '300 ml apple juice, at 60 °C'), why: 'four of them', source: 'gelatin sheets by grade' },
      { text: jelly('2 gelatin sheets, soaked 10 min in cold water', '150 ml coconut milk, at 60 °C'), why: 'two', source: 'gelatin sheets by grade' },
    ],
    twins: [
      { text: jelly(sheets(3), '250 ml orange juice, at 60 °C'), why: 'gold', source: 'gelatin sheets by grade' },
      { text: jelly('3 silver gelatin sheets, soaked 10 min in cold water', '250 ml orange juice, at 60 °C'), why: 'silver', source: 'gelatin sheets by grade' },
      { text: jelly('6 g gelatin powder', '250 ml orange juice, at 60 °C'), why: 'powder', source: trade },
    ],
  });
  battery('alcohol-throws-out', {
    remedies: 'all',
    raises: [
      { text: ['A', 'Thick rum (mix):', '50 ml water', '300 ml overproof rum 75 %', '1 g xanthan', 'Build:', '60 ml thick rum'].join('\n'), why: 'xanthan at 64 % vol', source: 'hydrocolloid suppliers\' ethanol ceilings' },
      { text: ['A', 'Thick gin (mix):', '50 ml water', '300 ml gin 47 %', '1 g guar gum', 'Build:', '60 ml thick gin'].join('\n'), why: 'guar at 40 % vol', source: 'from memory, as its table says' },
      { text: ['A', 'Thick gin (infusion):', '30 ml water', '300 ml gin 47 %', '1 g konjac', 'Build:', '60 ml thick gin'].join('\n'), why: 'konjac at 43 % vol', source: 'hydrocolloid suppliers\' ethanol ceilings' },
    ],
    twins: [
      { text: ['A', 'Thick rum (mix):', '300 ml white rum 40 %', '1 g xanthan', 'Build:', '60 ml thick rum'].join('\n'), why: 'xanthan bears 40 % vol', source: 'hydrocolloid suppliers\' ethanol ceilings' },
      { text: ['A', 'Gomme (syrup):', '200 g sugar', '200 ml water', '20 g gum arabic', 'heat to 80 °C', 'Build:', '20 ml gomme'].join('\n'), why: 'no spirit', source: trade },
      { text: ['A', 'Thick juice (mix):', '300 ml orange juice', '1 g guar gum', 'Build:', '60 ml thick juice'].join('\n'), why: 'juice', source: trade },
    ],
    edges: [{ text: ['A', 'Thick gin (mix):', '150 ml water', '150 ml gin 47 %', '1 g guar gum', 'Build:', '60 ml thick gin'].join('\n'), why: '23 % vol: between the two numbers', source: 'from memory, as its table says' }],
  });
});

it('a gel whose cold is not written only warns (common practice, no source)', () => {
  const { reading } = read(jelly(sheets(3), '250 ml orange juice, at 60 °C').replace('chill 6 h at 4 °C\n', ''));
  expect(reading.findings.filter((f) => f.code === 'gel-not-set').map((f) => f.severity)).toEqual(['warn']);
});
