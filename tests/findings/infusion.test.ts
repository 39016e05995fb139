import { describe } from 'vitest';
import { battery } from './battery.ts';

const trade = 'common practice, no source';
const jar = (method: string, ...lines: string[]) => ['A', `Steeped (${method}):`, ...lines, 'strain through a fine sieve', 'Build:', '50 ml steeped'].join('\n');
const spirit = (...lines: string[]) => jar('infusion', '500 ml white rum 40 %', ...lines);
const tea = (...lines: string[]) => jar('infusion', '10 g black tea leaves', '1 l water at 95 °C', ...lines);
const bitter = (base: string, ...lines: string[]) => jar('bitters', base, '5 g gentian root', '10 g orange peel', ...lines, 'rest 7 days at 20 °C');

describe('infusions', () => {
  battery('infusion-short', {
    remedies: [0, 1, 2],
    raises: [
      { text: spirit('10 g clove', 'steep 10 min at 20 °C'), why: 'ten minutes for whole clove', source: trade },
      { text: spirit('20 g lemon peel', 'rest 30 min at 20 °C'), why: 'half an hour for peel in cold spirit', source: trade },
      { text: jar('bitters', '200 ml neutral spirit 60 %', '10 g gentian root', 'rest 2 h at 20 °C'), why: 'two hours for a root', source: trade },
      { text: jar('infusion', '10 g black tea leaves', '1 l water at 4 °C', 'chill 5 min at 4 °C', 'chill 5 min at 4 °C'), why: 'ten minutes for tea in ice water, in two steps', source: trade },
    ],
    twins: [
      { text: spirit('10 g clove', 'steep 3 days at 20 °C'), why: 'three days', source: trade },
      { text: jar('pressure infusion', '400 ml white rum 40 %', '20 g lemon peel', 'charge 2 N2O in a 500 ml siphon', 'rest 20 min', 'vent'), why: 'twenty minutes under gas', source: trade },
      { text: tea('steep 3 min'), why: 'a cup of tea', source: 'tea-arizona: 2-3 min give most of the polyphenols' },
      { text: jar('infusion', '500 ml water', '10 g cinchona bark', 'steep 30 min'), why: 'nobody is told to draw more out of a bark that harms', source: 'hazards of data/hazards.json: quinine' },
      { text: ['A', '60 ml white rum 40 %', '10 ml simple syrup 1:1', '6 mint leaves', 'muddle', 'stir 10 s over 150 g cubes', 'strain'].join('\n'), why: 'mint in a drink is no infusion', source: trade },
    ],
  });
  battery('infusion-bitter', {
    remedies: [0, 1],
    raises: [
      { text: tea('hold 20 min at 95 °C'), why: 'twenty minutes near the boil', source: trade },
      { text: jar('infusion', '20 g black tea leaves', '700 ml gin 40 %', 'steep 24 h at 20 °C'), why: 'a day in gin', source: trade },
      { text: tea('boil 10 min', 'steep 10 min'), why: 'boiled and left', source: trade },
    ],
    twins: [
      { text: tea('hold 4 min at 95 °C'), why: 'four minutes', source: trade },
      { text: jar('infusion', '20 g black tea leaves', '700 ml gin 40 %', 'steep 2 h at 20 °C'), why: 'two hours in gin', source: trade },
      { text: jar('infusion', '10 g black tea leaves', '1 l water at 4 °C', 'chill 10 h at 4 °C'), why: 'a night in the fridge', source: trade },
      { text: spirit('20 g mint', 'steep 24 h at 20 °C'), why: 'mint is no tea', source: trade },
    ],
  });
  battery('bitters-weak', {
    remedies: 'none',
    raises: [
      { text: bitter('200 ml dry vermouth 18 %'), why: 'in wine', source: trade },
      { text: bitter('200 ml white rum 40 %', '100 ml water'), why: 'rum with water', source: trade },
      { text: bitter('200 ml vodka 30 %'), why: 'a weak spirit', source: trade },
    ],
    twins: [
      { text: bitter('200 ml neutral spirit 60 %'), why: 'strong spirit', source: trade },
      { text: bitter('200 ml vodka 40 %'), why: 'a spirit of 40 % vol', source: trade },
      { text: jar('infusion', '200 ml dry vermouth 18 %', '5 g gentian root', '10 g orange peel', 'rest 7 days at 4 °C'), why: 'an infusion of wine, kept cold', source: trade },
    ],
    edges: [{ text: bitter('200 ml vodka 35.2 %'), why: 'as strong as its label is sure', source: 'Regulation (EU) 1169/2011 Annex XII: 0.3 % vol' }],
  });
});
