import { describe, expect, it } from 'vitest';
import { CONSTITUENTS, compile, slot } from '@washline/engine';
import { parse, readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { imbalance } from './matter.ts';

const TANNIN = CONSTITUENTS.indexOf('tannin');
const card = (method: string, ...lines: string[]) => ['A', '', `Jar (${method}):`, ...lines, '', 'Build:', '50 ml jar'].join('\n');
/** What a prep is in the end: mg/L of tannin, g of everything dissolved, gas, and the share of each solid that is out. */
function made(method: string, ...lines: string[]) {
  const { program, ctx } = compile(parse(card(method, ...lines)), tables, null), w = program.workspace();
  program.run(program.nominal, new Float64Array(program.probes.length), new Uint8Array(program.probes.length).fill(1), w);
  const prep = ctx.preps.get('jar')!, liquid = prep.content.phase('liquid');
  return { tannin: (w.s[liquid + TANNIN]! * 1e6) / w.s[prep.mL]!, out: prep.steeped.map((x) => w.s[x.reached]!), gas: w.s[liquid + slot.n2o_mol]! };
}
const brew = (...steps: string[]) => made('infusion', '9.6 g black tea leaves', '1 l water at 95 °C', ...steps, 'strain through a fine sieve');

describe('tea against print', () => {
  // tea-arizona table 1: total polyphenols of black tea, one bag of 0.96 g a 100 mL: 642, 997 and 1064 mg/L after 1, 2-3 and 4 min or more
  it.each([[1, 642], [2.5, 997], [5, 1064]])('%d min: %d mg/L of polyphenols within a tenth', (minutes, mg_L) => {
    const { tannin } = brew(`steep ${minutes} min at 95 °C`);
    expect(tannin / mg_L).toBeGreaterThan(0.9);
    expect(tannin / mg_L).toBeLessThan(1.1);
  });
  // yang-2007 as retold: cold water of 4 °C draws as much and more in a night than hot water in minutes
  it('a night in the fridge does what minutes in hot water do', () => {
    const night = made('infusion', '9.6 g black tea leaves', '1 l water at 4 °C', 'chill 10 h at 4 °C', 'strain through a fine sieve');
    expect(night.out[0]).toBeGreaterThan(brew('steep 3 min at 95 °C').out[0]! * 0.95);
    expect(made('infusion', '9.6 g black tea leaves', '1 l water at 4 °C', 'chill 5 min at 4 °C', 'strain through a fine sieve').out[0]).toBeLessThan(0.1);
  });
});

describe('contact adds up', () => {
  // exact: the law is first order, so that a time in pieces is the same time
  it('over steps at one temperature', () => { expect(brew('hold 1 min at 95 °C', 'hold 2 min at 95 °C').tannin / brew('hold 3 min at 95 °C').tannin).toBeCloseTo(1, 9); });
  it('over whatever passes before the sieve, and no longer', () => {
    const least = brew('steep 1 min').out[0]!;
    for (const more of [['boil 1 min'], ['sous-vide 2 h at 60 °C'], ['chill 4 h'], ['freeze 12 h'], ['heat to 90 °C'], ['stir 5 min'], ['rest overnight']]) expect(brew('steep 1 min', ...more).out[0], more[0]).toBeGreaterThan(least);
    expect(made('infusion', '9.6 g black tea leaves', '1 l water at 95 °C', 'steep 1 min', 'strain through a fine sieve', 'chill 12 h').out[0]).toBeCloseTo(least, 12);
  });
  it('of each solid from when it went in, by its kind', () => {
    const [mint, peel] = made('infusion', '20 g mint at 20 °C', '500 ml vodka 40 %', 'steep 2 h at 20 °C', '20 g lemon peel at 20 °C', 'steep 2 h at 20 °C', 'strain through a fine sieve').out;
    const alone = made('infusion', '500 ml vodka 40 %', '20 g lemon peel at 20 °C', 'steep 2 h at 20 °C', 'strain through a fine sieve').out[0]!;
    expect(peel! / alone).toBeCloseTo(1, 3);
    expect(mint).toBeGreaterThan(3 * peel!);
  });
  it('what goes in after a sieve steeps by itself', () => {
    const [tea, mint] = made('infusion', '10 g black tea leaves', '500 ml water at 95 °C', 'steep 3 min', 'strain through a fine sieve', 'cool to 20 °C', '20 g mint', 'steep 1 h at 20 °C', 'strain through a fine sieve').out;
    expect(tea).toBeGreaterThan(0.8);
    expect(mint).toBeGreaterThan(0.1);
    expect(mint).toBeLessThan(0.6);
  });
  it('a blender opens what lay whole', () => { expect(made('blend', '100 g pineapple', '300 ml white rum 40 %', 'blend 30 s', 'strain through a fine sieve').out[0]).toBeGreaterThan(0.9); });
});

describe('under gas', () => {
  const rapid = (...steps: string[]) => made('pressure infusion', '20 g mint', '400 ml white rum 40 %', ...steps, 'strain through a fine sieve');
  // common practice, no source: minutes in a charged siphon do what hours in a jar do
  it('minutes do what hours do, until it is vented', () => {
    const minutes = rapid('charge 2 N2O in a 500 ml siphon', 'rest 3 min', 'vent').out[0]!;
    expect(minutes).toBeGreaterThan(made('infusion', '20 g mint', '400 ml white rum 40 %', 'rest 1 h', 'strain through a fine sieve').out[0]!);
    expect(rapid('charge 2 N2O in a 500 ml siphon', 'rest 3 min', 'vent', 'rest 3 min').out[0]! - minutes).toBeLessThan(0.02);
  });
  it('no gas and no pressure is left of it, and no matter lost', () => {
    expect(rapid('charge 2 N2O in a 500 ml siphon', 'rest 3 min', 'vent').gas).toBe(0);
    expect(rapid('charge 2 N2O in a 500 ml siphon', 'rest 3 min').gas).toBe(0);
    const text = card('pressure infusion', '20 g mint', '400 ml white rum 40 %', 'charge 2 N2O in a 500 ml siphon', 'rest 3 min', 'vent', 'strain through a fine sieve');
    expect(readText(text, { tables, quick: true }).reading.preps['jar']!.figures['pressure']).toBeUndefined();
    const { off, scale } = imbalance(text, tables);
    for (const g of off) expect(Math.abs(g)).toBeLessThan(1e-9 * scale);
  });
});

describe('what was not written', () => {
  const assumed = (...lines: string[]) => readText(card('infusion', ...lines), { tables }).reading.assumed.filter((a) => a.key.startsWith('time/')).map((a) => [a.key, a.say]);
  it('is assumed, with the words that say it', () => {
    expect(assumed('10 g black tea leaves', '500 ml water at 95 °C', 'strain through a fine sieve')).toEqual([['time/tea steep', '3 min']]);
    expect(assumed('20 g mint', '500 ml vodka 40 %', 'strain through a fine sieve')).toEqual([['time/steeping', '1 h']]);
    expect(assumed('20 g mint', '500 ml vodka 40 %', 'steep 2 h', 'strain through a fine sieve')).toEqual([]);
  });
  it('a time that is known well makes it surer', () => {
    const width = (...lines: string[]) => { const { low, high } = readText(card('infusion', '10 g black tea leaves', '100 ml water at 95 °C', ...lines, 'strain through a fine sieve'), { tables }).reading.preps['jar']!.figures['density']!; return high - low; };
    expect(width('steep 3 min')).toBeLessThan(width());
  });
});

describe('a blender', () => {
  const pulp = (...lines: string[]) => readText(card('mix', ...lines), { tables, quick: true }).reading.preps['jar']!;
  // common practice, no source: strained, fruit gives most of its own water as juice; whole pieces keep theirs
  it('sets free what fruit holds: most of it runs through the cloth', () => {
    const blended = pulp('300 g pineapple', '100 ml water', 'blend 30 s', 'strain through cheesecloth'), whole = pulp('300 g pineapple', '100 ml water', 'rest 5 min', 'strain through cheesecloth');
    expect(blended.yield.value).toBeGreaterThan(260);
    expect(blended.yield.value).toBeLessThan(360);
    expect(whole.yield.value).toBeLessThan(100);
    // as sweet as the fruit's juice let down by a third
    expect(blended.figures['sugar']!.value).toBeGreaterThan(60);
    expect(blended.figures['sugar']!.value).toBeLessThan(100);
  });
  it('loses no matter, and leaves what is dry as thirsty as before', () => {
    for (const lines of [['300 g pineapple', '100 ml water', 'blend 30 s', 'strain through cheesecloth'], ['200 g strawberries', '300 ml white rum 40 %', 'blend 30 s', 'strain through a fine sieve']]) {
      const { off, scale } = imbalance(card('mix', ...lines), tables);
      for (const g of off) expect(Math.abs(g)).toBeLessThan(1e-9 * scale);
    }
    const dry = (...steps: string[]) => pulp('40 g cinnamon', '400 ml white rum 40 %', ...steps, 'strain through a fine sieve').yield.value;
    expect(Math.abs(dry('blend 30 s') - dry('rest 24 h'))).toBeLessThan(4);
  });
});
