import { describe } from 'vitest';
import { battery } from './battery.ts';

const density = 'densities of ethanol-water (OIML R22) and of sugar solutions (CRC Handbook)';
const trade = 'common practice, no source';
const float = (top: string, ...base: string[]) => ['A', 'glass: rocks', ...base, `float ${top}`].join('\n');

describe('layers', () => {
  battery('layer-will-sink', {
    remedies: 'none',
    raises: [
      { text: float('15 ml simple syrup 1:1', '60 ml white rum 40 %'), why: 'syrup of 1230 kg/m³ over rum of 950', source: density },
      { text: float('15 ml pineapple juice', '60 ml gin 40 %'), why: 'juice over gin', source: density },
      { text: float('15 ml grenadine', '60 ml orange juice'), why: 'grenadine over juice', source: density },
    ],
    twins: [
      { text: float('15 ml overproof rum 63 %', '60 ml pineapple juice'), why: 'strong rum over juice', source: density },
      { text: float('15 ml white rum 40 %', '60 ml simple syrup 1:1'), why: 'rum over syrup', source: density },
      { text: ['A', 'glass: rocks', '60 ml orange juice', 'sink 15 ml grenadine'].join('\n'), why: 'meant to sink', source: trade },
    ],
    edges: [{ text: float('15 ml gin 40 %', '60 ml white rum 40 %'), why: 'the same strength on itself', source: density }],
  });
  battery('layer-weak', {
    remedies: 'none',
    raises: [
      { text: float('15 ml gin 43 %', '60 ml white rum 40 %'), why: '43 % on 40 %: 5 kg/m³', source: density },
      { text: float('15 ml white rum 40 %', '60 ml gin 38 %'), why: '40 % on 38 %', source: density },
      { text: float('15 ml gin 41 %', '60 ml white rum 40 %'), why: '41 % on 40 %', source: density },
    ],
    twins: [
      { text: float('15 ml overproof rum 63 %', '60 ml pineapple juice'), why: '150 kg/m³ apart', source: density },
      { text: float('15 ml white rum 40 %', '60 ml pineapple juice'), why: 'rum on juice', source: density },
      { text: float('15 ml white rum 40 %', '60 ml simple syrup 1:1'), why: 'rum on syrup', source: density },
    ],
  });
  battery('layer-invisible', {
    remedies: 'none',
    raises: [
      { text: float('15 ml white rum 40 %', '60 ml simple syrup 1:1'), why: 'clear on clear', source: trade },
      { text: float('15 ml gin 47 %', '60 ml white rum 40 %'), why: 'gin on white rum', source: trade },
      { text: float('15 ml gin 47 %', '60 ml water'), why: 'gin on water', source: trade },
    ],
    twins: [
      { text: float('15 ml white rum 40 %', '60 ml grenadine'), why: 'clear on red', source: trade },
      { text: float('15 ml aged rum 40 %', '60 ml coconut milk'), why: 'brown on white', source: trade },
      { text: float('15 ml red wine', '60 ml lemon juice', '30 ml simple syrup 1:1'), why: 'red on yellow', source: trade },
    ],
  });
  battery('syrup-crystallises', {
    remedies: 'all',
    raises: [
      { text: ['A', 'Rich (syrup):', '250 g sugar', '100 ml water', 'heat to 80 °C', 'cool to 20 °C', 'Build:', '20 ml rich'].join('\n'), why: '71 °Bx; water holds 66.7 at 20 °C', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Rich (syrup):', '220 g sugar', '100 ml water', 'heat to 80 °C', 'chill 12 h at 4 °C', 'Build:', '20 ml rich'].join('\n'), why: '69 °Bx in the fridge', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Rich (syrup):', '300 g sugar', '100 ml water', 'heat to 90 °C', 'cool to 20 °C', 'Build:', '20 ml rich'].join('\n'), why: '75 °Bx', source: 'solubility of sucrose, Mohos table A2.3' },
    ],
    twins: [
      { text: ['A', 'Simple (syrup):', '100 g sugar', '100 ml water', 'heat to 80 °C', 'chill 12 h at 4 °C', 'Build:', '20 ml simple'].join('\n'), why: '50 °Bx', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Half (syrup):', '150 g sugar', '100 ml water', 'heat to 80 °C', 'chill 12 h at 4 °C', 'Build:', '20 ml half'].join('\n'), why: '60 °Bx, water holds 64 at 0 °C', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Honeyed (syrup):', '200 g honey', '100 ml water', 'heat to 60 °C', 'Build:', '20 ml honeyed'].join('\n'), why: 'honey is hardly sucrose', source: trade },
    ],
    edges: [{ text: ['A', 'Rich (syrup):', '199 g sugar', '100 ml water', 'heat to 80 °C', 'cool to 20 °C', 'Build:', '20 ml rich'].join('\n'), why: '66.6 °Bx at 20 °C: at saturation', source: 'solubility of sucrose, Mohos table A2.3' }],
  });
  battery('will-not-dissolve', {
    remedies: 'all',
    raises: [
      { text: ['A', 'Rich (syrup):', '300 g sugar', '100 ml water', 'rest 1 h', 'Build:', '20 ml rich'].join('\n'), why: '75 °Bx in cold water; 66.7 at 20 °C', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Rich (syrup):', '250 g sugar', '100 ml cold water', 'chill 4 h at 4 °C', 'Build:', '20 ml rich'].join('\n'), why: '71 °Bx in the fridge', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Sweet rum (mix):', '150 g sugar', '100 ml white rum 40 %', 'rest 1 h', 'Build:', '20 ml sweet rum'].join('\n'), why: 'more sugar than the water of the rum holds', source: 'solubility of sucrose, Mohos table A2.3' },
    ],
    twins: [
      { text: ['A', 'Rich (syrup):', '250 g sugar', '100 ml water', 'heat to 80 °C', 'Build:', '20 ml rich'].join('\n'), why: 'at 80 °C water holds 78', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Simple (syrup):', '100 g sugar', '100 ml water', 'rest 1 h', 'Build:', '20 ml simple'].join('\n'), why: '50 °Bx', source: 'solubility of sucrose, Mohos table A2.3' },
      { text: ['A', 'Oleo (oleo saccharum):', '100 g sugar', '20 g lemon peel', 'rest 12 h', 'Build:', '10 ml oleo'].join('\n'), why: 'sugar that draws its own water', source: trade },
    ],
    edges: [{ text: ['A', 'Rich (syrup):', '199 g sugar', '100 ml water', 'rest 1 h', 'Build:', '20 ml rich'].join('\n'), why: '66.6 °Bx at 20 °C', source: 'solubility of sucrose, Mohos table A2.3' }],
  });
});
