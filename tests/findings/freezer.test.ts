import { describe } from 'vitest';
import { battery } from './battery.ts';

// Ice that stands in balance with spirit at -18 °C: 28 % ethanol by mass stay liquid (Melinder 2010, ethanol-water, freezing points).
const balance = 'freezing points of ethanol and water, Melinder 2010; what pours is common practice';
const room = 'densities of water and ice at 0 °C, CRC Handbook';
const trade = 'common practice, no source';
const batch = (...lines: string[]) => ['A', 'Batch (mix):', ...lines, 'Build:', '90 ml batch'].join('\n');

describe('the freezer', () => {
  battery('freezes-solid', {
    remedies: 'all',
    raises: [
      { text: batch('600 ml pineapple juice', 'freeze 24 h at -18 °C'), why: 'juice', source: balance },
      { text: batch('100 ml white rum 40 %', '500 ml pineapple juice', 'freeze 24 h at -18 °C'), why: '7 % vol', source: balance },
      { text: batch('600 ml strong black tea', '100 ml gin 40 %', 'freeze 24 h at -18 °C'), why: 'tea with a little gin', source: balance },
    ],
    twins: [
      { text: batch('600 ml gin 40 %', 'freeze 24 h at -18 °C'), why: 'spirit pours', source: balance },
      { text: batch('600 ml pineapple juice', 'chill 24 h at 4 °C'), why: 'in the fridge', source: balance },
      { text: batch('600 ml pineapple juice', 'freeze 10 min at -18 °C'), why: 'ten minutes only chill it', source: 'cooling of a lump in still air' },
      { text: ['A', 'Cubes (ice):', '600 ml water', 'freeze 24 h at -18 °C', 'Build:', '60 ml white rum 40 %', '60 g cubes'].join('\n'), why: 'ice is wanted', source: trade },
    ],
    edges: [{ text: batch('230 ml white rum 40 %', '480 ml pineapple juice', 'freeze 24 h at -18 °C'), why: '13 % vol: two thirds of its water', source: balance }],
  });
  battery('freezes-slush', {
    remedies: 'all',
    raises: [
      { text: batch('400 ml gin 40 %', '200 ml water', 'freeze 24 h at -18 °C'), why: '27 % vol', source: balance },
      { text: batch('300 ml white rum 40 %', '300 ml pineapple juice', 'freeze 24 h at -18 °C'), why: '20 % vol with sugar', source: balance },
      { text: batch('600 ml dry vermouth 18 %', 'store in the freezer'), why: 'vermouth', source: balance },
    ],
    twins: [
      { text: batch('600 ml gin 47 %', '40 ml water', 'freeze 24 h at -18 °C'), why: '44 % vol', source: balance },
      { text: batch('600 ml white rum 40 %', 'freeze 24 h at -18 °C'), why: '40 % vol', source: balance },
      { text: batch('600 ml dry vermouth 18 %', 'chill 24 h at 4 °C'), why: 'in the fridge', source: balance },
    ],
    edges: [{ text: batch('560 ml gin 40 %', '100 ml water', 'freeze 24 h at -18 °C'), why: '34 % vol pours here, and is slush in a colder freezer', source: balance }],
  });
  battery('bottle-may-burst', {
    remedies: 'all',
    raises: [
      { text: batch('690 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'a full bottle of juice: ice takes 9 % more room', source: room },
      { text: batch('490 ml water', 'freeze 24 h at -18 °C in a 500 ml bottle'), why: 'a full bottle of water', source: room },
      { text: batch('120 ml white rum 40 %', '580 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'a weak drink to the brim', source: room },
    ],
    twins: [
      { text: batch('690 ml gin 40 %', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'spirit makes no ice', source: room },
      { text: batch('400 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'room for it', source: room },
      { text: batch('690 ml pineapple juice', 'chill 24 h at 4 °C in a 700 ml bottle'), why: 'in the fridge', source: room },
      { text: batch('600 ml pineapple juice', 'freeze 24 h at -18 °C'), why: 'no bottle is named', source: room },
    ],
    edges: [{ text: batch('650 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle'), why: 'fifty millilitres of room', source: room }],
  });
});
