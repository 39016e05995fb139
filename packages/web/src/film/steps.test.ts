import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { spliced } from '../history.ts';
import { read } from '../read.ts';
import { afterOf, type Stood } from './after.ts';
import { doingsOf } from './actions.ts';
import { shotSplices, typedNumber, unitOf, writtenOf } from './shot.ts';
import { stepsOf } from './steps.ts';

const demo = (name: string): string => readFileSync(new URL(`../../../../demo/${name}.drink`, import.meta.url), 'utf8');
const glance = (text: string) => read(text, undefined, 'en', 'quick');
const film = (text: string) => { const now = read(text, undefined, 'en', 'quick'), steps = stepsOf(now); return { now, steps, at: (words: string) => steps.findIndex((s) => s.words === words) }; };
const millilitres = (state: Stood | null): number => (state?.kind === 'vessel' ? state.mL : NaN);
const COLADA = demo('clear-colada');

describe('the steps of a spec', () => {
  it('are what someone does: preps in order of doing, then the build', () => {
    const { steps, now } = film(COLADA);
    expect(steps).toHaveLength(29);
    expect(doingsOf(now.document, null)).toHaveLength(29);
    expect([...new Set(steps.map((s) => s.section.key))]).toEqual(['coconut rum', 'clear pineapple', 'pineapple cloud', 'build']);
    expect(steps.slice(21).map((s) => [s.verb, s.what, s.seconds])).toEqual([
      ['Add', '60 ml coconut rum', null], ['Add', '45 ml clear pineapple', null], ['Add', '10 ml lime acid 6 %', null], ['Add', '10 ml simple syrup 1:1', null],
      ['Stir', '200 g cubes at -5 °C', 25], ['Strain', 'over 1 clear cube 50 mm', null], ['Top with', '15 g pineapple cloud', null], ['Garnish', 'pineapple leaf', null],
    ]);
    expect(steps.find((s) => s.words.startsWith('230 ml'))?.seconds).toBe(300);
    expect(new Set(steps.map((s) => s.id)).size).toBe(29);
  });
  it('a prep that takes from one written after it is done after it', () => {
    const { steps } = film('T\n\nSour syrup (mix):\n100 ml tea base\n50 ml lime juice\n\nTea base (infusion):\n10 g black tea\n300 ml water at 95 °C\nstrain through a fine sieve\n\nBuild:\n50 ml rum\n20 ml sour syrup\nshake 12 s\nstrain\n');
    expect([...new Set(steps.map((s) => s.section.key))]).toEqual(['tea base', 'sour syrup', 'build']);
  });
  it('speak the language of the line', () => {
    const { steps } = film(demo('clear-colada.de'));
    expect(steps.slice(21).map((s) => [s.verb, s.what, s.seconds])).toEqual([
      ['Zugeben', '60 ml Kokosrum', null], ['Zugeben', '45 ml klare Ananas', null], ['Zugeben', '10 ml Limettensäure 6 %', null], ['Zugeben', '10 ml Zuckersirup 1:1', null],
      ['Rühren', '200 g Würfeln bei -5 °C', 25], ['Abseihen', 'über 1 klaren Würfel 50 mm', null], ['Toppen', '15 g Ananaswolke', null], ['Garnieren', 'Ananasblatt', null],
    ]);
  });
  it('leave no article behind', () => { expect(film(demo('clear-colada.de')).steps.find((s) => s.words === 'das Gel aufbrechen')).toMatchObject({ verb: 'Gel aufbrechen', what: '' }); });
  it('a line of two actions is two steps; words for a time are not counted', () => {
    const { steps } = film('T\n\nBuild:\n60 ml rum\nshake hard for 12 s and double strain into a chilled coupe\nlime wheel garnish\n');
    expect(steps.map((s) => [s.verb, s.what, s.seconds])).toEqual([['Add', '60 ml rum', null], ['Shake hard', '', 12], ['Double strain', 'into a chilled coupe', null], ['Garnish', 'lime wheel', null]]);
    expect(film('T\n\nBuild:\n60 ml rum\nstir until cold\nstrain\n').steps[1]).toMatchObject({ seconds: null, what: 'until cold' });
  });
  it('keep warnings and what can hurt with the step they stand at', () => {
    const egg = film('Sour\n\nBuild:\n60 ml bourbon\n30 ml lemon juice\n20 ml simple syrup 1:1\n30 ml egg white\nshake 12 s\nstrain into a coupe\n');
    expect(egg.steps.find((s) => s.words === '30 ml egg white')?.cautions.map((c) => c.code)).toContain('egg-raw');
    const faults = film(demo('colada-with-faults'));
    expect(faults.steps.flatMap((s) => s.cautions).filter((c) => c.severity === 'stop').length).toBeGreaterThan(0);
  });
  it('of nothing there are none', () => { expect(film('').steps).toEqual([]); expect(film('Name only\n').steps).toEqual([]); });
});

