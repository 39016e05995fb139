// The head of a shaken drink. How much air a shake takes in is common practice, no source; what is checked is that nothing is lost and that it goes with what makes it.
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { imbalance } from './matter.ts';

const text = (foamer: string, shakes: string[] = ['dry shake', 'shake 12 s over 150 g cubes']) => ['Sour', 'glass: highball', '50 ml gin 40 %', '25 ml lemon juice', '20 ml simple syrup 1:1', ...(foamer === '' ? [] : [foamer]), ...shakes, 'double strain'].join('\n');
const read = (foamer: string, shakes?: string[]) => readText(text(foamer, shakes), { tables, later: 'alone', quick: true }).reading;
const head = (foamer: string, shakes?: string[]) => { const { glass, figures } = read(foamer, shakes), foam = glass!.layers.find((l) => l.kind === 'foam'); return { foam, mm: foam ? foam.to_mm - foam.from_mm : 0, glass: glass!, figures }; };

describe('a head shaken up from the drink itself', () => {
  it('stands on it and lifts the washline, the drink is the same', () => {
    const { foam, mm, glass, figures } = head('30 g egg white');
    expect(foam!.name).toBe('egg white');
    // a finger or two: common practice, no source
    expect(mm).toBeGreaterThan(8);
    expect(mm).toBeLessThan(60);
    expect(glass.washline_mm).toBeCloseTo(foam!.to_mm, 6);
    expect(glass.liquid_mm).toBeCloseTo(foam!.from_mm, 6);
    const stirred = readText(text('30 g egg white', ['stir 20 s over 150 g cubes']), { tables, quick: true }).reading;
    expect(stirred.glass!.layers.some((l) => l.kind === 'foam')).toBe(false);
    expect(Object.keys(figures)).toEqual(Object.keys(stirred.figures));
  });
  it('its liquid is the drink’s own: what stands below and in it is what was poured', () => {
    const { foam, figures } = head('30 g egg white'), base = read('30 g egg white').glass!.layers.find((l) => l.kind === 'liquid')!;
    // overrun 200 to 450 %, its middle
    expect(Math.abs((base.mL + foam!.mL / (1 + 3.25)) / figures['volume']!.value - 1)).toBeLessThan(0.02);
    const { off, scale } = imbalance(text('30 g egg white'), tables);
    for (const g of off) expect(Math.abs(g)).toBeLessThan(1e-9 * scale);
  });
  it('is higher shaken dry than on ice alone, and with more of what makes it, up to a dose', () => {
    expect(head('30 g egg white').mm).toBeGreaterThan(1.4 * head('30 g egg white', ['shake 12 s over 150 g cubes']).mm);
    expect(head('20 g aquafaba').mm).toBeGreaterThan(head('8 g aquafaba').mm);
    expect(head('60 g egg white').mm).toBeLessThan(1.5 * head('30 g egg white').mm);
  });
  it.each(['20 ml aquafaba', '3 g soy protein, whipping', '3 g egg white powder'])('%s makes one', (foamer) => { expect(head(foamer).mm).toBeGreaterThan(3); });
  it.each(['', '20 ml cream', '3 g xanthan'])('%s makes none', (foamer) => { expect(head(foamer).foam).toBeUndefined(); });
  it('goes by its own clock, whites slower than chickpea water', () => {
    const left = (foamer: string) => { const all = read(foamer).later!; return all[4]!.figures['foam_volume']!.value / all[0]!.figures['foam_volume']!.value; };
    expect(left('30 g egg white')).toBeLessThan(1);
    expect(left('30 g aquafaba')).toBeLessThan(left('30 g egg white'));
  });
  it('is not sure of it', () => {
    const { figures } = readText(text('30 g egg white'), { tables, later: 'alone' }).reading.later![0]!;
    expect(figures['foam_mm']!.high).toBeGreaterThan(1.5 * figures['foam_mm']!.low);
  });
});

describe('a head and the brim', () => {
  const overfull = (...lines: string[]) => readText(['Sour', 'glass: coupe', '', ...lines].join('\n'), { tables, quick: true }).reading.findings.filter((f) => f.code === 'glass-overfull');
  const sour = (rum: number) => overfull(`${rum} ml white rum 40 %`, '25 ml lemon juice', '20 ml simple syrup 1:1 by weight', '30 g egg white', 'dry shake 15 s', 'shake 12 s over 150 g cubes', 'double strain');
  // common practice, no source: a sour with a whole white goes into a coupe of 200 ml, and what head is left over stays in the shaker
  it('of a sour that fits without it no more than a warning comes, and once', () => {
    const found = sour(60);
    expect(found.map((f) => f.severity)).toEqual(['warn']);
  });
  it('liquid that does not fit is a stop, head or no head, and once', () => {
    expect(sour(160).map((f) => f.severity)).toEqual(['stop']);
  });
});
