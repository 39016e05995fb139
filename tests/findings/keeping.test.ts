import { describe } from 'vitest';
import { battery } from './battery.ts';

const code = 'model food code 2022: tables A and B, four hours out of the cold';
const line = 'model food code and Bad Bug Book: pH 4.6, water activity 0.93, 3 °C';
const trade = 'common practice, no source';
const prep = (method: string, ...lines: string[]) => ['A', `Batch (${method}):`, ...lines, 'Build:', '60 ml white rum 40 %', '20 ml batch'].join('\n');

describe('keeping', () => {
  battery('cold-chain', {
    remedies: 'all',
    raises: [
      { text: prep('infusion', '300 ml whole milk', '20 g cinnamon', 'infuse 12 h at 20 °C', 'strain through cheesecloth'), why: 'milk overnight in a room', source: code },
      { text: prep('mix', '200 ml heavy cream', '50 ml simple syrup 1:1', 'rest 8 h'), why: 'cream in a room', source: code },
      { text: prep('mix', '100 ml whole milk', '60 ml white rum 40 %', 'rest 24 h at 22 °C'), why: 'milk with a little rum: 15 % vol', source: code },
    ],
    twins: [
      { text: prep('infusion', '300 ml whole milk', '20 g cinnamon', 'infuse 12 h at 4 °C', 'strain through cheesecloth'), why: 'in the fridge', source: code },
      { text: prep('mix', '200 ml heavy cream', '50 ml simple syrup 1:1', 'rest 1 h'), why: 'an hour', source: code },
      { text: prep('infusion', '300 ml white rum 40 %', '20 g spearmint', 'infuse 24 h', 'strain through cheesecloth'), why: 'in spirit', source: trade },
      { text: prep('mix', '300 ml lime juice', 'rest 8 h'), why: 'lime, below pH 4.2', source: code },
    ],
    edges: [{ text: prep('mix', '200 ml heavy cream', '50 ml simple syrup 1:1', 'rest 3.9 h'), why: 'about four hours', source: code }],
  });
  battery('botulism-risk', {
    remedies: 'none',
    raises: [
      { text: prep('infusion', '200 g olive oil', '20 g garlic', 'infuse 7 days', 'strain through cheesecloth'), why: 'garlic in oil in a room', source: line },
      { text: prep('infusion', '200 g olive oil', '20 g rosemary', 'infuse 7 days at 4 °C', 'strain through cheesecloth'), why: 'herbs in oil in the fridge for a week', source: line },
      { text: prep('infusion', '200 g sunflower oil', '20 g red chilli', 'rest 3 days', 'strain through cheesecloth'), why: 'chilli in oil', source: line },
    ],
    twins: [
      { text: prep('infusion', '200 g olive oil', '20 g garlic', 'infuse 1 h', 'strain through cheesecloth'), why: 'made fresh', source: line },
      { text: prep('infusion', '300 ml white rum 40 %', '20 g rosemary', 'infuse 7 days', 'strain through cheesecloth'), why: 'in spirit', source: trade },
      { text: prep('infusion', '300 ml water', '20 g spearmint', 'infuse 2 h at 4 °C', 'strain through cheesecloth'), why: 'with air, in water, in the cold', source: line },
    ],
  });
  battery('keeps-short', {
    remedies: 'all',
    raises: [
      { text: prep('mix', '300 ml lime juice', 'store 5 days at 4 °C'), why: 'lime juice after five days', source: trade },
      { text: prep('syrup', '200 g sugar', '200 ml water', '50 g raspberries', 'heat to 80 °C', 'strain through cheesecloth', 'store 30 days at 4 °C'), why: 'a fruit syrup after a month', source: trade },
      { text: prep('siphon foam', '300 ml heavy cream', '30 ml simple syrup 1:1', 'charge 1 N2O in a 500 ml siphon', 'store 20 days at 4 °C'), why: 'cream in a siphon after three weeks', source: trade },
      { text: prep('syrup', '200 g sugar', '200 ml water', 'heat to 80 °C', 'store 60 days at 4 °C'), why: 'a plain syrup after two months', source: 'trial of syrups, 2009: 1:1 a month' },
      { text: prep('mix', '600 ml dry vermouth 18 %', '60 ml water', 'store 90 days at 4 °C'), why: 'vermouth after three months', source: trade },
      { text: prep('mix', '300 ml whole milk', '30 g sugar', 'store 12 days at 4 °C'), why: 'milk after twelve days', source: 'date marking: seven days' },
      { text: prep('cordial', '200 g sugar', '200 ml lime juice', '20 g lemon peel', 'rest 2 h', 'strain through cheesecloth', 'store 40 days at 4 °C'), why: 'a cordial of as much juice as sugar after six weeks', source: trade },
    ],
    twins: [
      { text: prep('mix', '300 ml lime juice', 'store 1 day at 4 °C'), why: 'a day', source: trade },
      { text: prep('syrup', '200 g sugar', '200 ml water', '50 g raspberries', 'heat to 80 °C', 'strain through cheesecloth', 'store 5 days at 4 °C'), why: 'five days', source: trade },
      { text: prep('infusion', '300 ml white rum 40 %', '20 g cinnamon', 'store 60 days', 'strain through cheesecloth'), why: 'spirit', source: trade },
      { text: prep('syrup', '400 g sugar', '200 ml water', 'heat to 90 °C', 'store 90 days at 4 °C'), why: 'a rich syrup after three months', source: 'trial of syrups, 2009: 2:1 half a year' },
      { text: prep('syrup', '300 g sugar', '300 ml water', '20 ml vodka 40 %', 'heat to 40 °C', 'store 60 days at 4 °C'), why: 'with a spoon of spirit', source: 'trial of syrups, 2009: three months' },
      { text: prep('mix', '600 ml dry vermouth 18 %', '60 ml water', 'store 21 days at 4 °C'), why: 'vermouth after three weeks', source: trade },
      { text: prep('clarify with milk', '200 ml whole milk', '300 ml white rum 40 %', '100 ml lemon juice', 'rest 2 h at 4 °C', 'strain through cheesecloth', 'store 60 days at 4 °C'), why: 'a milk punch keeps for months', source: trade },
      { text: prep('cordial', '400 g sugar', '200 ml lime juice', '20 g lemon peel', 'heat to 60 °C', 'strain through cheesecloth', 'store 40 days at 4 °C'), why: 'a cordial of two of sugar to one of juice keeps as rich syrups do', source: trade },
    ],
    edges: [{ text: prep('mix', '300 ml lime juice', 'store 48 h at 4 °C'), why: 'two days', source: trade }],
  });
});
