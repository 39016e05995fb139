import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile, inKitchen, kitchenOf, KITCHENS, withBench, type Input } from '@washline/engine';
import { parse } from '@washline/spec';
import { tables } from '@washline/tables';
import { parseBench } from '../../packages/spec/src/bench/bench.ts';
import profiles from '../../data/hands.json' with { type: 'json' };

/** Points of a standard normal that hold nineteen of twenty (any table of it). */
const Z = 1.959964;
const build = (...lines: readonly string[]) => `Try\n\n${lines.join('\n')}\n`;
const prep = (method: string, ...lines: readonly string[]) => `Try\n\nThing (${method}):\n${lines.join('\n')}\n\nBuild:\n60 ml thing\n`;

/**
 * A spec (and a bench) that uses the row, the input, and the viewer's value with its 95 % ends by hand: value ± Z sd; value × exp(± Z √ln(1 + cv²)); per cent of
 * the value. Factors of a cv: 0.06 0.88915 1.12467, 0.1 0.82242 1.21593, 0.15 0.74650 1.33959, 0.18 0.70470 1.41905, 0.25 0.61719 1.62026, 0.3 0.56250 1.77778,
 * 0.35 0.51362 1.94696, 0.4 0.46997 2.12779, 0.6 0.33729 2.96485.
 */
