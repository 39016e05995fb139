import { describe } from 'vitest';
import { battery } from './battery.ts';

const own = 'the words of a spec, by definition';
const RING = 'Ring\nOne (mix):\n60 ml two\n10 ml white rum 40 %\nTwo (mix):\n60 ml one\n10 ml gin 40 %\nBuild:\n';
const SYRUP = 'Sweet\nPlain syrup (syrup):\n100 g sugar\n100 g water\nstir until dissolved\nBuild:\n60 ml white rum 40 %\n';

describe('what is named and what there is', () => {
  battery('ingredient-unknown', {
    remedies: [0, 1, 2],
    raises: [
      { text: 'A\n60 ml wite rum\n30 ml lime juice', why: 'a slip of the pen', source: own },
      { text: 'A\n60 ml white rum 40 %\n30 ml pinapple juce', why: 'two slips', source: own },
      { text: 'A\n60 ml white rum 40 %\n30 ml zorbleberry juice', why: 'a fruit nobody sells', source: own },
    ],
    twins: [
      { text: 'A\n60 ml white rum\n30 ml lime juice', why: 'the same, spelled', source: own },
      { text: 'A\n60 ml snake spirit 45 %\n30 ml pineapple juice', why: 'unknown by name, but its strength is written', source: own },
      { text: 'A\n60 ml zorble\n30 ml pineapple juice\nShelf:\nzorble: 30 %', why: 'the shelf knows the bottle', source: own },
    ],
  });
  battery('strength-unknown', {
    remedies: 'all',
    raises: [
      { text: 'A\n60 ml house blend\nShelf:\nhouse blend: 24.00 per 700 ml', why: 'a bottle of the shelf with its price alone', source: own },
      { text: 'A\n60 ml white rum 40 %\n10 ml old cask\nShelf:\nold cask: 30.00 per 500 ml', why: 'as a second measure', source: own },
      { text: 'A\nMix (mix):\n100 ml barrel end\n100 ml water\nBuild:\n60 ml mix\nShelf:\nbarrel end: 18.00 per 700 ml', why: 'inside a prep', source: own },
    ],
    twins: [
      { text: 'A\n60 ml house blend\nShelf:\nhouse blend: 42 %, 24.00 per 700 ml', why: 'the shelf has its strength', source: own },
      { text: 'A\n60 ml house blend 42 %\nShelf:\nhouse blend: 24.00 per 700 ml', why: 'the line has its strength', source: own },
      { text: 'A\n60 ml white rum\nShelf:\nwhite rum: 24.00 per 700 ml', why: 'the larder knows what is usual', source: own },
    ],
  });
  battery('prep-missing', {
    remedies: 'none',
    raises: [
      { text: `${RING}60 ml one`, why: 'two preps need each other, so neither is there', source: own },
      { text: `${RING}30 ml two\n30 ml lime juice`, why: 'the other of the ring', source: own },
      { text: `${RING}20 ml one\n20 ml two`, why: 'both are asked for', source: own },
    ],
    twins: [
      { text: RING.replace('60 ml one\n', '60 ml water\n') + '60 ml one', why: 'the ring is broken', source: own },
      { text: 'A\nPlain (mix):\n100 ml water\n10 ml white rum\nBuild:\n30 ml plain', why: 'the prep is there', source: own },
      { text: 'A\nSyrup (syrup):\n100 g sugar\n100 ml water\nBuild:\n60 ml white rum 40 %\n20 ml the syrup', why: 'meant by its last words', source: own },
    ],
  });
  battery('prep-unused', {
    remedies: 'none',
    raises: [
      { text: SYRUP, why: 'a syrup is made and the build forgets it', source: own },
      { text: `${SYRUP}20 ml simple syrup 1:1`, why: 'the larder is poured instead of the prep', source: own },
      { text: 'A\nSour (mix):\n100 ml lime juice\nFizz (mix):\n100 ml sour\n10 ml gin 40 %\nBuild:\n50 ml gin 40 %\n20 ml sour', why: 'of two preps one goes nowhere', source: own },
    ],
    twins: [
      { text: `${SYRUP}20 ml plain syrup`, why: 'the build takes from it', source: own },
      { text: 'A\nSour (mix):\n100 ml lime juice\nFizz (mix):\n100 ml sour\n10 ml gin 40 %\nBuild:\n60 ml fizz', why: 'another prep takes from it', source: own },
      { text: `${SYRUP}all of the plain syrup`, why: 'all of it is taken', source: own },
    ],
  });
  battery('prep-short', {
    remedies: 'all',
    raises: [
      { text: `${SYRUP}200 ml plain syrup`, why: '200 g of syrup of 1.23 kg/L are 163 mL', source: 'ICUMSA SPS-4: 50 °Bx weighs 1.2296 kg/L' },
      { text: 'A\nSour (mix):\n100 ml lime juice\nBuild:\n60 ml gin 40 %\n120 ml sour', why: '100 mL do not give 120', source: own },
      { text: 'A\nSour (mix):\n100 ml lime juice\nFizz (mix):\n80 ml sour\n10 ml gin 40 %\nBuild:\n20 ml fizz\n60 ml sour', why: 'two lines together take too much', source: own },
    ],
    twins: [
      { text: `${SYRUP}120 ml plain syrup`, why: '120 of 163 mL', source: 'ICUMSA SPS-4: 50 °Bx weighs 1.2296 kg/L' },
      { text: 'A\nSour (mix):\n100 ml lime juice\nBuild:\n60 ml gin 40 %\n60 ml sour', why: '60 of 100 mL', source: own },
      { text: 'A\nSour (mix):\n100 ml lime juice\nBuild:\n60 ml gin 40 %\nall of the sour', why: 'all of it is what there is', source: own },
    ],
    edges: [
      { text: `${SYRUP}160 ml plain syrup`, why: '160 of 163 mL are within what a jigger differs', source: 'common practice, no source' },
      { text: 'A\nSour (mix):\n100 ml lime juice\nBuild:\n60 ml gin 40 %\n98 ml sour', why: '98 of 100 mL', source: 'common practice, no source' },
    ],
  });
  battery('measure-vague', {
    remedies: 'none',
    raises: [
      { text: 'A\nsome white rum\n20 ml lime juice', why: 'some is no amount', source: own },
      { text: 'A\nwhite rum\n20 ml lime juice', why: 'no amount at all', source: own },
      { text: 'A\n60 ml white rum\nlime juice to taste', why: 'to taste', source: own },
    ],
    twins: [
      { text: 'A\n60 ml white rum\n20 ml lime juice', why: 'measured', source: own },
      { text: 'A\n60 ml white rum\ntop with soda water', why: 'a fill goes by the usual measure', source: 'common practice, no source' },
      { text: 'A\n60 ml white rum\n2 dashes aromatic bitters', why: 'a dash is vague and still a measure', source: 'common practice, no source' },
    ],
  });
});
