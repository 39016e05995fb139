// Sucrose in spirit and beside other sugars: Scheibler's table (from memory) and the trade's habit of glucose in a syrup.
import { describe, expect, it } from 'vitest';
import { read, spliced } from './battery.ts';

const prep = (...lines: string[]) => ['A', 'Rich (mix):', ...lines, 'Build:', '60 ml white rum 40 %', '15 ml rich'].join('\n');
const found = (text: string, code: string) => read(text).reading.findings.filter((f) => f.code === code);

describe('sugar where there is more than water', () => {
  // 40 % vol holds 58 g in 100 cm3 of solution, some 92 g in 100 mL of spirit; 60 % vol 43
  it.each([['100 ml white rum 40 %', '60 g sugar', 0], ['100 ml white rum 40 %', '120 g sugar', 1], ['100 ml overproof rum 60 %', '30 g sugar', 0], ['100 ml overproof rum 60 %', '70 g sugar', 1]])('%s with %s', (spirit, sugar, stops) => {
    const all = found(prep(spirit, sugar, 'stir', 'rest 24 h at 20 °C'), 'will-not-dissolve').filter((f) => f.severity === 'stop');
    expect(all).toHaveLength(stops);
    for (const f of all) {
      if (!f.remedy) throw new Error('no remedy');
      expect(found(spliced(prep(spirit, sugar, 'stir', 'rest 24 h at 20 °C'), f.remedy.splices), 'will-not-dissolve')).toEqual([]);
    }
  });
  it('a syrup with spirit in it crystallises where the same syrup with water does not', () => {
    const hot = ['heat to 80 °C', 'cool to 20 °C'], water = prep('120 g sugar', '100 ml water', ...hot), spirit = prep('120 g sugar', '100 ml white rum 40 %', ...hot);
    expect(found(water, 'syrup-crystallises')).toEqual([]);
    expect(found(spirit, 'syrup-crystallises')).toHaveLength(1);
  });
  it('part of the sugar as dextrose stands further from crystals, and is less sure', () => {
    const hot = ['heat to 80 °C', 'cool to 20 °C'], margin = (...l: string[]) => found(prep(...l, '100 g water', ...hot), 'syrup-crystallises')[0]?.margin;
    const all = margin('205 g sugar')!, part = margin('195 g sugar', '20 g dextrose');
    expect(part === undefined || part.value < all.value).toBe(true);
  });
});
