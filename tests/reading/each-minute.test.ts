import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const each = (text: string) => readText(text, { tables, later: 'alone', each: true, quick: true }).reading;
const demo = (name: string): string => readFileSync(new URL(`../../demo/${name}.drink`, import.meta.url), 'utf8');
const DRINKS = ['clear-colada', 'daiquiri', 'gin-and-tonic', 'tea-sour', 'pineapple-highball', 'freezer-martini', 'three-floors'];

describe('the glass at every whole minute of half an hour', () => {
  it.each(DRINKS)('%s: begins where it was poured, thirty minutes in order, every level finite and in its range', (name) => {
    const { later, glass } = each(demo(name));
    expect(later!.map((l) => l.minutes)).toEqual(Array.from({ length: 30 }, (_, i) => i + 1));
    expect(Math.abs(later![0]!.glass!.washline_mm - glass!.washline_mm)).toBeLessThan(0.5);
    for (const { glass: then, figures } of later!) {
      const { washline } = then!;
      expect(Number.isFinite(washline.value)).toBe(true);
      expect(washline.low).toBeLessThanOrEqual(washline.value);
      expect(washline.high).toBeGreaterThanOrEqual(washline.value);
      expect(then!.layers.at(-1)!.to_mm).toBeCloseTo(then!.washline_mm, 6);
      for (const [below, above] of then!.layers.slice(1).map((l, i) => [then!.layers[i]!, l] as const)) expect(above.from_mm).toBeCloseTo(below.to_mm, 6);
      expect(figures['liquid_mm']).toBeUndefined();
    }
  });
  it('is at its told minutes what half an hour by itself tells', () => {
    const alone = readText(demo('clear-colada'), { tables, later: 'alone', quick: true }).reading.later!, all = each(demo('clear-colada')).later!;
    for (const { minutes, figures } of alone) for (const [name, figure] of Object.entries(figures)) {
      const same = all.find((l) => l.minutes === minutes)!.figures[name]!;
      // steps of a minute or of ten: `advance` composes within 0.1 %
      expect(Math.abs(same.value - figure.value), `${minutes} ${name}`).toBeLessThan(0.002 * Math.max(1, Math.abs(figure.value)));
    }
  });
  it('ice that floats free takes as much room as its water: the level of water on ice hardly moves while it melts (Archimedes, On floating bodies I, proposition 5)', () => {
    const { later, glass } = each('Water\nglass: highball\n\nBuild:\n150 ml water at 4 °C\n2 cubes 25 mm at -1 °C\n');
    const gone = later!.at(-1)!;
    expect(glass!.ice[0]!.mass_g - (gone.glass!.ice[0]?.mass_g ?? 0)).toBeGreaterThan(5);
    expect(Math.abs(gone.glass!.washline_mm - glass!.washline_mm)).toBeLessThan(0.1);
  });
  it('a cube that is held up over the brim of a shallow drink lifts the level as it melts', () => {
    const { later, glass } = each('Rum\nglass: double rocks\n\nBuild:\n20 ml white rum 40 % at 20 °C\n1 clear cube 50 mm at -10 °C\n');
    expect(glass!.ice[0]!.to_mm).toBeGreaterThan(glass!.liquid_mm + 20);
    expect(later!.at(-1)!.glass!.liquid_mm).toBeGreaterThan(glass!.liquid_mm + 1);
  });
  it('what melts is what the ice loses, and the ice never grows in a warm room once the drink is cold', () => {
    const { later, glass } = each(demo('clear-colada')), was = glass!.ice[0]!.mass_g;
    let before = was;
    for (const { figures, glass: then } of later!) {
      const left = then!.ice[0]!.mass_g;
      expect(left + figures['melted']!.value).toBeCloseTo(was, 3);
      expect(left).toBeLessThan(before);
      before = left;
    }
  });
  it('a foam drains and sinks: its height falls minute by minute and the drink under it rises', () => {
    const { later } = each(demo('tea-sour'));
    const foam = later!.map(({ glass }) => { const f = glass!.layers.find((l) => l.kind === 'foam')!; return f.to_mm - f.from_mm; }), liquid = later!.map(({ glass }) => glass!.liquid_mm);
    for (let i = 1; i < 30; i++) { expect(foam[i]!).toBeLessThan(foam[i - 1]!); expect(liquid[i]!).toBeGreaterThan(liquid[i - 1]!); }
  });
  it('of a prep that gives nothing no layer is floated', () => {
    const { glass } = readText(['A', 'glass: double rocks', 'Syrup (mix):', 'Build:', 'float 20 ml syrup', 'shake 12 s'].join('\n'), { tables }).reading;
    expect(glass!.layers).toEqual([]);
  });
  it('layers that were floated keep their order and say no strength they no longer have', () => {
    const then = each(demo('three-floors')).later!.at(-1)!.glass!;
    expect(then.layers.map((l) => l.strength)).toEqual([null, null, null]);
    expect(then.layers.map((l) => l.name)).toEqual(each(demo('three-floors')).glass!.layers.map((l) => l.name));
  });
});