describe('a list with a method below it', () => {
  const long = (...lines: string[]) => film(['Long', '50 ml gin', '20 ml lime juice', ...lines].join('\n'));
  const { now, steps, at } = long('120 ml tonic water', 'shake 10 s', 'strain into a highball over ice', 'top with tonic water');
  const one = long('shake 10 s', 'strain into a highball over ice', 'top with 120 ml tonic water');
  it('is poured where the method says so, with the amount of the list', () => {
    expect(steps.map((s) => s.words)).toEqual(['50 ml gin', '20 ml lime juice', 'shake 10 s', 'strain into a highball over ice', 'top with tonic water']);
    expect(writtenOf(steps.at(-1)!)).toBe(120);
  });
  it('stands after every step as it does where one line says both', () => {
    for (const words of ['20 ml lime juice', 'shake 10 s', 'strain into a highball over ice']) expect(afterOf(steps, at(words), now, glance).state, words).toEqual(afterOf(one.steps, one.at(words), one.now, glance).state);
  });
});

describe('what stands there after a step', () => {
  const { now, steps, at } = film(COLADA);
  const after = (i: number) => afterOf(steps, i, now, glance);
  it('is the engine’s stage of that step', () => {
    for (const [i, step] of steps.entries()) {
      const stage = (step.section.kind === 'build' ? now.reading.stages : now.reading.preps[step.section.key]!.stages).find((s) => s.path.join() === step.action.path.join());
      const { state, as } = after(i);
      expect(as).toBeNull();
      if (stage !== undefined && state?.kind === 'vessel') expect(state.mL).toBe(stage.figures['volume']!.value);
    }
    expect(after(at('stir 25 s over 200 g cubes at -5 °C')).state).toMatchObject({ vessel: 'stirring glass', ice_g: now.reading.stages[0]!.figures['ice_left']!.value });
  });
  it('a measure stands at the level of what is in so far, a clear colada poured four times', () => {
    const levels = [21, 22, 23, 24].map((i) => millilitres(after(i).state));
    expect(levels[0]).toBeCloseTo(60, 0);
    expect(levels[1]! - levels[0]!).toBeCloseTo(45, 0);
    expect(levels).toEqual([...levels].sort((a, b) => a - b));
    expect(millilitres(after(0).state)).toBeCloseTo(300, 0);
  });
  it('the glass is the engine’s own glass: strained, topped, garnished', () => {
    const strained = after(26).state, topped = after(27).state, last = after(28).state;
    if (strained?.kind !== 'glass' || topped?.kind !== 'glass' || last?.kind !== 'glass') throw new Error('no glass');
    expect(strained.glass.layers).toHaveLength(1);
    expect(topped.glass.washline_mm).toBeGreaterThan(strained.glass.washline_mm);
    expect(last.glass).toBe(now.reading.glass);
    expect(topped.glass.garnish).toEqual([]);
  });
  it('a siphon is drawn as one, with its pressure and caution, only once it is charged', () => {
    expect(after(at('cool to 20 °C')).state).toMatchObject({ vessel: 'jar', bar: null });
    const charged = after(at('charge 2 N2O in a 500 ml siphon'));
    expect(charged.state).toMatchObject({ vessel: 'siphon' });
    expect(charged.pressure).toMatch(/bar at 20 °C.*Vent before opening/);
  });
  it('where a step has no state of its own it says whose is drawn', () => {
    const two = film('T\n\nBuild:\n40 ml gin\nadd 20 ml rum and 30 ml lime juice\nshake 12 s\nstrain\n');
    expect(afterOf(two.steps, 1, two.now, glance)).toMatchObject({ as: '40 ml gin', state: { mL: expect.closeTo(40, 0) } });
    expect(millilitres(afterOf(two.steps, 2, two.now, glance).state)).toBeCloseTo(90, 0);
    expect(afterOf(two.steps, 0, two.now, () => null)).toEqual({ state: null, as: null, pressure: null });
  });
  it('built in the glass it stands in the glass from the first measure on', () => {
    const tonic = film(demo('gin-and-tonic'));
    const first = tonic.steps.findIndex((s) => s.pours !== null);
    expect(afterOf(tonic.steps, first, tonic.now, glance).state?.kind).toBe('glass');
  });
});

describe('as shot', () => {
  it('puts what was poured into the text and leaves every other byte alone', () => {
    const { steps, now, at } = film(COLADA), one = steps[at('45 ml clear pineapple')]!;
    expect([writtenOf(one), unitOf(one, COLADA)]).toEqual([45, 'ml']);
    const splices = shotSplices(steps, [{ id: one.id, words: one.words, value: 47.5 }], now);
    expect(spliced(COLADA, splices)).toBe(COLADA.replace('45 ml clear pineapple', '47.5 ml clear pineapple'));
  });
  it('leaves a line that was changed since, and one poured as written', () => {
    const { steps, now, at } = film(COLADA), one = steps[at('45 ml clear pineapple')]!;
    expect(shotSplices(steps, [{ id: one.id, words: '40 ml clear pineapple', value: 47.5 }, { id: steps[0]!.id, words: steps[0]!.words, value: 300 }], now)).toEqual([]);
  });
  it('writes a comma where the spec does', () => {
    const text = demo('clear-colada.de'), { steps, now, at } = film(text), one = steps[at('45 ml klare Ananas')]!;
    expect(spliced(text, shotSplices(steps, [{ id: one.id, words: one.words, value: 47.5 }], now))).toContain('47,5 ml klare Ananas');
  });
  it.each([['60', 60], ['62,5', 62.5], [' 0.75 ', 0.75], ['', null], ['abc', null], ['-3', null], ['1e9', null], ['9999999', null]])('typed "%s" is %s', (typed, value) => { expect(typedNumber(typed)).toBe(value); });
});
