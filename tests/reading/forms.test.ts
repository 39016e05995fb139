import { describe, expect, it } from 'vitest';
import { compile, pointAt, Z95 } from '@washline/engine';
import { parse, readText } from '@washline/spec';
import { tables } from '@washline/tables';

/** One thing put in, as the run takes it: mL or g (which of both is said), and the ends of what is uncertain about its size where that is said. */
type Wanted = readonly [thing: string, amount: number, unit: 'ml' | 'g', low?: number, high?: number];

/** What the program pours of each thing, and how far it may go when every input of its line is at its ends. */
function poured(text: string): { thing: string; ml: number; g: number; low: number; high: number; other: string[]; optional: boolean }[] {
  const c = compile(parse(text), tables);
  const { program, ctx } = c, w = program.workspace(), out = new Float64Array(program.probes.length), want = new Uint8Array(out.length);
  const puts = [...[...ctx.preps.values()].flatMap((p) => p.puts), ...(c.build?.puts ?? [])];
  program.run(program.nominal, out, want, w);
  const nominal = puts.map((p) => [w.s[p.g]!, w.s[p.g]! * w.s[p.source.mL]!] as const);
  const low = puts.map((_, k) => nominal[k]![0]), high = [...low];
  program.inputs.forEach((input, i) => {
    if (input.spread.kind === 'exact') return;
    for (const x of [-Z95, Z95].map((z) => pointAt(input.spread, input.value, z))) {
      program.run(Float64Array.from(program.nominal, (v, k) => (k === i ? x : v)), out, want, w);
      puts.forEach((p, k) => { low[k] = Math.min(low[k]!, w.s[p.g]!); high[k] = Math.max(high[k]!, w.s[p.g]!); });
    }
  });
  return puts.map((p, k) => ({
    thing: p.measure.thing.words, g: nominal[k]![0], ml: nominal[k]![1], low: low[k]! / nominal[k]![0], high: high[k]! / nominal[k]![0],
    other: (p.measure.alternatives ?? []).map((t) => t.words), optional: p.measure.optional,
  }));
}

