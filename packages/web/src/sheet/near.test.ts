import { parse } from '@washline/spec';
import { describe, expect, it } from 'vitest';
import { linesOfPart, partsOfLine } from './near.ts';

const SPEC = parse('Harbour\n\nTea rum (infusion):\n100 ml white rum\n5 g black tea\n\nCordial (cordial):\n50 ml tea rum\n30 g sugar\n\nBuild:\n60 ml tea rum\n30 ml lime juice\nshake 10 s\nstrain\ntop with 20 ml cordial\n');
const line = (text: string): number => SPEC.text.slice(0, SPEC.text.indexOf(text)).split('\n').length;

describe('a line and its part of the drawing', () => {
  it('a prep’s lines and heading are its vessel; what it takes from another prep is a fall', () => {
    expect(partsOfLine(SPEC, null, line('5 g black'))).toEqual([['prep:tea rum']]);
    expect(partsOfLine(SPEC, null, line('Cordial'))).toEqual([['prep:cordial']]);
    expect(partsOfLine(SPEC, null, line('50 ml tea'))).toEqual([['fall:tea rum>cordial', 'prep:tea rum']]);
  });
  it('a line of the build is the fall of its prep, the vessel it is mixed in, or the pour into the glass', () => {
    expect(partsOfLine(SPEC, null, line('60 ml tea'))[0]?.[0]).toBe('fall:tea rum>build');
    expect(partsOfLine(SPEC, null, line('30 ml lime'))).toEqual([['prep:build']]);
    expect(partsOfLine(SPEC, null, line('strain'))[0]?.[0]).toBe('fall:build>glass');
    expect(partsOfLine(SPEC, null, line('top with'))[0]).toContain('fall:cordial>glass');
    expect(partsOfLine(SPEC, null, 1)).toEqual([]);
  });
  it('and the other way round', () => {
    expect(linesOfPart(SPEC, null, 'prep:tea rum')).toEqual([3, 4, 5]);
    expect(linesOfPart(SPEC, null, 'fall:tea rum>build')).toEqual([line('60 ml tea')]);
    expect(linesOfPart(SPEC, null, 'fall:tea rum>cordial')).toEqual([line('50 ml tea')]);
    expect(linesOfPart(SPEC, null, 'fall:build>glass')).toEqual([line('strain')]);
    expect(linesOfPart(SPEC, null, 'fall:cordial>glass')).toEqual([line('top with')]);
    expect(linesOfPart(SPEC, null, 'prep:nothing')).toEqual([]);
  });
});
