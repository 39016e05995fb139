import { describe } from 'vitest';
import { battery } from './battery.ts';

const trade = 'common practice, no source';
const infused = (...lines: string[]) => ['A', 'Infused (infusion):', '300 ml white rum 40 %', '10 g cinnamon', ...lines, 'strain through cheesecloth', 'Build:', '60 ml infused'].join('\n');

describe('fire', () => {
  battery('spirit-near-flame', {
    remedies: 'all',
    raises: [
      { text: infused('boil 5 min'), why: 'rum boiled', source: trade },
      { text: infused('heat to 70 °C'), why: 'rum on a hob', source: trade },
      { text: ['A', '45 ml overproof rum 63 %', '15 ml simple syrup 1:1', 'ignite it'].join('\n'), why: 'a burning glass', source: trade },
    ],
    twins: [
      { text: infused('sous vide 2 h at 60 °C'), why: 'a closed bag in a bath', source: trade },
      { text: infused('rest 24 h'), why: 'no fire', source: trade },
      { text: ['A', 'Syrup (syrup):', '200 g sugar', '200 ml water', '30 ml white rum 40 %', 'heat to 80 °C', 'Build:', '60 ml white rum 40 %', '20 ml syrup'].join('\n'), why: '3 % vol in a syrup', source: trade },
    ],
    edges: [{ text: ['A', 'Mull (infusion):', '150 ml white rum 40 %', '154 ml pineapple juice', 'heat to 70 °C', 'strain through cheesecloth', 'Build:', '60 ml mull'].join('\n'), why: 'about 20 % vol', source: trade }],
  });
});
