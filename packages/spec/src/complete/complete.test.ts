import { tables } from '@washline/tables';
import { describe, expect, it } from 'vitest';
import { parse } from '../document/parse.ts';
import { completions, type CompletionOptions } from './complete.ts';

const SPEC = `Harbour fizz
glass: highball

Coconut rum (fat wash):
300 ml white rum 40 %
40 g virgin coconut oil

Lime cordial (cordial):
200 g sugar
200 ml lime juice

Build:
`;
const DE = 'Hafen\nGlas: Tumbler\n\nRumsahne (Siphonschaum):\n200 ml Rum\n\nAufbau:\n';
const at = (line: string, language: 'en' | 'de' = 'en', options: CompletionOptions = {}, before = language === 'de' ? DE : SPEC) => completions(before + line, before.length + line.length, language, options);
const named = (line: string, language: 'en' | 'de' = 'en', options: CompletionOptions = {}) => at(line, language, options)?.list.map((one) => one.name) ?? [];

describe('what may be meant at the caret', () => {
  it('a prep of the spec comes before the larder, a name that begins so before one with such a word', () => {
    const found = at('60 ml co')!;
    expect(found.list[0]).toMatchObject({ kind: 'prep', name: 'coconut rum', of: 'fat wash' });
    const names = named('60 ml ru');
    expect(names[0]).toBe('coconut rum');
    const larder = at('60 ml ru', 'en', { document: parse('') })!.list;
    const begins = larder.map((one) => one.name.startsWith('ru'));
    expect(begins[0]).toBe(true);
    expect(begins).toEqual([...begins].sort((a, b) => Number(b) - Number(a)));
    expect(named('60 ml lime')[0]).toBe('lime cordial');
  });
  it('says of a spirit how strong it is, as the larder has it', () => {
    const white = at('60 ml white r', 'en', { tables })!.list.find((one) => one.name === 'white rum');
    expect(white).toMatchObject({ kind: 'ingredient', of: 'spirit', strength: tables.ingredient('rum-white')!.cells['abv_pct']!.value });
  });
  it('takes the words from where they begin, and never twice', () => {
    const found = at('60 ml white r')!;
    expect(found.from).toBe(SPEC.length + '60 ml '.length);
    const text = `${SPEC}60 ml whi rum 40 %`, caret = SPEC.length + '60 ml whi'.length;
    const white = completions(text, caret, 'en')!.list.find((one) => one.name === 'white rum')!;
    expect(text.slice(0, SPEC.length + 6) + white.insert + text.slice(white.to)).toBe(`${SPEC}60 ml white rum 40 %`);
  });
  it('units after a number, with how much they are', () => {
    expect(named('60 m')).toEqual(expect.arrayContaining(['ml', 'min', 'mg']));
    expect(named('60m').slice(0, 3)).toContain('ml');
    expect(at('2 ba')!.list[0]).toMatchObject({ kind: 'unit', of: 'ml', insert: expect.stringMatching(/^bar ?spoon $/) as string });
    expect(at('60 ml')).toBeNull();
    expect(at('1 1/2 o')!.list[0]).toMatchObject({ kind: 'unit', name: 'oz', low: 29.5735295625 });
  });
  it('a step at the beginning of a line, a heading too', () => {
    expect(named('sh')[0]).toBe('shake');
    expect(named('sti')[0]).toBe('stir');
    expect(named('Bui')).toEqual(expect.arrayContaining(['build', 'Build']));
    expect(named('strain ov')).toEqual([]);
  });
  it('ice, sieves and glasses where a step wants them', () => {
    expect(at('stir 25 s over 200 g cu')!.list[0]).toMatchObject({ kind: 'ice', name: 'cubes' });
    expect(at('strain through che')!.list[0]).toMatchObject({ kind: 'sieve', name: 'cheesecloth' });
    expect(at('strain through a fi')!.list[0]).toMatchObject({ kind: 'sieve' });
    expect(at('strain into a cou')!.list[0]).toMatchObject({ kind: 'glass', name: 'coupe', low: 120, high: 260 });
    expect(named('top with to').some((name) => name.includes('tonic'))).toBe(true);
  });
  it('methods in the bracket of a heading, closed when taken', () => {
    const found = at('Tea foam (si')!;
    expect(found.list[0]).toMatchObject({ kind: 'method', name: 'siphon foam', insert: 'siphon foam):' });
    expect(named('Tea (clarify with').length).toBeGreaterThan(3);
    expect(at('2 oz (si')?.list.some((one) => one.kind === 'method') ?? false).toBe(false);
  });
  it('keys in the head and what may stand behind them', () => {
    const head = 'Harbour\n';
    const key = completions(`${head}gl`, head.length + 2, 'en')!.list;
    expect(key[0]).toMatchObject({ kind: 'key', name: 'glass', insert: 'glass: ' });
    expect(completions(`${head}roo`, head.length + 3, 'en')!.list[0]).toMatchObject({ name: 'room', of: '°C' });
    const glass = `${head}glass: hi`;
    expect(completions(glass, glass.length, 'en')!.list[0]).toMatchObject({ kind: 'glass', name: 'highball' });
    expect(named('serv').includes('serves')).toBe(false);
  });
  it('German words for a German spec', () => {
    expect(named('60 ml Ru', 'de')[0]).toBe('Rumsahne');
    expect(named('60 ml wei', 'de')).toContain('weißer Rum');
    expect(named('2 Barl', 'de')[0]).toMatch(/^Barl/);
    expect(named('schü', 'de')).toContain('schütteln');
    expect(named('schue', 'de')).toContain('schütteln');
    expect(named('30 s schü', 'de')).toContain('schütteln');
    expect(named('in eine Sch', 'de').map((name) => name.toLowerCase())).toContain('schale');
    expect(named('Teeschaum (Sahnes', 'de')[0]?.toLowerCase()).toBe('sahnesiphon');
  });
  it('words of the other language where one has none', () => {
    expect(named('60 ml Zuckersi').length).toBeGreaterThan(0);
  });
  it('nothing in a name, a note, a remark or within a word', () => {
    expect(completions('Harb', 4, 'en')).toBeNull();
    expect(at('# 60 ml whi')).toBeNull();
    expect(at('60 ml gin # from the whi')).toBeNull();
    const text = `${SPEC}60 ml white rum`;
    expect(completions(text, SPEC.length + 8, 'en')).toBeNull();
  });
  it('what is whole already is not offered, longer ones are', () => {
    expect(named('30 ml lime juice')).not.toContain('lime juice');
    expect(named('30 ml lime juic')).toContain('lime juice');
    expect(named('30 ml gin')).toContain('ginger beer');
  });
  it('asked for, the preps come without a letter', () => {
    expect(at('60 ml ')).toBeNull();
    expect(named('60 ml ', 'en', { asked: true }).slice(0, 2)).toEqual(['coconut rum', 'lime cordial']);
  });
  it('never throws, wherever the caret stands, and its place lies in the line', () => {
    for (const text of [SPEC, DE, '', '\n', '60', '(', 'a (', '½ ', '\uFEFFx\r\n1 ml wh\r\n']) for (let i = 0; i <= text.length; i++) {
      const found = completions(text, i, 'en', { asked: true });
      if (found === null) continue;
      expect(found.from).toBeLessThanOrEqual(i);
      expect(text.slice(found.from, i)).not.toContain('\n');
      for (const one of found.list) expect(one.to).toBeGreaterThanOrEqual(i);
    }
  });
  it('answers within 5 ms on the whole larder', () => {
    const document = parse(SPEC);
    const times: number[] = [];
    for (const line of ['60 ml w', '60 ml wh', '60 ml whi', 'st', '60 m', '30 ml lime j', '60 ml zz', '60 ml a']) {
      at(line, 'en', { document, tables });
      for (let n = 0; n < 20; n++) { const from = performance.now(); at(line, 'en', { document, tables }); times.push(performance.now() - from); }
    }
    times.sort((a, b) => a - b);
    expect(times[Math.floor(times.length / 2)]).toBeLessThan(5);
  });
});
