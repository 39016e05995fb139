import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const read = (lines: readonly string[], later: 'alone' | null = null) => readText(lines.join('\n'), { tables, quick: true, ...(later ? { later } : {}) }).reading;
const slush = (step: string, ...build: string[]) => ['A', 'Slush (mix):', '300 ml white rum 40 %', '300 ml water', step, 'Build:', ...build];
const cubes = (...build: string[]) => ['A', 'Cubes (ice):', '600 g water', 'freeze 24 h at -18 °C', 'Build:', ...build];

// ice 334 J/g and 2.04 J/(g K) between -18 and 0 °C, water 4.19 J/(g K): CRC Handbook
const FUSION = 333.6, ICE = 2.04, WATER = 4.19;

describe('a prep from the freezer', () => {
  // Melinder 2010, ethanol-water: what freezes at -18 °C has 28 % ethanol by mass
  it('says how much of its water is ice, as cold as the freezer after a day', () => {
    const { slush: prep } = read(slush('freeze 24 h at -18 °C', '90 ml slush')).preps;
    const ethanol = prep!.figures['ethanol']!.value, water = prep!.figures['mass']!.value - ethanol, ice = water - (ethanol * 0.72) / 0.28;
    expect(prep!.figures['temperature']!.value).toBeCloseTo(-18, 0);
    expect(Math.abs(prep!.frozen!.ice.value - (100 * ice) / water)).toBeLessThan(3);
    expect(prep!.frozen!.state).toBe('slush');
    expect(prep!.stages.at(-1)!.figures['frozen']!.value).toBeCloseTo(prep!.frozen!.ice.value, 9);
  });
  it('the longer it stands, the more of it is ice and the colder it is; before it freezes there is none', () => {
    const at = (time: string) => read(slush(`freeze ${time} at -18 °C`, '90 ml slush')).preps['slush']!.figures;
    const all = ['10 min', '3 h', '5 h', '24 h'].map(at);
    expect(all[0]!['frozen']!.value).toBe(0);
    for (let i = 1; i < all.length; i++) {
      expect(all[i]!['frozen']!.value).toBeGreaterThanOrEqual(all[i - 1]!['frozen']!.value);
      expect(all[i]!['temperature']!.value).toBeLessThan(all[i - 1]!['temperature']!.value + 1e-9);
    }
    expect(all[2]!['frozen']!.value).toBeGreaterThan(0);
    expect(all[2]!['frozen']!.value).toBeLessThan(all[3]!['frozen']!.value);
  });
  it('stays what it is in mass, strength and sugar: its ice dilutes nothing', () => {
    const [frozen, chilled] = ['freeze 24 h at -18 °C', 'chill 24 h at 4 °C'].map((step) => read(slush(step, '60 ml slush', '30 ml lime juice')).figures);
    for (const name of ['mass', 'strength', 'volume', 'sugar', 'ethanol']) expect(frozen![name]!.value).toBeCloseTo(chilled![name]!.value, 9);
  });
  it('poured on as slush it leaves its part of the ice behind with the liquid: the same share, never more ice than water', () => {
    // Conservation of mass, no source needed: what stays in a vessel is of the same slush
    const lines = (more: readonly string[]) => ['A', 'Bottle (mix):', '90 ml dry vermouth 18 %', '590 ml water', 'freeze 24 h at -18 °C', '', 'Cup:', '90 ml bottle', ...more, '', 'Build:', '60 ml cup'];
    const plain = read(lines([])).preps['cup']!, poured = read(lines(['pour into a jar'])).preps['cup']!, strained = read(lines(['strain through a fine sieve'])).preps['cup']!;
    expect(plain.frozen!.ice.value).toBeGreaterThan(80);
    for (const cup of [poured, strained]) {
      expect(cup.yield.value).toBeLessThan(plain.yield.value);
      expect(cup.frozen!.ice.value).toBeCloseTo(plain.frozen!.ice.value, 3);
      expect(cup.frozen!.ice.value).toBeLessThanOrEqual(100);
      expect(cup.figures['temperature']!.value).toBeCloseTo(plain.figures['temperature']!.value, 3);
    }
  });
  it('is as frozen whatever the word that holds it there', () => {
    const by = (step: string) => read(slush(step, '90 ml slush')).preps['slush']!.figures['frozen']!.value, freeze = by('freeze 24 h at -18 °C');
    expect(freeze).toBeGreaterThan(20);
    for (const step of ['hold 24 h at -18 °C', 'rest 24 h at -18 °C', 'cool to -18 °C']) expect(by(step), step).toBeCloseTo(freeze, 0);
    const held = read(slush('chill 2 h at 4 °C', '90 ml slush', 'hold 8 h at -18 °C')).figures;
    expect(held['frozen']!.value).toBeGreaterThan(20);
  });
  it('so is what is carbonated, strained or left in a cold that is no freezer: water at -3 °C is ice', () => {
    // ethanol of 7 % by mass freezes at -3.0 °C (CRC Handbook, from memory): 1.6 g of ethanol then keep 21 g of 103 g of water liquid
    for (const step of ['carbonate at 2.5 bar, -3 °C', 'charge with CO2 at -3 °C', 'strain through a fine sieve at -3 °C', 'cool to -3 °C', 'chill 72 h at -3 °C']) {
      const mix = read(['A', 'Mix (mix):', '100 ml water', '5 ml white rum 40 %', step, 'Build:', '60 ml mix']).preps['mix']!.figures;
      expect(mix['temperature']!.value, step).toBeCloseTo(-3, 0);
      expect(mix['frozen']!.value, step).toBeGreaterThan(70);
      expect(mix['frozen']!.value, step).toBeLessThan(82);
    }
  });
  it('so is what stands where preps are said to be kept', () => {
    const kept = (...lines: string[]) => read(['A', ...lines, '100 g cup']), told = kept('preps at: -18 °C', 'Cup:', '100 g white rum 40 %', '200 g water', 'stir 10 s', 'Build:');
    const left = kept('Cup:', '100 g white rum 40 %', '200 g water', 'freeze 48 h at -18 °C', 'Build:');
    for (const name of ['frozen', 'temperature']) expect(told.preps['cup']!.figures[name]!.value, name).toBeCloseTo(left.preps['cup']!.figures[name]!.value, 6);
    expect(told.figures['temperature']!.value).toBeCloseTo(left.figures['temperature']!.value, 6);
    expect(told.figures['frozen']!.value).toBeGreaterThan(50);
  });
  it('what is warmed again leaves no cold in its vessel: stirred on ice it never comes below its own freezing point', () => {
    const { stages } = read(['A', 'Brew (mix):', '5 ml white rum 40 %', '25 ml whole milk', 'Build:', '1 ml brew', '10 g lemon peel', 'freeze 12 h at -18 °C', 'sous vide', 'stir 20 s']);
    const { temperature, freezing_point: freezes } = stages.at(-1)!.figures;
    expect(temperature!.value).toBeGreaterThan(freezes!.value - 0.02);
  });
  it('what steeps in it takes none of its ice away', () => {
    const { infused, left } = { infused: 'infuse 24 h at -18 °C', left: 'rest 24 h at -18 °C' };
    const of = (step: string) => read(['A', 'Slush (infusion):', '300 ml water', '100 ml white rum 40 %', '3 g black tea leaves', step, 'Build:', '90 ml slush']).figures;
    expect(of(infused)['frozen']!.value).toBeCloseTo(of(left)['frozen']!.value, 0);
    expect(of(infused)['temperature']!.value).toBeCloseTo(of(left)['temperature']!.value, 0);
  });
  it.each([['thaw', ['freeze 24 h at -18 °C', 'thaw 48 h at 4 °C']], ['strain', ['freeze 24 h at -18 °C', 'strain through a coffee filter']], ['boil', ['freeze 24 h at -18 °C', 'boil 2 min']]] as const)('is liquid again after it: %s', (_, steps) => {
    expect(read(['A', 'Slush (mix):', '300 ml water', '60 ml white rum 40 %', ...steps, 'Build:', '90 ml slush']).preps['slush']!.frozen).toBeUndefined();
  });
});