// Sizes: NIST Handbook 44 appendix C (US fluid ounce 29.5735, teaspoon 4.92892, tablespoon 14.7868, gill 118.294 mL, grain 0.06479891 g, pound 453.592 g); metric spoons 5 and
// 15 mL (21 CFR 101.9; kitchens of de, fr, es, it, sv); spoonfuls of dry things by USDA SR28 WEIGHT (sugar 200 g and salt 292 g a cup); UK order of 1988 (25 mL). The rest is common practice, no source.
const FORMS: readonly (readonly [form: string, wanted: readonly Wanted[]])[] = [
  ['Mix (mix):\n1000 g pineapple juice\nagar, 2 g per kg of juice\nBuild:\n10 ml mix', [['pineapple juice', 1000, 'g'], ['agar', 2, 'g'], ['mix', 10, 'ml']]],
  ['Mix (mix):\n200 g lime juice\nsugar, equal weight to juice\nBuild:\n10 ml mix', [['lime juice', 200, 'g'], ['sugar', 200, 'g'], ['mix', 10, 'ml']]],
  ['equal parts gin, red bitter, sweet vermouth', [['gin', 30, 'ml', 0.75, 1.5], ['red bitter', 30, 'ml'], ['sweet vermouth', 30, 'ml']]],
  ['2 : 1 : ¾ rum, lime, syrup', [['rum', 60, 'ml', 0.75, 1.5], ['lime', 30, 'ml'], ['syrup', 22.5, 'ml']]],
  ['15 ml each lime juice and pineapple syrup', [['lime juice', 15, 'ml'], ['pineapple syrup', 15, 'ml']]],
  ['1 oz + 1 barspoon lemon', [['lemon', 33.57, 'ml', 0.93, 1.12]]],
  ['scant ¾ oz lime', [['lime', 20.2, 'ml', 0.92, 1.08]]],
  ['fat ¾ oz lime', [['lime', 24.2, 'ml', 0.93, 1.08]]],
  ['2 oz rum @ 57 %', [['rum', 59.147, 'ml']]],
  ['60 mls vodka', [['vodka', 60, 'ml']]],
  ['60 cc gin', [['gin', 60, 'ml']]],
  ['1,000 ml water', [['water', 1000, 'ml', 0.95, 1.05]]],
  ['1 000 ml water', [['water', 1000, 'ml']]],
  ['2T sugar', [['sugar', 25.1, 'g', 0.92, 1.36]]],
  ['1t salt', [['salt', 6, 'g']]],
  ['1 (14 oz) can coconut milk', [['coconut milk', 414.03, 'ml', 0.95, 1.05]]],
  ['1 packet powdered gelatin (7 g)', [['powdered gelatin', 7, 'g']]],
  ['1 stick butter', [['butter', 113.4, 'g']]],
  ['a fifth of bourbon', [['bourbon', 757.08, 'ml']]],
  ['2 shots espresso', [['espresso', 59.2, 'ml', 0.84, 1.19]]],
  ['1 measure gin', [['gin', 25, 'ml', 0.94, 1.4]]],
  ['a double gin', [['gin', 50, 'ml', 0.92, 1.4]]],
  ['1 dsp honey', [['honey', 10, 'ml']]],
  ['1 nip gin', [['gin', 30, 'ml']]],
  ['2 EL Zucker', [['Zucker', 25.5, 'g']]],
  ['1 TL Zucker', [['Zucker', 4.25, 'g']]],
  ['1 BL Zuckersirup', [['Zuckersirup', 4, 'ml', 0.51, 1.95]]],
  ['1 Spritzer Zitronensaft', [['Zitronensaft', 0.8, 'ml', 0.15 / 0.8, 1.25 / 0.8]]],
  ['1 Schuss Rum', [['Rum', 14.1, 'ml', 10 / 14.1, 20 / 14.1]]],
  ['1 Msp. Salz', [['Salz', 0.2, 'g', 0.5, 2]]],
  ['2 c. à s. de sirop', [['sirop', 30, 'ml']]],
  ['1 c. à c. de rhum', [['rhum', 5, 'ml']]],
  ["1 trait d'absinthe", [['absinthe', 0.8, 'ml', 0.15 / 0.8, 1.25 / 0.8]]],
  ['1 cda ron', [['ron', 15, 'ml']]],
  ['1 cdta ron', [['ron', 5, 'ml']]],
  ['1 golpe ron', [['ron', 0.8, 'ml']]],
  ['1 cucchiaino rum', [['rum', 5, 'ml']]],
  ['1 dose de cachaça', [['cachaça', 50, 'ml']]],
  ['1 msk gin', [['gin', 15, 'ml']]],
  ['1 tsk gin', [['gin', 5, 'ml']]],
  ['1 krm salt', [['salt', 1.22, 'g']]],
  ['⅙ gill dry gin', [['dry gin', 19.716, 'ml', 0.94, 1.2]]],
  ['⅔ dry gin, ⅓ French vermouth', [['dry gin', 50, 'ml', 0.8, 1.2], ['French vermouth', 25, 'ml']]],
  ['the white of an egg', [['egg white', 32, 'g']]],
  ['yolks of 3 eggs', [['egg yolk', 54, 'g']]],
  ['1 lb. loaf sugar', [['loaf sugar', 453.592, 'g']]],
  ['20 grains citric acid', [['citric acid', 1.29598, 'g']]],
  ['absinthe rinse', [['absinthe', 2, 'ml', 0.5, 2]]],
  ['3 sprays peated whisky', [['peated whisky', 0.45, 'ml', 0.08 / 0.15, 0.2 / 0.15]]],
  ['2 cm ginger', [['ginger', 10, 'g', 0.6, 1.8]]],
  ['1 bunch mint', [['mint', 34.6, 'g', 20 / 34.6, 60 / 34.6]]],
  ['4 cardamom pods', [['cardamom pods', 0.8, 'g', 0.6, 1.5]]],
  ['1 swath orange peel', [['orange peel', 1.5, 'g', 1 / 3, 2]]],
  ['bourbon or rye, 2 oz', [['bourbon', 59.147, 'ml']]],
  ['30 ml lime (or lemon)', [['lime', 30, 'ml']]],
  ['Cloud (siphon foam):\n230 g pineapple juice\n20 g simple syrup 1:1\nBuild:\nall of the cloud', [['pineapple juice', 230, 'g'], ['simple syrup', 20, 'g'], ['cloud', 250, 'g']]],
  ['Plain syrup (syrup):\n100 g sugar\n100 g water\nBuild:\n50 g plain syrup\nthe rest of the syrup', [['sugar', 100, 'g'], ['water', 100, 'g'], ['plain syrup', 50, 'g'], ['syrup', 150, 'g']]],
  ['Tea (mix):\n300 g water\nBuild:\n⅔ of the tea', [['water', 300, 'g'], ['tea', 200, 'g']]],
  ['optional: 2 dashes absinthe', [['absinthe', 1.6, 'ml', 0.15 / 0.8, 1.25 / 0.8]]],
  ['salt to taste', [['salt', 0.3, 'g', 1 / 6, 10 / 3]]],
  ['2 oz (60 ml) gin', [['gin', 59.147, 'ml', 0.94, 1.08]]],
  ['2 oz / 60 ml gin', [['gin', 59.147, 'ml']]],
  ['2 oz plus 1 tsp gin', [['gin', 64.076, 'ml']]],
  ['1 cup (250 ml) water', [['water', 250, 'ml', 0.95, 1.05]]],
];

