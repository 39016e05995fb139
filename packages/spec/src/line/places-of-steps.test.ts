import type { Step } from '@washline/engine';
import { describe, expect, it } from 'vitest';
import { parse } from '../document/parse.ts';

const step = (line: string): Partial<Step> => {
  const document = parse(`Cold\n\nBuild:\n60 ml rum\n${line}\n`), action = document.sections[0]!.lines.at(-1)!.actions[0]!;
  expect(document.problems, line).toEqual([]);
  return action.kind === 'step' ? { verb: action.verb, flags: action.flags, ...(action.into ? { into: action.into } : {}), ...(action.ice ? { ice: action.ice } : {}), ...(action.measure ? { measure: action.measure } : {}), ...(action.seconds ? { seconds: action.seconds } : {}), ...(action.times === undefined ? {} : { times: action.times }) } : { verb: action.kind };
};

describe('what is put where it is cold', () => {
  it.each([['set in the fridge 2 h', 'chill'], ['set 2 h in the fridge', 'chill'], ['put it in the fridge overnight', 'chill'], ['put the jar in the fridge 2 h', 'chill'], ['move to the fridge', 'chill'], ['transfer to the freezer for 4 h', 'freeze'], ['place in the freezer overnight', 'freeze'], ['ins Gefrierfach legen', 'freeze'], ['2 h in den Gefrierschrank stellen', 'freeze'], ['in den Kühlschrank legen', 'chill'], ['let it set 2 h', 'rest'], ['2 h gelieren lassen', 'rest']])('%s: %s', (line, verb) => { expect(step(line)).toMatchObject({ verb, flags: [] }); });

  it.each([['put a coupe in the freezer', 'frozen', 'coupe'], ['set 2 coupes in the freezer', 'frozen', 'coupe'], ['chill a rocks glass in the fridge', 'chilled', 'rocks'], ['chill the glass', 'chilled', undefined], ['freeze the glass 10 min', 'frozen', undefined], ['Glas vorkühlen', 'chilled', undefined], ['das Glas 10 min ins Gefrierfach stellen', 'frozen', undefined]])('%s is about the glass: %s', (line, flag, key) => {
    const read = step(line);
    expect(read.flags).toEqual([flag]);
    expect(read.into?.key).toBe(key);
  });

  it.each(['chill a glass of water', 'chill the glass bottle', 'chill the jar', 'chill in a jar', 'chill the siphon 2 h', 'chill'])('%s is about what is in it', (line) => { expect(step(line).flags).toEqual([]); });

  it.each([['strain into a chilled glass', 'chilled'], ['strain into the frozen glass', 'frozen'], ['in ein gekühltes Glas abseihen', 'chilled'], ['ins gekühlte Glas abseihen', 'chilled'], ['strain into a glass', undefined]])('%s: %s', (line, flag) => { expect(step(line).flags).toEqual(flag === undefined ? [] : [flag]); });

  it.each(['pour into two 300 ml bottles', 'pour into the bottle', 'strain into 2 coupes', 'strain into a 300 ml bottle'])('%s: where to, and no measure', (line) => { expect(step(line).verb).toMatch(/^(pour|strain)$/); });

  it('an amount that is put somewhere is a measure', () => {
    for (const line of ['put 50 g butter in the freezer', 'put 2 cubes in the glass', 'place 1 cherry in the glass']) expect(step(line).verb).not.toMatch(/chill|freeze/);
  });
});

describe('a glass that has ice in it', () => {
  it.each([['strain into an ice-filled rocks glass', 'cubes', 'rocks'], ['strain into ice filled highball glass', 'cubes', 'highball'], ['strain into a crushed-ice filled tiki mug', 'crushed', 'tiki'], ['pour over ice in a rocks glass', 'cubes', 'rocks'], ['pour over 1 large cube in a rocks glass', 'large cube', 'rocks'], ['pour into a highball full of crushed ice', 'crushed', 'highball'], ['strain into a glass full of ice', 'cubes', undefined], ['pour into a glass filled with ice cubes', 'cubes', undefined], ['in ein mit Eis gefülltes Glas gießen', 'cubes', undefined]])('%s: over %s', (line, kind, key) => {
    const read = step(line);
    expect([read.ice?.kind, read.into?.key, read.measure]).toEqual([kind, key, undefined]);
  });
  it('one without has none', () => { for (const line of ['pour into a coupe', 'strain into the glass', 'pour over the back of a spoon']) expect(step(line).ice).toBeUndefined(); });
});

describe('how long a stir is that says it in words', () => {
  it.each(['stir briefly', 'quick stir', 'brief shake', 'kurz rühren', 'kurz schütteln'])('%s: a few seconds', (line) => { expect(step(line).seconds).toMatchObject({ word: 'briefly', low: 2, high: 10 }); });
  it.each([['stir once', 1], ['stir twice', 2], ['stir 20 times', 20], ['einmal umrühren', 1]])('%s: %d turns', (line, times) => { expect(step(line).times).toBe(times); });
  it('a short glass is not a short stir', () => { expect(step('stir in a short glass over ice').seconds).toBeUndefined(); });
  it.each(['stir once more', 'noch einmal umrühren', 'shake quickly'])('%s: neither', (line) => { expect(step(line)).toEqual({ verb: line.includes('shake') ? 'shake' : 'stir', flags: [] }); });
});

describe('a glass that a step names', () => {
  it.each([['strain into two coupes', 'strain', 'coupe', undefined], ['add everything to a rocks glass', 'add', 'rocks', undefined], ['add to a highball glass with ice', 'add', 'highball', 'cubes'], ['add to shaker with ice', 'add', 'shaker', 'cubes'], ['build over ice in a highball glass', 'build', 'highball', 'cubes'], ['in ein Highballglas abseihen', 'strain', 'highball', undefined], ['auf Eis im Highballglas servieren', 'serve', 'highball', 'cubes'], ['in ein Glas voll Eis abseihen', 'strain', undefined, 'cubes'], ['reduce to a glass', 'reduce', undefined, undefined]])('%s: %s, %s, over %s', (line, verb, key, kind) => {
    const read = step(line);
    expect([read.verb, read.into?.key, read.ice?.kind]).toEqual([verb, key, kind]);
  });

  it.each([['fill a highball with ice', 'highball', 'cubes'], ['fill the shaker with ice', 'shaker', 'cubes'], ['fill a julep cup with crushed ice', 'julep-cup', 'crushed'], ['add ice to a highball glass', 'highball', 'cubes'], ['Eis in ein Longdrinkglas geben', 'highball', 'cubes'], ['1 cup ice cubes', undefined, 'cubes']])('%s: ice in a %s', (line, key, kind) => {
    const action = parse(`Ice\n\nBuild:\n60 ml rum\n${line}\n`).sections[0]!.lines.at(-1)!.actions[0]!;
    expect(action.kind === 'fill' ? [action.into?.key, action.ice?.kind] : action).toEqual([key, kind]);
  });
});

describe('two amounts in a line', () => {
  it('plus adds what is of one thing, and is no second thing', () => {
    const read = (line: string) => { const d = parse(`Sum\n\nBuild:\n${line}\n`), a = d.sections[0]!.lines[0]!.actions[0]!; return [a.kind === 'measure' ? a.amount?.plus?.length ?? 0 : a.kind, d.problems.map(({ code }) => code)]; };
    expect(read('60 ml rum + 15 ml')).toEqual([1, []]);
    expect(read('60 ml + 15 ml rum')).toEqual([1, []]);
    expect(read('60 ml rum + 30 ml lime juice')).toEqual([0, ['second-measure']]);
  });
});
