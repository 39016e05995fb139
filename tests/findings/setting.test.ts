import { describe } from 'vitest';
import { battery } from './battery.ts';

const trade = 'common practice, no source';
const compared = 'hydrocolloid suppliers\' tables of hydration';
const siphon = (...lines: string[]) => ['A', 'Cloud (siphon foam):', ...lines, 'charge 2 N2O in a 500 ml siphon', 'chill 4 h at 4 °C', 'Build:', '60 ml white rum 40 %', '20 g cloud'].join('\n');
const jelly = (...lines: string[]) => ['A', 'Jelly (gel):', ...lines, 'chill 4 h at 4 °C', 'Build:', '60 ml white rum 40 %', '20 g jelly'].join('\n');
const clear = (...lines: string[]) => ['A', 'Clear (clarify with agar):', ...lines, 'chill 1 h at 4 °C', 'break the gel', 'strain through cheesecloth', 'Build:', '60 ml white rum 40 %', '20 ml clear'].join('\n');
const SHEETS = '3 gold gelatin sheets, soaked 10 min in cold water';
const JUICE = '250 ml orange juice, at 70 °C';

describe('foams', () => {
  battery('foam-too-strong', {
    remedies: 'all',
    raises: [
      { text: siphon(SHEETS, '200 ml orange juice, at 70 °C', '250 ml white rum 40 %'), why: '100 mL of ethanol in about 470: 21 % vol, gelatin foams hold to 20', source: trade },
      { text: siphon(SHEETS, '100 ml orange juice, at 70 °C', '300 ml gin 45 %'), why: '32 % vol', source: trade },
      { text: siphon('5 g foaming methylcellulose', '150 ml lime juice', '250 ml gin 40 %'), why: '25 % vol with methylcellulose', source: trade },
    ],
    twins: [
      { text: siphon(SHEETS, '330 ml orange juice, at 70 °C', '120 ml white rum 40 %'), why: '10 % vol', source: trade },
      { text: siphon(SHEETS, '400 ml orange juice, at 70 °C'), why: 'no alcohol', source: trade },
      { text: siphon('5 g foaming methylcellulose', '300 ml lime juice', '100 ml gin 40 %'), why: '10 % vol with methylcellulose', source: trade },
    ],
    edges: [
      { text: siphon(SHEETS, '200 ml orange juice, at 70 °C', '200 ml white rum 40 %'), why: '19 % vol: doubtful from 15 on', source: trade },
      { text: siphon(SHEETS, '250 ml orange juice, at 70 °C', '180 ml white rum 40 %'), why: '16 % vol', source: trade },
    ],
  });
  battery('foam-no-whipper', {
    remedies: 'all',
    raises: [
      { text: siphon('2 g agar in 150 ml water', 'boil 2 min', '150 ml coconut water'), why: 'agar gels and does not whip', source: trade },
      { text: siphon('1 g xanthan', '300 ml lime juice'), why: 'xanthan holds a foam and makes none', source: trade },
      { text: siphon('300 ml pineapple juice'), why: 'juice alone', source: trade },
    ],
    twins: [
      { text: siphon('2 g agar in 150 ml water', 'boil 2 min', '150 ml coconut water', '3 g foaming methylcellulose'), why: 'with methylcellulose beside the agar', source: trade },
      { text: siphon(SHEETS, JUICE), why: 'gelatin whips as it sets', source: trade },
      { text: siphon('300 ml heavy cream', '30 ml simple syrup 1:1'), why: 'cream whips by its fat', source: trade },
      { text: siphon('60 ml pasteurised egg white', '240 ml lemon juice'), why: 'egg white, 200 g/kg', source: trade },
    ],
    edges: [
      { text: siphon('12 ml pasteurised egg white', '300 ml lemon juice'), why: '40 g of white to a kg, a quarter of the least that foams', source: trade },
    ],
  });
});