interface Case { readonly row: string; readonly text: string; readonly bench?: string; readonly key: RegExp; readonly ends: readonly [value: number, low: number, high: number] }
const of = (value: number, low: number, high: number): [number, number, number] => [value, value * low, value * high];
const CASES: readonly Case[] = [
  { row: 'assumptions tool/scale step', text: build('60 ml white rum 40 %', '0.75 g citric acid'), key: /^tool\/scale step$/, ends: [1, 1, 1] },
  { row: 'spreads tool/fine scale', text: build('10 g sugar'), key: /^pour\/build\/sugar/, ends: [10, 10 - 0.6 * Z, 10 + 0.6 * Z] },
  // 0.75 - 1.18 would be nothing and less: a quarter goes in all the same
  { row: 'spreads tool/fine scale', text: build('60 ml white rum 40 %', '0.75 g citric acid'), key: /^pour\/build\/citric acid/, ends: [0.75, 0.1875, 0.75 + 0.6 * Z] },
  { row: 'spreads tool/kitchen scale', text: build('40 g sugar'), key: /^pour\/build\/sugar/, ends: [40, 40 - Z, 40 + Z] },
  { row: 'spreads tool/pour into jigger', text: build('60 ml white rum 40 %'), key: /^pour\/build\/white rum/, ends: of(60, 0.88915, 1.12467) },
  { row: 'spreads tool/jigger', text: build('60 ml white rum 40 %'), key: /^tool\/jigger\/bias$/, ends: [1, 0.88915, 1.12467] },
  { row: 'spreads tool/small measure', text: build('3 ml white rum 40 %'), key: /^pour\/build\/white rum/, ends: of(3, 0.61719, 1.62026) },
  { row: 'spreads tool/jug', text: build('200 ml pineapple juice'), key: /^pour\/build\/pineapple juice/, ends: [200, 180, 220] },
  { row: 'spreads tool/jug', text: build('1 pint soda water'), key: /^pour\/build\/soda water/, ends: [1, 0.9, 1.1] },
  { row: 'spreads tool/bucket', text: build('3 l pineapple juice'), key: /^pour\/build\/pineapple juice/, ends: [3000, 2640, 3360] },
  { row: 'spreads tool/free pour', text: build('60 ml white rum 40 %'), bench: 'Tools:\njigger: none\n', key: /^pour\/build\/white rum/, ends: of(60, 0.61719, 1.62026) },
  { row: 'spreads tool/bar spoon', text: build('60 ml white rum 40 %', '1 bar spoon gin 40 %'), key: /^unit\/barspoon$/, ends: of(4, 0.46997, 2.12779) },
  { row: 'spreads tool/tsp pour', text: build('1 tsp gin 40 %'), key: /^pour\/build\/gin/, ends: of(4.92892, 0.6, 1.4) },
  // two of them are twice one: what stands in the row is a share, not a size
  { row: 'spreads tool/tsp pour', text: build('2 tsp gin 40 %'), key: /^pour\/build\/gin/, ends: of(9.85784, 0.6, 1.4) },
  { row: 'bench tsp', text: build('1 tsp gin 40 %'), bench: 'Tools:\nteaspoon: 5 ml\n', key: /^unit\/tsp$/, ends: [5, 3, 7] },
  { row: 'bench tbsp', text: build('2 tbsp gin 40 %'), bench: 'Tools:\ntablespoon: 15 ml\n', key: /^unit\/tbsp$/, ends: [15, 9, 21] },
  { row: 'bench barspoon', text: build('1 bar spoon gin 40 %'), bench: 'Tools:\nbar spoon: 4.2 ml\n', key: /^unit\/barspoon$/, ends: of(4.2, 0.46997, 2.12779) },
  { row: 'bench dash', text: build('60 ml gin 40 %', '2 dashes orange bitters'), bench: 'Tools:\ndash: 0.7 ml\n', key: /^unit\/dash/, ends: of(0.7, 0.33729, 2.96485) },
  { row: 'spreads tool/gelatin sheet', text: prep('gel', '2 gold gelatin sheets, soaked 10 min in cold water', '200 ml pineapple juice at 60 °C', 'chill 4 h at 4 °C'), key: /^unit\/gelatin-sheet-gold$/, ends: of(2, 0.7465, 1.33959) },
  { row: 'spreads tool/thermometer', text: prep('infusion', '10 g black tea', '300 ml water at 95 °C', 'steep 4 min'), key: /^start\/thing\/water/, ends: [95, 95 - 4 * Z, 95 + 4 * Z] },
  { row: 'spreads tool/pressure gauge', text: prep('carbonated', '500 ml water at 4 °C', 'carbonate at 200 kPa'), key: /^carbonate\/pressure/, ends: of(200, 0.82242, 1.21593) },
  { row: 'spreads ice/mass weighed', text: build('60 ml gin 40 %', 'stir 20 s over 200 g cubes'), key: /^ice\/mass/, ends: of(200, 0.5625, 1.77778) },
  { row: 'spreads ice/edge', text: build('60 ml gin 40 %', 'stir 20 s over 3 large cubes 50 mm'), key: /^ice\/size/, ends: [50, 50 - 1.5 * Z, 50 + 1.5 * Z] },
  // three pieces of 50 mm at 0.9167 g/cm3, their mass by the cube of the edge: a cv of 3 × 1.5 / 50 = 0.09, so 0.83858 to 1.19249
  { row: 'spreads ice/edge', text: build('60 ml gin 40 %', 'stir 20 s over 3 large cubes 50 mm'), key: /^ice\/mass/, ends: of(343.76, 0.83858, 1.19249) },
  { row: 'spreads ice/temperature written', text: build('60 ml gin 40 %', 'stir 20 s over 200 g cubes at -10 °C'), key: /^ice\/temperature/, ends: [-10, -10 - 4 * Z, -10 + 4 * Z] },
  // no ice is above 0
  { row: 'spreads ice/temperature written', text: build('60 ml gin 40 %', 'stir 20 s over 200 g cubes at -5 °C'), key: /^ice\/temperature/, ends: [-5, -5 - 4 * Z, 0] },
  { row: 'spreads place/freezer', text: prep('infusion', '300 ml gin 40 %', 'freeze 12 h at -18 °C'), key: /^place\/freezer/, ends: [-18, -18 - 2.5 * Z, -18 + 2.5 * Z] },
  { row: 'spreads place/fridge', text: prep('gel', '2 gold gelatin sheets, soaked 10 min in cold water', '200 ml pineapple juice at 60 °C', 'chill 4 h at 4 °C'), key: /^place\/fridge/, ends: [4, 4 - 2.8 * Z, 4 + 2.8 * Z] },
  { row: 'spreads place/room', text: prep('infusion', '10 g black tea', '300 ml gin 40 %', 'rest 2 h at 20 °C'), key: /^place\/room/, ends: [20, 20 - 3 * Z, 20 + 3 * Z] },
  { row: 'spreads time/stir written', text: build('60 ml gin 40 %', 'stir 20 s over 200 g cubes'), key: /^time\/build/, ends: of(20, 0.51362, 1.94696) },
  { row: 'spreads time/shake written', text: build('60 ml gin 40 %', 'shake 12 s over 150 g cubes'), key: /^time\/build/, ends: of(12, 0.51362, 1.94696) },
  { row: 'spreads time/turns', text: build('60 ml gin 40 %', 'throw 6 times over 200 g cubes'), key: /^time\/build/, ends: of(12, 0.46997, 2.12779) },
  { row: 'spreads time/rest', text: prep('infusion', '10 g black tea', '300 ml gin 40 %', 'rest 2 h at 20 °C'), key: /^time\/preps/, ends: of(7200, 0.5625, 1.77778) },
  { row: 'spreads time/soak', text: prep('gel', '2 gold gelatin sheets, soaked 10 min in cold water', '200 ml pineapple juice at 60 °C', 'chill 4 h at 4 °C'), key: /^soak/, ends: of(600, 0.46997, 2.12779) },
  { row: 'spreads time/freeze', text: prep('infusion', '300 ml gin 40 %', 'freeze 12 h at -18 °C'), key: /^time\/preps/, ends: of(43_200, 0.51362, 1.94696) },
  { row: 'spreads time/steep', text: prep('infusion', '10 g black tea', '300 ml water at 95 °C', 'steep 4 min'), key: /^time\/preps/, ends: of(240, 0.61719, 1.62026) },
  // a factor about 1 for a row in °Bx: 2 of the 50 g in 100 g of a syrup of equal parts
  { row: 'spreads syrup/strength made', text: build('60 ml gin 40 %', '20 ml simple syrup 1:1 by weight'), key: /^syrup\/.*\/sugar$/, ends: [1, 1 - 0.04 * Z, 1 + 0.04 * Z] },
  { row: 'spreads fruit/lime/citric', text: build('60 ml gin 40 %', '25 ml lime juice'), key: /^fruit\/lime\/citric$/, ends: [1, 0.7047, 1.41905] },
  { row: 'spreads fruit/lemon/citric', text: build('60 ml gin 40 %', '25 ml lemon juice'), key: /^fruit\/lemon\/citric$/, ends: [1, 0.7465, 1.33959] },
];

