import { describe, expect, it } from 'vitest';
import { inputWords } from './words.ts';

const LINES = new Map([['build/4', 'stir 25 s over 200 g cubes']]);

describe('inputs in words', () => {
  it.each([
    ['pour/build/white rum#1', 'white rum as poured'], ['pour/pineapple cloud/coconut rum#1', 'coconut rum as poured, for pineapple cloud'], ['time/build/4', 'how long: stir 25 s over 200 g cubes'],
    ['ice/mass/build/4', 'mass of ice: stir 25 s over 200 g cubes'], ['ice/temperature/-5', 'temperature of the ice'], ['agitation/stir', 'how hard one stirs'], ['bottle/white rum/strength', 'strength of the bottle of white rum'],
    ['fruit/lime/citric', 'citric in lime'], ['place/freezer', 'temperature of the freezer'], ['cloth/cheesecloth hold', 'what the cheesecloth hold keeps'], ['larder/lime-juice/citric_g', 'citric in lime juice'],
  ])('%s', (key, said) => { expect(inputWords(key, LINES)).toBe(said); });
  it('says a key it does not know by its words', () => {
    expect(inputWords('something/new_here', LINES)).toBe('something, new here');
  });
});