describe('gels', () => {
  battery('gel-digested', {
    remedies: [0, 1],
    raises: [
      { text: jelly(SHEETS, '250 ml fresh pineapple juice, at 60 °C'), why: 'bromelain of fresh pineapple', source: 'bromelain kinetics in juice, 2000' },
      { text: jelly(SHEETS, '60 g fresh ginger', '250 ml water at 70 °C'), why: 'zingibain of fresh ginger', source: 'ginger protease, 2005' },
      { text: jelly(SHEETS, '100 g fresh papaya', '150 ml water at 70 °C'), why: 'papain, which heat hardly stops', source: 'papain kinetics, 1979' },
    ],
    twins: [
      { text: jelly(SHEETS, '250 ml fresh pineapple juice, held 5 min at 85 °C'), why: 'held 5 min at 85 °C: many decades gone', source: 'bromelain kinetics in juice, 2000' },
      { text: jelly(SHEETS, '250 ml pineapple juice, canned, at 60 °C'), why: 'canned: nothing left', source: 'bromelain review, 2020' },
      { text: jelly(SHEETS, '250 ml fresh orange juice, at 60 °C'), why: 'oranges have no such enzyme', source: trade },
      { text: jelly('3 g agar', '250 ml fresh pineapple juice', 'boil 2 min'), why: 'agar is no protein', source: 'by definition' },
    ],
    edges: [
      { text: jelly(SHEETS, '250 ml pineapple juice, at 60 °C'), why: 'from a carton: heated once, 0 to 17 % left', source: 'bromelain review, 2020' },
      { text: jelly(SHEETS, '250 ml fresh pineapple juice, held 8 min at 65 °C'), why: 'two decades at 3.9 min each', source: 'bromelain kinetics in juice, 2000' },
    ],
  });
  battery('gel-not-hydrated', {
    remedies: 'all',
    raises: [
      { text: jelly(SHEETS, '250 ml orange juice, at 20 °C'), why: 'gelatin in cold juice; it needs 50 °C', source: compared },
      { text: clear('1 g agar in 100 ml water', '300 ml lime juice'), why: 'agar never boiled; it needs 90 °C', source: compared },
      { text: jelly('2 g low acyl gellan', '300 ml apple juice', 'heat to 70 °C'), why: 'gellan at 70 °C; it needs 85', source: compared },
    ],
    twins: [
      { text: jelly(SHEETS, '250 ml orange juice, at 65 °C'), why: 'gelatin in warm juice', source: compared },
      { text: clear('1 g agar in 100 ml water', 'boil 2 min', '300 ml lime juice'), why: 'agar boiled', source: compared },
      { text: jelly('2 g low acyl gellan', '300 ml apple juice', 'heat to 95 °C'), why: 'gellan at 95 °C', source: compared },
      { text: siphon('1 g xanthan', '3 g foaming methylcellulose', '300 ml lime juice'), why: 'these hydrate cold', source: compared },
    ],
    edges: [
      { text: clear('1 g agar in 100 ml water at 90 °C', '300 ml lime juice'), why: '90 °C, as good as the thermometer', source: compared },
      { text: jelly(SHEETS, '250 ml orange juice, at 51 °C'), why: '51 °C', source: compared },
    ],
  });
  battery('gel-not-soaked', {
    remedies: 'all',
    raises: [
      { text: jelly('3 gold gelatin sheets', JUICE), why: 'not soaked at all', source: trade },
      { text: siphon('3 gold gelatin sheets', JUICE), why: 'nor for a foam', source: trade },
      { text: jelly('3 silver gelatin sheets, soaked 1 min in cold water', JUICE), why: 'a minute; 5 to 10 are asked', source: trade },
    ],
    twins: [
      { text: jelly(SHEETS, JUICE), why: 'ten minutes', source: trade },
      { text: jelly('soak 3 gold gelatin sheets 10 min in cold water', JUICE), why: 'soaked as a step', source: trade },
      { text: jelly('6 g gelatin powder', JUICE), why: 'powder is no sheet', source: trade },
    ],
    edges: [
      { text: jelly('3 gold gelatin sheets, soaked 6 min in cold water', JUICE), why: 'six minutes by a clock that is not watched', source: trade },
    ],
  });
});
