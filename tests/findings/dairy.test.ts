import { describe } from 'vitest';
import { battery } from './battery.ts';

const profile = 'alcohol-test profile of Davies and White 1958 with the proton balance of milk';
const trade = 'common practice, no source';
const punch = (...lines: string[]) => ['A', 'Punch (clarify with milk):', ...lines, 'rest 2 h', 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n');

describe('milk and acid', () => {
  battery('wash-will-not-curdle', {
    remedies: [0, 1, 2, 4],
    raises: [
      { text: punch('250 ml whole milk', '300 ml aged rum 40 %', '250 ml black tea'), why: 'no acid: fresh milk bears 40-42 % vol, here are 15', source: profile },
      { text: punch('250 ml whole milk', '750 ml gin 40 %'), why: 'a wash of spirit alone at 30 % vol', source: profile },
      { text: punch('500 ml whole milk', '300 ml aged rum 40 %', '5 ml lemon juice'), why: 'a teaspoon of lemon for half a litre: milk takes 52 mmol/L to pH 4.6', source: profile },
      { text: punch('300 ml aged rum 40 %', '10 g citric acid', '200 ml water'), why: 'a milk wash without milk', source: 'by definition' },
      { text: punch('250 ml whole milk', '750 ml gin 40 %', 'hold 20 min at 60 °C'), why: 'what heat does in strong spirit is not known, so that it helps nothing', source: 'micelles of casein may dissolve above 30 °C and 25 % vol, 2001' },
    ],
    twins: [
      { text: punch('250 ml whole milk', '100 ml lemon juice', '300 ml aged rum 40 %', '250 ml black tea'), why: 'with 100 mL of lemon', source: profile },
      { text: punch('250 ml whole milk', '40 ml lemon juice', '750 ml gin 40 %'), why: 'a wash with lemon', source: profile },
      { text: punch('500 ml whole milk', '10 g citric acid', '300 ml aged rum 40 %'), why: '20 g of citric acid to a litre of milk; punches use 9 to 22', source: 'milk-punch recipes, common practice' },
      { text: punch('1000 ml whole milk', '4 g citric acid', 'hold 10 min at 88 °C'), why: 'hot, on less acid than the 6.2 g/L of the cold', source: 'ricotta recipes: 1.3 g a litre at 85 to 90 °C' },
      { text: 'A\n60 ml whole milk\n45 ml white rum 40 %', why: 'no wash, milk that is to stay milk', source: 'by definition' },
    ],
    edges: [
      { text: punch('250 ml whole milk', '5 ml lemon juice', '750 ml gin 40 %'), why: 'a teaspoon of lemon and 30 % vol: at the edge of where it breaks', source: profile },
    ],
  });
  battery('wash-order', {
    remedies: 'all',
    raises: [
      { text: punch('100 ml lemon juice', '300 ml aged rum 40 %', '250 ml whole milk'), why: 'milk last', source: trade },
      { text: punch('20 g citric acid', '500 ml black tea', '250 ml whole milk', '300 ml aged rum 40 %'), why: 'dry acid before the milk', source: trade },
      { text: punch('60 ml lime juice', '250 ml whole milk', '40 ml lemon juice', '300 ml aged rum 40 %'), why: 'more than half of the acid first', source: trade },
    ],
    twins: [
      { text: punch('250 ml whole milk', '100 ml lemon juice', '300 ml aged rum 40 %'), why: 'milk first', source: trade },
      { text: punch('300 ml aged rum 40 %', '250 ml whole milk', '100 ml lemon juice'), why: 'only spirit before the milk', source: trade },
      { text: punch('5 ml lemon juice', '300 ml aged rum 40 %', '250 ml whole milk', '100 ml lemon juice'), why: 'a twentieth of the acid before', source: trade },
    ],
    edges: [
      { text: punch('11 ml lemon juice', '300 ml aged rum 40 %', '250 ml whole milk', '100 ml lemon juice'), why: 'a tenth of the acid before', source: trade },
    ],
  });
  battery('curdles-in-glass', {
    remedies: 'all',
    raises: [
      { text: 'A\n60 ml whole milk\n45 ml white rum 40 %\n15 ml lemon juice', why: '15 mL of lemon; half of such milks break at 2.5', source: profile },
      { text: 'A\n30 ml heavy cream\n45 ml white rum 40 %\n10 ml lime juice', why: 'cream has less to buffer with: half break at 0.4 mL', source: profile },
      { text: 'A\nSour (mix):\n100 ml lemon juice\n100 ml simple syrup 1:1\nBuild:\n60 ml whole milk\n30 ml sour', why: 'the acid comes in a prep', source: profile },
    ],
    twins: [
      { text: 'A\n60 ml whole milk\n45 ml white rum 40 %', why: 'alcohol alone: 17 % vol, milk bears 40', source: profile },
      { text: 'A\n60 ml oat milk\n45 ml white rum 40 %\n15 ml lemon juice', why: 'no casein in oats', source: 'by definition' },
      { text: 'A\nPunch (clarify with milk):\n250 ml whole milk\n100 ml lemon juice\n300 ml aged rum 40 %\nrest 2 h\nstrain through cheesecloth\nBuild:\n60 ml punch\n10 ml lemon juice', why: 'what was washed with milk holds no curd any more', source: trade },
      { text: 'A\n60 ml whole milk\n45 ml white rum 40 %\n15 ml simple syrup 1:1', why: 'sugar is no acid', source: 'by definition' },
    ],
    edges: [
      { text: 'A\n60 ml whole milk\n45 ml white rum 40 %\n2 ml lemon juice', why: '2 mL of lemon: one milk in ten breaks at 1.6, half at 2.5', source: profile },
    ],
  });
});
