import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const read = (text: string, variant?: string) => readText(text, { tables, ...(variant ? { variant } : {}) });
const prep = (text: string, name: string) => { const p = read(text).reading.preps[name]; if (!p) throw new Error(`no prep ${name}`); return p; };
const value = (p: { figures: Readonly<Record<string, { value: number }>> }, name: string) => p.figures[name]!.value;

const strong_kg = (r: { figures: Readonly<Record<string, { value: number }>> }) => r.figures['mass']!.value / 1000;

describe('preps by hand arithmetic', () => {
  it('shares of the others: 50 g/L of acid in 200 ml of water, and 0.8 % of a gum in 500 g', () => {
    const text = 'Check\n\nSour (mix):\n200 ml water\n50 g/L citric acid\n\nThick (mix):\n500 g water\n0.8 % xanthan\n\nBuild:\n20 ml sour\n20 ml thick';
    expect(value(prep(text, 'sour'), 'mass')).toBeCloseTo(200 * 0.9982 + 10, 1);
    expect(value(prep(text, 'thick'), 'mass')).toBeCloseTo(500 * (1 + 0.008), 0);
  });
  it('equal weight of sugar makes a 50 % syrup: 1229.6 kg/m3 (ICUMSA SPS-4)', () => {
    const p = prep('Check\n\nSyrup (syrup):\n300 g water\nsugar, equal weight to water\n\nBuild:\n20 ml syrup', 'syrup');
    expect(value(p, 'mass')).toBeCloseTo(600, 0);
    expect(value(p, 'density')).toBeCloseTo(1229.6, 0);
  });
  it('all of and the rest of take what there is, in order of making', () => {
    const { reading } = read('Check\n\nBase (mix):\n300 ml water\n\nHalf (mix):\n100 ml base\n\nTail (mix):\nthe rest of the base\n\nBuild:\nall of the half\n10 ml tail');
    expect(reading.preps['tail']!.yield.value).toBeCloseTo(200, 3);
    expect(reading.figures['volume']!.value).toBeCloseTo(110, 3);
  });
  it('a prep that is asked for more than it gives stops, with what is missing', () => {
    const { reading } = read('Check\n\nBase (mix):\n50 ml white rum 40 %\n\nBuild:\n80 ml base');
    const f = reading.findings.find((x) => x.code === 'prep-short')!;
    expect(f.severity).toBe('stop');
    expect(f.margin!.value).toBeCloseTo(30, 6);
  });
  it('foam in ml is foam as it stands, in g it is mass: four times the liquid at 300 % overrun', () => {
    const cloud = 'Cloud (siphon foam):\n2 gold gelatin sheets, soaked 10 min in cold water\n200 ml water at 60 °C\ncool to 20 °C\ncharge 1 N2O in a 500 ml siphon\nchill 4 h at 4 °C\n\nBuild:\n60 ml white rum 40 %\n';
    const ml = read(`Check\n\n${cloud}top with 60 ml cloud`).reading, g = read(`Check\n\n${cloud}top with 15 g cloud`).reading;
    const foam = (r: typeof ml) => r.glass!.layers.find((l) => l.kind === 'foam')!;
    expect(foam(ml).mL).toBeCloseTo(60, 6);
    expect(ml.figures['volume']!.value).toBeCloseTo(60 + 15, 0);          // a tenth goes by contraction
    expect(g.figures['mass']!.value).toBeCloseTo(60 * 0.94805 + 15, 1);
    expect(foam(g).mL).toBeCloseTo(15 / 1.0 * 4, 0);
  });
  it('a wash loses its fat and a few per cent of the spirit, the strength stays', () => {
    const text = 'Check\n\nWash (fat wash):\n300 ml white rum 40 %\n40 g virgin coconut oil, melted at 40 °C\nrest 4 h at 30 °C\nfreeze 12 h at -18 °C\nstrain through cheesecloth\n\nBuild:\n60 ml wash';
    const p = prep(text, 'wash');
    expect(p.yield.value / 300).toBeGreaterThan(0.93);
    expect(p.yield.value / 300).toBeLessThan(0.98);
    expect(value(p, 'strength')).toBeCloseTo(40, 2);
  });
  it('a butter wash takes up the butter water: 150 g in 700 ml bring 40.0 to about 38.7 % vol (craft literature arithmetic)', () => {
    const text = 'Check\n\nWash (fat wash):\n700 ml white rum 40 %\n150 g unsalted butter, melted at 45 °C\nrest 4 h at 40 °C\nfreeze 12 h at -18 °C\nstrain through cheesecloth\n\nBuild:\n60 ml wash';
    expect(value(prep(text, 'wash'), 'strength')).toBeGreaterThan(38.3);
    expect(value(prep(text, 'wash'), 'strength')).toBeLessThan(39);
  });
  it('a milk-cleared punch loses casein and fat, keeps lactose and stays milk for an allergy', () => {
    const text = 'Check\n\nPunch (clarify with milk):\n200 ml whole milk\n400 ml black tea\n200 ml white rum 40 %\n100 ml lemon juice\n80 g sugar\nrest 1 h\nstrain through a paper filter\n\nBuild:\n90 ml punch';
    const { reading } = read(text);
    const p = reading.preps['punch']!;
    // V = base + milk - 0.2..0.4 of the milk - a paper (craft notes, yields)
    expect(p.yield.value).toBeGreaterThan(950 - 0.4 * 200 - 15);
    expect(p.yield.value).toBeLessThan(950 - 0.2 * 200 + 10);
    expect(p.turbidity).toBe(0);
    expect(reading.allergens).toContainEqual(expect.objectContaining({ group: 'milk', hidden: true, certain: true }));
    expect(reading.vegan).toBe(false);
    expect(reading.findings.filter((f) => f.severity === 'stop')).toEqual([]);
  });
  it('agar clearing keeps 70 to 85 % and dilutes by the agar water', () => {
    const text = 'Check\n\nClear (clarify with agar):\n0.75 g agar in 75 ml water\nboil 2 min, covered\n300 ml pineapple juice\nchill 1 h at 4 °C\nstrain through cheesecloth\n\nBuild:\n60 ml clear';
    const p = prep(text, 'clear');
    expect(p.yield.value / 375).toBeGreaterThan(0.69);
    expect(p.yield.value / 375).toBeLessThan(0.86);
    const juice = prep('Check\n\nClear (mix):\n300 ml pineapple juice\n\nBuild:\n60 ml clear', 'clear');
    expect(value(p, 'sugar') / value(juice, 'sugar')).toBeCloseTo(300 / 375, 1);
  });
  it('reducing to 100 ml leaves 100 ml and all the sugar', () => {
    const p = prep('Check\n\nSyrup (syrup):\n200 ml water\n100 g sugar\nreduce to 150 ml\n\nBuild:\n20 ml syrup', 'syrup');
    expect(p.yield.value).toBeCloseTo(150, 0);
    expect((value(p, 'sugar') * p.yield.value) / 1000).toBeCloseTo(100, 0);
  });
  it('readiness adds the steps and the slowest prep that is needed', () => {
    const text = 'Check\n\nWash (mix):\n300 ml white rum 40 %\nrest 4 h\n\nCloud (mix):\n100 ml wash\nrest 2 h\n\nBuild:\n60 ml cloud';
    expect(prep(text, 'wash').ready_after).toBe('PT4H');
    expect(prep(text, 'cloud').ready_after).toBe('PT6H');
  });
  it('serves: 4 divides the drink, not the preps', () => {
    const one = read('Check\nserves: 4\n240 ml white rum 40 %\n120 ml lime juice').reading;
    expect(one.figures['volume']!.value).toBeCloseTo(90, 0);
    expect(one.figures['strength']!.value).toBeGreaterThan(26);
  });
  it('a variant takes the place of the section it restates', () => {
    const text = 'Check\n\nSweet (syrup):\n100 g sugar\n100 g water\n\nBuild:\n60 ml white rum 40 %\n20 ml sweet\n\nrich / Sweet (syrup):\n200 g sugar\n100 g water';
    expect(read(text, 'rich').reading.figures['sugar']!.value).toBeGreaterThan(read(text).reading.figures['sugar']!.value * 1.25);
    expect(read(text, 'none').problems[0]!.code).toBe('variant-unknown');
  });
  it('a ring is a problem and the rest is still read', () => {
    const { reading, problems } = read('Check\n\nOne (mix):\n50 ml two\n\nTwo (mix):\n50 ml one\n\nBuild:\n60 ml white rum 40 %');
    expect(problems.some((p) => p.code === 'prep-ring')).toBe(true);
    expect(reading.figures['volume']!.value).toBeCloseTo(60, 6);
  });
  it('quinine as a label states it is carried like matter: 25 mL of a cordial of 260 mg/kg in a drink', () => {
    const one = read('Check\nglass: collins\n50 ml gin 43 %\n25 ml tonic cordial, quinine 260 mg/kg\n100 ml soda water').reading;
    expect(one.findings.filter((f) => f.code === 'hazard-dose')).toEqual([]);
    const strong = read('Check\nglass: collins\n50 ml gin 43 %\n25 ml tonic cordial, quinine 900 mg/kg\n100 ml soda water').reading.findings.find((f) => f.code === 'hazard-dose')!;
    // 25 mL at about 1.19 g/mL bring 26.8 mg; 21 CFR 172.575 allows 83 mg/kg
    expect(strong.margin!.value + 83).toBeCloseTo((26.8 / strong_kg(one)) , -1);
    expect(read('Check\n25 ml lime juice, 250 mg/kg').problems[0]!.code).toBe('number-unused');
  });
  it('a siphon: two 8 g chargers over 318 ml in 750 ml stand at about 10.8 bar at 4 °C (Sander 2023 Henry constant)', () => {
    const { reading } = read('Check\n\nCloud (siphon foam):\n2 gold gelatin sheets, soaked 10 min in cold water\n310 ml water at 60 °C\ncool to 20 °C\ncharge 2 N2O in a 500 ml siphon\nchill 12 h at 4 °C\n\nBuild:\n60 ml white rum 40 %\ntop with 15 g cloud');
    expect(reading.preps['cloud']!.figures['pressure']!.value).toBeGreaterThan(10);
    expect(reading.preps['cloud']!.figures['pressure']!.value).toBeLessThan(12);
  });
});
