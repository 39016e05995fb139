import { describe, expect, it } from 'vitest';
import { parse } from '../document/parse.ts';
import { inShort, nearTo } from './asked.ts';
import { evidence, placeOfRow } from './evidence.ts';
import { matched } from './key-words.ts';
import { ENGLISH } from './messages.ts';
import { inputWords } from './why.ts';

const document = parse('Sour\n\n60 ml white rum 40 %\n25 ml lime juice\nshake 12 s over 150 g cubes\nstrain\n');
const words = (key: string, at: readonly (string | number)[] = []): string => {
  const action = document.sections.flatMap((s) => s.lines.flatMap((l) => l.actions.map((a) => ({ ...a, line: l.line })))).find((a) => a.path.join('/') === at.join('/'));
  return inputWords({ key, where: { path: at, ...(action ? { span: action.span, line: action.line } : {}) } }, document, ENGLISH);
};

describe('an input in words', () => {
  it.each([
    ['bottle/white rum/strength', ['build', 0], 'the strength of white rum'], ['pour/build/white rum#1', ['build', 0], 'the amount of white rum'], ['pour/build/white rum#2', ['build', 0], 'the amount of white rum, number 2'],
    ['pour/pineapple cloud/coconut rum#1', [], 'the amount of coconut rum in pineapple cloud'], ['larder/lime-juice/sugars', ['build', 1], 'the sugar of lime juice'], ['larder/lime-juice/sugars', [], 'the sugar of lime juice'],
    ['time/build/2', ['build', 2], 'how long: shake 12 s over 150 g cubes'], ['tool/jigger/bias', [], 'how true the jigger measures'], ['place/room/25', [], 'the temperature of the room'], ['measure/top with#build/soda#1', ['build', 1], 'the amount of lime juice'],
    ['start/build/soda water#1', [], 'how warm soda water goes in'], ['something/new_here', [], 'something/new_here'],
  ] as const)('%s', (key, at, said) => { expect(words(key, at)).toBe(said); });

  it('every sentence takes only what there is', () => {
    for (const [pattern, sentence] of Object.entries(ENGLISH.inputs!.words)) {
      const stars = pattern.split('*').length - 1;
      for (const [, gap] of sentence.matchAll(/\{(\w+)\}/g)) expect(gap === 'thing' || gap === 'line' || Number(gap) <= stars, `${pattern}: ${gap}`).toBe(true);
    }
  });

  it('no pattern stands behind one that takes all of its keys', () => {
    for (const table of [ENGLISH.inputs!.words, ENGLISH.inputs!.do]) {
      const patterns = Object.keys(table);
      for (const pattern of patterns) {
        if (pattern === '*') continue;
        const key = pattern.replaceAll('*', 'zz');
        expect(matched(table, key, pattern.includes('|'))?.sentence, pattern).toBe(table[pattern]);
      }
    }
  });
});

describe('names that nothing has', () => {
  const names = ['strength', 'sugar', 'stage 1/temperature', 'stage 2/temperature', 'coconut rum/strength', 'washline_mm', 'foam-too-strong', 'foam-too-strong@26'];
  it.each([['strenght', 'strength'], ['foam too', 'foam-too-strong'], ['coconut rum/strengt', 'coconut rum/strength'], ['suger', 'sugar'], ['temperature', 'stage 1/temperature']])('%s is near %s', (asked, near) => { expect(nearTo(asked, names)[0]).toBe(near); });
  it.each(['xyzzy', 'ratio-unclear'])('offers nothing for %s, which is near nothing', (asked) => { expect(nearTo(asked, names)).toEqual([]); });
  it('tells names with a stroke together', () => { expect(inShort(names)).toEqual(['strength', 'sugar', 'stage 1/*', 'stage 2/*', 'coconut rum/*', 'washline_mm', 'foam-too-strong']); });
});

describe('what stands behind a row', () => {
  const behind = evidence({ sources: 'key\ttitle\tauthor\tyear\twhere\nkell1975\tDensity\tG. S. Kell\t1975\teq. 1\nbare\tA title\t-\t\t\n', spreads: 'key\twhy\ntime/shake\tpeople count fast\n', assumptions: 'key\twhy\nplace/room\t\n' });
  it('cites a source with author, year, title and place', () => { expect(behind.cite('kell1975')).toBe('G. S. Kell, 1975: Density; eq. 1'); expect(behind.cite('bare')).toBe('A title'); expect(behind.cite('none')).toBeUndefined(); });
  it('says why a row is as wide as it is, where it says so', () => { expect(behind.because('spreads time/shake')).toBe('people count fast'); expect(behind.because('assumptions place/room')).toBeUndefined(); expect(behind.because('written')).toBeUndefined(); });
  it.each([['spreads time/shake', 'data/spreads.tsv', 'time/shake'], ['ingredients lime-juice ph_low..ph_high', 'data/larder/ingredients.tsv', 'lime-juice ph_low..ph_high'], ['physics/acids.json ethanol.share', 'data/physics/acids.json', 'ethanol.share']])('%s stands in %s', (row, file, name) => { expect(placeOfRow(row)).toEqual({ file, row: name }); });
  it('a number of the text stands in no file', () => { expect(placeOfRow('written')).toBeNull(); });
});