describe('what it does to the drink', () => {
  it('its ice melts there: 60 g of it at -18 °C cool 100 g of water from 60 °C to what its heat of fusion leaves', () => {
    const drink = read(cubes('100 g water at 60 °C', '60 g cubes', 'serve')).figures;
    const ends = (100 * WATER * 60 - 60 * (ICE * 18 + FUSION)) / (160 * WATER);
    expect(Math.abs(drink['temperature']!.value - ends)).toBeLessThan(0.3);
    expect(drink['frozen']!.value).toBe(0);
  });
  it('no more of it than the heat allows: the rest stays ice, at 0 °C', () => {
    const drink = read(cubes('100 g water at 10 °C', '60 g cubes', 'serve')).figures;
    const left = 60 - (100 * WATER * 10 - 60 * ICE * 18) / FUSION;
    expect(drink['temperature']!.value).toBeCloseTo(0, 1);
    expect(Math.abs((drink['frozen']!.value / 100) * 160 - left)).toBeLessThan(1);
  });
  it.each([['a measure that comes at -18 °C', '60 g water at -18 °C'], ['one whose word says so', '60 g water, frozen']])('%s brings its ice as a prep from the freezer does', (_, line) => {
    const warm = read(['A', '100 g water at 60 °C', line, 'stir 20 s']).figures, cold = read(['A', '100 g water at 10 °C', line, 'stir 20 s']).figures;
    expect(Math.abs(warm['temperature']!.value - (100 * WATER * 60 - 60 * (ICE * 18 + FUSION)) / (160 * WATER))).toBeLessThan(0.3);
    const left = 60 - (100 * WATER * 10 - 60 * ICE * 18) / FUSION;
    expect(cold['temperature']!.value).toBeCloseTo(0, 1);
    expect(Math.abs((cold['frozen']!.value / 100) * 160 - left)).toBeLessThan(1);
  });
  it('and is the same where nothing is done with it but pouring it on', () => {
    const of = (...steps: string[]) => read(['A', '60 g water at 40 °C', '95 g water at -3 °C', ...steps]).figures;
    const still = of('serve');
    for (const steps of [['strain through cheesecloth'], ['dry shake 10 s', 'strain'], ['stir 10 s']]) {
      expect(of(...steps)['temperature']!.value, steps[0]).toBeCloseTo(still['temperature']!.value, 1);
      // a vessel keeps its drops
      expect(Math.abs(of(...steps)['frozen']!.value - still['frozen']!.value), steps[0]).toBeLessThan(1.5);
    }
    expect(still['frozen']!.value).toBeGreaterThan(30);
  });
  it('frozen fruit in a blender chills by the ice in its juice', () => {
    const blended = (fruit: string) => read(['A', '60 ml white rum 40 %', fruit, 'blend 20 s with 100 g crushed']).figures;
    const fresh = blended('100 g strawberries at 4 °C'), frozen = blended('100 g strawberries, frozen');
    expect(frozen['temperature']!.value).toBeLessThan(fresh['temperature']!.value - 1.5);
    expect(frozen['dilution']!.value).toBeLessThan(0.7 * fresh['dilution']!.value);
  });
  it('chills more than the same as cold and liquid would, by its heat of fusion', () => {
    const figures = read(slush('freeze 24 h at -18 °C', '60 ml slush', '60 ml white rum 40 % at 20 °C', 'serve')), prep = figures.preps['slush']!;
    const grams = prep.figures['mass']!.value / prep.figures['volume']!.value * 60, ethanol = prep.figures['ethanol']!.value / prep.figures['mass']!.value * grams;
    const ice = (prep.figures['frozen']!.value / 100) * (grams - ethanol), liquid = grams - ice, rum = 57;
    // all by way of 25 °C: heat of mixing -750, -785 and -720 J/mol at 28, 33 and 25 % ethanol by mass (memory: Larkin and Pemberton's curve, least -780 at a
    // sixth by moles), heat capacities 4.15, 4.05 and 4.25 J/(g K) (memory: ethanol-water tables from -18 to 25 °C)
    const mol = (g: number, share: number) => (g * share) / 46.07 + (g * (1 - share)) / 18.015;
    const before = -750 * mol(liquid, 0.28) - liquid * 4.15 * 43 - 785 * mol(rum, 0.33) - rum * 4.05 * 5 - ice * (WATER * 25 + FUSION + ICE * 18), all = grams + rum;
    const ends = 25 + (before + 720 * mol(all, 0.25)) / (all * 4.25), celsius = figures.figures['temperature']!.value;
    expect(Math.abs(celsius - ends)).toBeLessThan(1);
    expect(celsius).toBeLessThan((grams * 4.15 * -18 + rum * 4.05 * 20) / (grams * 4.15 + rum * 4.05) - 8);
  });
  it('shaken on ice it takes ice of its own with it, dilution counts the other alone', () => {
    const { stages } = read(slush('freeze 24 h at -18 °C', '60 ml slush', '60 ml white rum 40 %', 'shake 12 s over 200 g cubes at -5 °C', 'strain'));
    const shake = stages[0]!;
    expect(Object.values(shake.balance_kJ!).reduce((a, b) => a + b, 0)).toBeCloseTo(0, 6);
    expect(shake.figures['temperature']!.value).toBeLessThan(-5);
    expect(shake.figures['ice_left']!.value).toBeLessThan(215);
  });
  it('left alone, a slush warms slowly along its freezing point and is liquid in the end', () => {
    const { figures, later } = read(slush('freeze 24 h at -18 °C', '90 ml slush', 'serve'), 'alone');
    const all = [figures['temperature']!.value, ...later!.map((l) => l.figures['temperature']!.value)];
    for (let i = 1; i < all.length; i++) expect(all[i]!).toBeGreaterThan(all[i - 1]!);
    const spirit = read(['A', 'Slush (mix):', '600 ml white rum 40 %', 'freeze 24 h at -18 °C', 'Build:', '90 ml slush', 'serve'], 'alone').later!;
    expect(all.at(-1)!).toBeLessThan(spirit.at(-1)!.figures['temperature']!.value);
  });
});
