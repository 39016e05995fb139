import { describe } from 'vitest';
import { battery } from './battery.ts';

// Brim volumes are the frusta of data/glasses.tsv (common practice, no source): coupe 201, shot 45, highball 331, collins 390 mL, each ± 15 % by its maker.
const shape = 'frusta of the glass table; common practice, no source';

describe('does the glass hold it', () => {
  battery('glass-overfull', {
    remedies: 'all',
    raises: [
      { text: 'A\nglass: coupe\n120 ml white rum 40 %\n100 ml lime juice', why: '220 mL in a coupe of 201', source: shape },
      { text: 'A\nglass: shot glass\n60 ml white rum 40 %', why: '60 mL in a shot glass of 45', source: shape },
      { text: 'A\nglass: highball\n200 g cubes\n60 ml gin 40 %\n150 ml soda water', why: 'ice counts: 210 mL and 200 g of it in 331', source: shape },
      { text: 'A\nglass: 100 ml\n120 ml white rum 40 %', why: 'a written size is taken at its word', source: 'arithmetic' },
    ],
    twins: [
      { text: 'A\nglass: coupe\n60 ml white rum 40 %\n40 ml lime juice', why: '100 mL in a coupe of 201', source: shape },
      { text: 'A\nglass: shot glass\n30 ml white rum 40 %', why: '30 mL in a shot glass of 45', source: shape },
      { text: 'A\nglass: pint glass\n200 g cubes\n60 ml gin 40 %\n150 ml soda water', why: 'the same in a pint glass', source: shape },
      { text: 'A\nglass: 150 ml\n120 ml white rum 40 %', why: 'the written size holds it', source: 'arithmetic' },
    ],
    edges: [
      { text: 'A\nglass: coupe\n100 ml white rum 40 %\n80 ml lime juice', why: '180 mL: a coupe a tenth smaller does not hold it', source: shape },
      { text: 'A\nglass: shot glass\n42 ml white rum 40 %', why: '42 of 45 mL', source: shape },
    ],
  });
});