/** Forms that are refused, with the reason and its column. */
const REFUSED: readonly (readonly [string, string, number])[] = [
  ['fat ¾ oz', 'no-thing', 1], ['scant ¾ oz', 'no-thing', 1], ['a double', 'no-thing', 1],
];

describe('every form reaches the run', () => {
  it.each(FORMS)('%s', (form, wanted) => {
    const text = `A\n${form}\n`, found = poured(text);
    expect(found.map((f) => f.thing)).toEqual(wanted.map(([thing]) => thing));
    for (const [k, [thing, amount, unit, low, high]] of wanted.entries()) {
      const one = found[k]!;
      expect(one[unit] / amount, `${thing} ${one[unit]} ${unit}`).toBeCloseTo(1, amount < 1 ? 1.5 : 2);
      if (low !== undefined) expect(one.low, `${thing} low`).toBeCloseTo(low, 1.3);
      if (high !== undefined) expect(one.high, `${thing} high`).toBeCloseTo(high, 1.3);
    }
    expect(readText(text, { tables }).problems).toEqual([]);
  });
  it.each(REFUSED)('refuses %s', (form, code, column) => {
    const { problems } = readText(`A\n60 ml gin\n${form}\n`, { tables });
    expect(problems.map((p) => [p.code, p.where.line, p.where.column])).toEqual([[code, 3, column]]);
    expect(problems[0]!.message).toContain(form.replace('a double', 'double').split(' ').at(-1)!);
  });
  it('takes the first of two named, and lists the second', () => {
    const { reading } = readText('A\nbourbon or rye, 2 oz\n30 ml lime (or lemon)', { tables });
    expect(reading.assumed.filter((a) => a.key.startsWith('swap/')).map((a) => [a.key, a.value])).toEqual([['swap/bourbon', 'bourbon'], ['swap/lime', 'lime']]);
    expect(poured('A\nbourbon or rye, 2 oz\n').map((p) => p.other)).toEqual([['rye']]);
    expect(poured('A\noptional: 2 dashes absinthe\n')[0]!.optional).toBe(true);
  });
});

// NIST Handbook 44 appendix C for us; UK Weights and Measures Act 1985 for uk (gallon 4.54609 L); 20 mL for the Australian tablespoon; 250 mL metric cup; the rest common practice, no source.
describe('measures: settles a unit', () => {
  const CASES: readonly (readonly [unit: string, sizes: Readonly<Partial<Record<'us' | 'uk' | 'au' | 'metric' | 'us-1910', number>>>])[] = [
    ['tablespoon', { us: 14.787, uk: 15, au: 20, metric: 15 }],
    ['teaspoon', { us: 4.929, uk: 5, au: 5, metric: 5 }],
    ['cup', { us: 236.588, uk: 250, au: 250, metric: 250 }],
    ['gill', { us: 118.294, uk: 142.065 }],
    ['pint', { us: 473.176, uk: 568.261, au: 568.261 }],
    ['quart', { us: 946.353, uk: 1136.52 }],
    ['oz', { us: 29.5735, uk: 28.413, 'us-1910': 29.5735 }],
    ['fluid ounce', { us: 29.5735, uk: 28.413 }],
    ['measure', { uk: 25 }],
    ['jigger', { us: 44.360, 'us-1910': 59.147 }],
    ['pony', { us: 29.5735, 'us-1910': 25.7 }],
    ['wineglass', { 'us-1910': 59.147 }],
    ['dash', { us: 0.8 }],
  ];
  it.each(CASES.flatMap(([unit, sizes]) => Object.entries(sizes).map(([system, mL]) => [unit, system, mL] as const)))('1 %s under %s is %f mL', (unit, system, mL) => {
    const text = `A\nmeasures: ${system}\n1 ${unit} gin\n60 ml water\n`;
    expect(poured(text)[0]!.ml / mL).toBeCloseTo(1, 4);
    expect(readText(text, { tables }).reading.findings.filter((f) => f.code === 'unit-two-meanings')).toEqual([]);
  });
  it('whatever the case it is written in', () => {
    expect(poured('A\nmeasures: UK\n1 gill gin\n')[0]!.ml).toBeCloseTo(142.065, 2);
  });
});
