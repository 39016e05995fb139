// Plant drinks by the pH of the mix: whole, uncertain, apart, and where there is no data it is said.
import { describe, expect, it } from 'vitest';
import { read } from './battery.ts';

const said = (text: string, code: string) => read(text).reading.findings.filter((f) => f.code === code).map((f) => `${f.severity} ${String(f.message)}`);
const drink = (plant: string, ...more: string[]) => ['A', `120 ml ${plant}`, ...more].join('\n');
const SOUR = '30 ml lemon juice', SOME = '3 ml lemon juice', RUM = '60 ml white rum 40 %';

// Soy: soured soy milk gels from pH 6.3 to 5.9 (Grygorczyk and Corredig 2013), solids from 5.6 (AIChE J. 53, 514). Coconut milk: least steady from 3.5 to 6.0
// (Monera and del Rosario). Oat protein: half comes down at 5 and 6 (Korean J. Food Preserv. 32, 1110), too little for a curd: common practice. Almond: memory.
describe('a plant drink in the glass', () => {
  it.each([
    ['soy drink', SOUR, /^stop soy drink curdles/], ['soy drink', SOME, /^warn soy drink may curdle/], ['soy drink', '100 ml water', null],
    ['coconut milk', SOUR, /^warn coconut milk splits/], ['coconut milk', '100 ml water', null],
    ['almond drink', SOUR, /^warn almond drink splits/], ['almond drink', '100 ml water', null],
    ['oat drink', SOUR, null], ['oat drink', '100 ml water', null],
    ['rice drink', SOUR, /^warn No data for rice drink/], ['rice drink', '100 ml water', null],
    ['coconut milk drink', SOUR, /^warn No data for coconut milk drink/], ['coconut milk drink', '100 ml water', null],
  ] as const)('%s with %s', (plant, more, says) => {
    const found = said(drink(plant, more), 'curdles-in-glass');
    if (says === null) expect(found).toEqual([]); else { expect(found).toHaveLength(1); expect(found[0]).toMatch(says); }
  });
  it('with spirit nothing was printed of it, and that is said where it would hold without', () => {
    expect(said(drink('almond drink', RUM), 'curdles-in-glass')).toEqual([expect.stringMatching(/^note .*nothing was printed/)]);
    expect(said(drink('soy drink', RUM, SOUR), 'curdles-in-glass')).toEqual([expect.stringMatching(/^stop/)]);
  });
  it('on two lines it is still one mix, told of once', () => {
    expect(said(['A', '60 ml soy drink', '60 ml soy drink', SOUR].join('\n'), 'curdles-in-glass')).toHaveLength(1);
    expect(said(['A', '60 ml soy drink', '60 ml coconut milk', SOUR].join('\n'), 'curdles-in-glass')).toHaveLength(2);
  });
  it('one without data leaves the other without a pH', () => { expect(said(drink('soy drink', '60 ml rice drink', SOUR), 'curdles-in-glass').every((m) => m.startsWith('warn No data'))).toBe(true); });
  it('dairy beside it keeps its own finding', () => { expect(said(drink('soy drink', '60 ml whole milk', SOUR), 'curdles-in-glass').filter((m) => m.startsWith('stop'))).toHaveLength(2); });
});

describe('a plant drink in a wash', () => {
  const wash = (plant: string, lemon: number) => ['A', 'Punch (milk wash):', `200 ml ${plant}`, '300 ml white rum 40 %', `${lemon} ml lemon juice`, 'rest 1 h', 'strain through cheesecloth', 'Build:', '60 ml punch'].join('\n');
  it('soy curdles with enough acid and not with a little', () => {
    expect(said(wash('soy drink', 100), 'wash-will-not-curdle')).toEqual([]);
    expect(said(wash('soy drink', 14), 'wash-will-not-curdle')).toEqual([expect.stringMatching(/^warn soy drink may not curdle/)]);
    expect(said(wash('soy drink', 2), 'wash-will-not-curdle')).toEqual([expect.stringMatching(/^stop soy drink will not curdle/)]);
  });
  it('the others make no curd, and are told so once', () => { for (const plant of ['oat drink', 'almond drink', 'coconut milk']) { expect(said(wash(plant, 2), 'wash-will-not-curdle')).toEqual([]); expect(said(wash(plant, 2), 'wash-buffered')).toHaveLength(1); } });
});