const inputsOf = (text: string, bench?: string, profile = 'home') => {
  const all = bench === undefined ? tables : withBench(tables, parseBench(bench).bench);
  const { program } = compile(parse(text), all);
  return { maker: program.inputs, viewer: inKitchen(program, kitchenOf(profile, all)).inputs };
};
const endsOf = ({ value, spread: s }: Input): [number, number] => {
  const sigma = s.kind === 'lognormal' ? Math.sqrt(Math.log(1 + s.cv ** 2)) : 0;
  const [low, high] = s.kind === 'normal' ? [value - Z * s.sd, value + Z * s.sd] : s.kind === 'lognormal' ? [value * Math.exp(-Z * sigma), value * Math.exp(Z * sigma)] : s.kind === 'range' ? [s.low, s.high] : [value, value];
  return [Math.max(low, s.min ?? -Infinity), Math.min(high, s.max ?? Infinity)];
};

describe('the kitchen of a viewer', () => {
  it.each(CASES.map((c) => [`${c.row} (${c.key.source})`, c] as const))('%s', (_name, { row, text, bench, key, ends: [value, low, high] }) => {
    const { maker, viewer } = inputsOf(text, bench);
    const i = maker.findIndex((input) => input.row === row && key.test(input.key));
    expect(i, `${row}: ${maker.map((input) => `${input.row} = ${input.key}`).join('; ')}`).toBeGreaterThanOrEqual(0);
    const is = endsOf(viewer[i]!), near = Math.abs(high - low) * 1e-3 + 1e-9;
    expect(Math.abs(viewer[i]!.value - value)).toBeLessThan(Math.abs(value) * 1e-4);
    expect(Math.abs(is[0] - low)).toBeLessThan(near);
    expect(Math.abs(is[1] - high)).toBeLessThan(near);
  });

  it('every row of every profile is used by one of these, and is printed in a source that is known', () => {
    const known = new Set(readFileSync(new URL('../../data/sources.tsv', import.meta.url), 'utf8').split('\n').map((line) => line.split('\t')[0]));
    for (const [name, rows] of Object.entries(profiles.profiles)) {
      expect(KITCHENS).toContain(name);
      for (const r of rows) { expect(CASES.map((c) => c.row)).toContain(r.row); expect(r.source === 'common-practice' || known.has(r.source), r.source).toBe(true); expect(r.why).not.toBe(''); }
    }
  });
  it('is nowhere narrower than the maker’s, but where the maker measures worse', () => {
    for (const { text, bench } of CASES) {
      const { maker, viewer } = inputsOf(text, bench);
      maker.forEach((input, i) => {
        const [a, b] = endsOf(input), [c, d] = endsOf(viewer[i]!);
        if (input.row !== 'assumptions tool/scale step') expect(d - c, input.row).toBeGreaterThanOrEqual((b - a) * 0.999);
      });
    }
  });
  it('leaves what no row names, and what is assumed, as it is for the maker', () => {
    const { maker, viewer } = inputsOf(build('60 ml white rum 40 %', '25 ml pineapple juice', 'shake'));
    for (const [i, input] of maker.entries()) if (input.row.startsWith('assumptions ') || /^(bottle|larder|model)\//.test(input.key)) expect(viewer[i]).toEqual(input);
  });
  it('is as wide about what a bench or the head of a spec measured as where nobody did', () => {
    const usual = tables.assumption('place/fridge')!, text = prep('gel', '2 gold gelatin sheets, soaked 10 min in cold water', '200 ml pineapple juice at 60 °C', 'chill 4 h in the fridge');
    for (const { viewer } of [inputsOf(text, 'Places:\nfridge: 3 °C\n'), inputsOf(text.replace('Try\n', 'Try\nfridge: 3 °C\n'))]) {
      const fridge = viewer.find((input) => input.key === 'place/fridge')!;
      expect(fridge.value).toBe(3);
      expect(endsOf(fridge)).toEqual([usual.low! - 2, usual.high! - 2]);
    }
  });
  it('of a name that nobody has is the maker’s own', () => {
    const { maker, viewer } = inputsOf(build('60 ml white rum 40 %'), undefined, 'nobody');
    expect(viewer).toEqual(maker);
  });
});
