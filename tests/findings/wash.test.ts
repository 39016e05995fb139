import { describe } from 'vitest';
import { battery } from './battery.ts';

const trade = 'common practice, no source';
const survey = 'survey of fat washing: at least 6 h at -18 °C';
const punch = 'survey of milk punches: half an hour to a day';
const lime = 'agar clarification, 2009: an ordinary pectinase did not work in lime juice';
const wash = (fat: string, ...lines: string[]) => ['A', 'Washed (fat wash):', '300 ml white rum 40 %', fat, 'rest 4 h at 45 °C', ...lines, 'strain through cheesecloth', 'Build:', '60 ml washed'].join('\n');
const milk = (...lines: string[]) => ['A', 'Punch (milk wash):', '200 ml whole milk', '300 ml white rum 40 %', '100 ml lemon juice', ...lines, 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n');
const enzyme = (juice: string) => ['A', 'Clear (clarify with enzyme):', juice, '0.6 g pectinase', 'rest 1 h', 'strain through a paper filter', 'Build:', '20 ml clear'].join('\n');
const BUTTER = '60 g butter, melted at 60 °C', COCONUT = '40 g virgin coconut oil, melted at 40 °C';

describe('washes', () => {
  battery('fat-not-frozen', {
    remedies: 'all',
    raises: [
      { text: wash(BUTTER, 'freeze 1 h at -18 °C'), why: 'an hour', source: survey },
      { text: wash(COCONUT), why: 'strained warm', source: survey },
      { text: wash(BUTTER, 'chill 4 h at 4 °C'), why: 'four hours in the fridge', source: trade },
    ],
    twins: [
      { text: wash(BUTTER, 'freeze 12 h at -18 °C'), why: 'twelve hours', source: survey },
      { text: wash(COCONUT, 'freeze 24 h at -18 °C'), why: 'a day', source: survey },
      { text: wash(BUTTER, 'chill 24 h at 4 °C'), why: 'a day in the fridge', source: trade },
    ],
    edges: [{ text: wash(BUTTER, 'freeze 6.5 h at -18 °C'), why: 'six hours and a half by a kitchen clock', source: survey }],
  });
  battery('fat-without-aroma', {
    remedies: [0],
    raises: [
      { text: wash('40 g refined coconut oil, melted at 40 °C', 'freeze 12 h at -18 °C'), why: 'deodorised by refining', source: trade },
      { text: wash('40 g sunflower oil', 'freeze 12 h at -18 °C'), why: 'a neutral oil', source: trade },
      { text: wash('40 g grapeseed oil', 'freeze 12 h at -18 °C'), why: 'another', source: trade },
    ],
    twins: [
      { text: wash(COCONUT, 'freeze 12 h at -18 °C'), why: 'virgin coconut oil', source: trade },
      { text: wash('60 g brown butter, melted at 60 °C', 'freeze 12 h at -18 °C'), why: 'brown butter', source: trade },
      { text: wash('40 g extra virgin olive oil', 'freeze 12 h at -18 °C'), why: 'olive oil', source: trade },
    ],
  });
  battery('wash-short-rest', {
    remedies: 'all',
    raises: [
      { text: milk('rest 5 min'), why: 'five minutes', source: punch },
      { text: milk('rest 15 min'), why: 'a quarter of an hour', source: punch },
      { text: milk(), why: 'strained at once', source: punch },
    ],
    twins: [
      { text: milk('rest 1 h'), why: 'an hour', source: punch },
      { text: milk('rest 12 h at 4 °C'), why: 'a night', source: punch },
      { text: milk('settle 2 h'), why: 'two hours', source: punch },
    ],
    edges: [{ text: milk('rest 32 min'), why: 'hardly half an hour', source: punch }],
  });
  battery('enzyme-too-acid', {
    remedies: 'none',
    raises: [
      { text: enzyme('300 ml lime juice'), why: 'lime', source: lime },
      { text: ['A', 'Clear (clarify with enzyme):', '200 ml lime juice', '5 g citric acid', '0.6 g pectinase', 'rest 1 h', 'strain through a paper filter', 'Build:', '20 ml clear'].join('\n'), why: 'lime made sourer', source: lime },
      { text: ['A', 'Clear (clarify with enzyme):', '300 ml lime juice', '50 ml water', '0.6 g pectinase', 'rest 1 h', 'strain through a paper filter', 'Build:', '20 ml clear'].join('\n'), why: 'water changes its pH little', source: lime },
    ],
    twins: [
      { text: enzyme('300 ml apple juice'), why: 'apple, pH 3.5', source: trade },
      { text: enzyme('300 ml orange juice'), why: 'orange, pH 3.7', source: trade },
      { text: enzyme('300 ml pineapple juice'), why: 'pineapple, pH 3.5', source: trade },
    ],
    edges: [{ text: ['A', 'Clear (clarify with enzyme):', '250 ml lemon juice', '120 ml orange juice', '0.6 g pectinase', 'rest 1 h', 'strain through a paper filter', 'Build:', '20 ml clear'].join('\n'), why: 'lemon softened with orange', source: 'pectinase in lemon juice, 2014: worked there' }],
  });
  battery('wash-stabilised', {
    remedies: 'none',
    raises: [
      { text: ['A', 'Punch (milk wash):', '100 ml UHT whipping cream', '300 ml white rum 40 %', '100 ml lemon juice', 'rest 1 h', 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n'), why: 'long-life cream', source: 'labels of UHT cream: carrageenan' },
      { text: ['A', 'Punch (milk wash):', '100 ml evaporated milk', '300 ml white rum 40 %', '100 ml lemon juice', 'rest 1 h', 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n'), why: 'evaporated milk', source: trade },
      { text: ['A', 'Punch (clarify with milk):', '100 ml UHT whipping cream', '100 ml whole milk', '300 ml black tea', '100 ml lemon juice', 'rest 1 h', 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n'), why: 'cream beside milk', source: 'labels of UHT cream: carrageenan' },
    ],
    twins: [
      { text: milk('rest 1 h'), why: 'fresh whole milk', source: trade },
      { text: ['A', 'Punch (milk wash):', '200 ml double cream', '300 ml white rum 40 %', '100 ml lemon juice', 'rest 1 h', 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n'), why: 'double cream, nothing added', source: trade },
      { text: ['A', '60 ml white rum 40 %', '30 ml UHT whipping cream', 'shake 10 s over 150 g cubes', 'strain'].join('\n'), why: 'no wash', source: trade },
    ],
  });
  battery('wash-buffered', {
    remedies: 'none',
    raises: ['soy drink', 'oat drink', 'almond drink', 'rice drink'].map((plant) => ({ text: ['A', 'Punch (milk wash):', `200 ml ${plant}`, '300 ml white rum 40 %', '100 ml lemon juice', 'rest 1 h', 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n'), why: plant, source: 'survey of plant drinks' })),
    twins: [
      { text: milk('rest 1 h'), why: 'milk', source: trade },
      { text: ['A', '60 ml white rum 40 %', '60 ml oat drink', 'shake 10 s over 150 g cubes', 'strain'].join('\n'), why: 'no wash', source: trade },
      { text: ['A', 'Tea (infusion):', '300 ml soy drink', '10 g black tea', 'infuse 10 min at 4 °C', 'strain through cheesecloth', 'Build:', '60 ml tea'].join('\n'), why: 'no wash either', source: trade },
    ],
  });
  const clearPineapple = (...build: string[]) => ['A', 'Clear pineapple (clarify with agar):', '0.8 g agar in 80 ml water', 'boil 2 min', '320 ml pineapple juice at 45 °C', 'chill 1 h at 4 °C', 'break the gel', 'strain through cheesecloth', 'Build:', ...build].join('\n');
  battery('clear-turns-cloudy', {
    remedies: 'none',
    raises: [
      { text: clearPineapple('60 ml clear pineapple', '40 ml white rum 40 %', '30 ml lime juice'), why: 'lime juice in it', source: trade },
      { text: clearPineapple('60 ml clear pineapple', '60 ml orange juice'), why: 'orange juice', source: trade },
      { text: clearPineapple('60 ml clear pineapple', '30 ml pastis 45 %'), why: 'anise oil below 35 % vol', source: trade },
      { text: clearPineapple('60 ml clear pineapple', '40 ml white rum 40 %', '30 ml coconut milk'), why: 'coconut milk', source: trade },
    ],
    twins: [
      { text: clearPineapple('60 ml clear pineapple', '40 ml white rum 40 %', '10 ml lime acid 6 %'), why: 'an acid solution', source: trade },
      { text: clearPineapple('60 ml clear pineapple', '40 ml white rum 40 %'), why: 'nothing cloudy', source: trade },
      { text: ['A', '60 ml white rum 40 %', '30 ml lime juice'].join('\n'), why: 'nothing was cleared', source: trade },
    ],
  });
});
