import { describe, expect, it } from 'vitest';
import { battery, read } from './battery.ts';

// NIST Handbook 44 appendix C: US cup 236.588, tablespoon 14.787, gill 118.294, pint 473.176 mL, fluid ounce 29.574 mL; avoirdupois ounce 28.3495 g.
// UK Weights and Measures Act 1985: gill 142.065, pint 568.261, fluid ounce 28.413 mL. Australian tablespoon 20 mL. UK order of 1988: spirits by 25 or 35 mL.
const hb44 = 'NIST Handbook 44 appendix C';
const uk = 'UK Weights and Measures Act 1985 against NIST Handbook 44';
const own = 'arithmetic';
const trade = 'common practice, no source';
const prep = (lines: string, taken = 'A\nMix (mix):\n') => `${taken}${lines}\nBuild:\n60 ml mix`;

describe('units, ratios and tools that a drink hangs on', () => {
  battery('unit-two-meanings', {
    remedies: 'all',
    raises: [
      { text: 'A\n1 gill white rum 40 %\n60 ml pineapple juice', why: 'a gill of 118 or 142 mL', source: uk },
      { text: 'A\n60 ml white rum 40 %\n2 tbsp simple syrup 1:1 by weight\n30 ml lime juice', why: 'a tablespoon of 15 or 20 mL', source: hb44 },
      { text: 'A\n1 measure gin 40 %\n100 ml tonic water', why: 'a measure of 25 or 35 mL', source: 'Weights and Measures (Intoxicating Liquor) Order 1988' },
      { text: 'A\n1 jigger gin 40 %\n100 ml tonic water', why: 'a jigger of 44 mL, in old books 59', source: trade },
      { text: 'A\n4 oz sugar\n120 g water', why: 'four ounces of sugar by weight are 113 g, by the cup 100', source: 'USDA SR28: 1 cup of sugar 200 g' },
    ],
    twins: [
      { text: 'A\nmeasures: uk\n1 gill white rum 40 %\n60 ml pineapple juice', why: 'the head says whose gill', source: uk },
      { text: 'A\n2 oz white rum 40 %\n1 oz lime juice\nshake 12 s over 150 g cubes', why: 'ounces 4 % apart drown in ice and hand', source: hb44 },
      { text: 'A\n60 ml white rum 40 %\n1 tsp simple syrup 1:1 by weight\n30 ml lime juice', why: 'a teaspoon of 4.93 or 5 mL is one', source: hb44 },
      { text: 'A\n60 ml white rum 40 %\n2 EL simple syrup 1:1 by weight\n30 ml lime juice', why: 'a German tablespoon is 15 mL', source: trade },
      { text: 'A\n1 gill (142 ml) white rum 40 %\n60 ml pineapple juice', why: 'written twice, in mL', source: own },
      { text: 'A\nmeasures: uk\n1 measure gin 40 %\n100 ml tonic water', why: 'British measures are 25 mL here', source: 'Weights and Measures (Intoxicating Liquor) Order 1988' },
      { text: 'A\n4 oz (113 g) sugar\n120 g water', why: 'the ounce is written in grams beside', source: hb44 },
    ],
    edges: [{ text: 'A\n1 cup white rum 40 %\n60 ml lime juice\n20 ml simple syrup 1:1 by weight', why: 'a cup of 237 or 250 mL, 6 % apart, beside what a jug differs', source: hb44 }],
  });
  battery('ratio-unclear', {
    remedies: 'all',
    raises: [
      { text: 'A\n100 g simple syrup 1:1', why: '50 or 45.8 g of sugar in 100 g', source: 'USDA SR28: 1 cup of sugar 200 g' },
      { text: 'A\n60 ml simple syrup 1:1\n60 g water', why: 'half of it syrup', source: 'USDA SR28: 1 cup of sugar 200 g' },
      { text: 'A\n2 : 1 : ¾ white rum, lime juice, simple syrup', why: 'parts of no size: 30 mL or 45', source: trade },
      { text: 'A\n⅔ dry gin, ⅓ French vermouth', why: 'fractions of a drink of no size', source: trade },
    ],
    twins: [
      { text: 'A\n100 g simple syrup 1:1 by weight', why: 'by weight is written', source: own },
      { text: 'A\n60 ml white rum 40 %\n30 ml lime juice\n20 ml simple syrup 1:1\nshake 12 s over 150 g cubes', why: 'a sour with its ice: the syrup is a small part of the doubt', source: trade },
      { text: 'A\none part: 30 ml\n2 : 1 : ¾ white rum, lime juice, simple syrup', why: 'the head says how large a part is', source: own },
      { text: 'A\n100 g simple syrup 1:1 by volume', why: 'by volume is written', source: own },
    ],
    edges: [{ text: 'A\n60 ml white rum 40 %\n20 ml simple syrup 1:1\n120 ml pineapple juice', why: 'a tenth of a long drink, whose juice brings sugar of its own', source: trade }],
  });
  battery('dose-below-scale', {
    remedies: [2],
    raises: [
      { text: prep('0.04 g xanthan\n200 ml water'), why: 'four steps of a scale of 0.01 g, give or take one', source: trade },
      { text: prep('40 mg agar\n200 ml water'), why: 'in milligrams', source: trade },
      { text: prep('0.03 g salt\n200 ml water'), why: 'a few grains of salt', source: trade },
      { text: `A\nscale reads: 1 g\n${prep('0.75 g agar in 75 ml water\n100 ml pineapple juice').slice(2)}`, why: 'a scale of 1 g does not weigh 0.75 g', source: trade },
    ],
    twins: [
      { text: prep('12 g citric acid\n200 ml water'), why: '12 g are off by a tenth on a scale of 1 g', source: trade },
      { text: prep('0.75 g agar in 75 ml water\n100 ml pineapple juice'), why: 'who develops a drink has a scale that reads 0.01 g', source: own },
      { text: prep('0.3 g cinnamon\n200 ml water'), why: 'a spice neither sets nor salts', source: trade },
      { text: prep('5 g sugar\n200 ml water'), why: 'sugar is not dosed so', source: trade },
      { text: prep('20 g citric acid solution 10 %\n200 ml water'), why: 'the same acid as a solution', source: own },
    ],
    edges: [
      { text: prep('0.05 g agar in 75 ml water\n100 ml pineapple juice'), why: 'five steps of a scale of 0.01 g, give or take one', source: trade },
      { text: prep('0.05 g citric acid\n200 ml water'), why: 'five steps of a scale of 0.01 g, give or take one', source: trade },
    ],
  });
  battery('jigger-too-coarse', {
    remedies: 'all',
    raises: [
      { text: 'A\n60 ml water\n2.3 ml citric acid solution 50 %', why: 'below the lowest line, and it makes the drink sour', source: trade },
      { text: 'A\n90 g pineapple juice\n1.5 ml citric acid solution 50 %', why: 'below the lowest line, beside a juice', source: trade },
      { text: 'A\n60 ml gin 40 %\n37 ml lime juice', why: 'between 35 and 40', source: trade },
      { text: 'A\n2 oz gin 40 %\n0.43 oz lime juice', why: 'between the eighths of an ounce', source: trade },
    ],
    twins: [
      { text: 'A\n60 ml gin 40 %\n35 ml lime juice', why: 'on a line', source: trade },
      { text: 'A\n60 ml gin 40 %\n2.3 ml absinthe 60 %\n30 ml lime juice\nshake 12 s over 150 g cubes', why: 'below the lines, and the figures do not show it', source: trade },
      { text: 'A\n60 ml gin 40 %\n38.3 g lime juice', why: 'weighed', source: own },
      { text: 'A\n2 oz gin 40 %\n¾ oz lime juice', why: 'quarters are lines', source: trade },
    ],
    edges: [{ text: 'A\n60 ml gin 40 %\n37 ml lime juice\n15 ml water', why: 'in a larger drink the line between moves it less', source: trade }],
  });
});

describe('an amount that is vague', () => {
  const codes = (text: string) => read(text).reading.findings.map((f) => f.code);
  it('is told where salt to taste moves a small drink, not in a jug', () => {
    expect(codes('A\n60 ml water\n15 ml lime juice\nnutmeg to taste')).toContain('measure-vague');
    expect(codes('A\n2000 ml water\n2000 ml pineapple juice\nsalt to taste')).not.toContain('measure-vague');
  });
  it('is told where the other custom of writing numbers reads a thousandfold', () => {
    expect(codes('A\n1,000 ml water')).toContain('measure-vague');
    expect(codes('A\n1000 ml water')).not.toContain('measure-vague');
  });
  it('of an unknown system of measures is a problem at its line', () => {
    const { problems } = read('A\nmeasures: leagues\n1 oz gin');
    expect(problems.map((p) => [p.code, p.where.line, p.where.column])).toEqual([['key-unclear', 2, 11]]);
  });
});
