import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { imbalance } from './matter.ts';

const card = (...lines: string[]) => ['A', '', 'Oleo (oleo saccharum):', ...lines, '', 'Build:', '10 ml oleo', '60 ml white rum 40 %'].join('\n');
const made = (...lines: string[]) => readText(card(...lines), { tables, quick: true }).reading.preps['oleo']!;
const PEEL = ['100 g sugar', '50 g lemon peel'], SIEVE = 'strain through a fine sieve';

describe('oleo saccharum', () => {
  // common practice, no source: two of sugar to one of peel rests four to twenty-four hours and gives 60 to 80 % of the sugar's mass as syrup
  it.each([12, 24])('after %d h it gives 60 to 80 per cent of the mass of its sugar', (hours) => {
    const { value } = made(...PEEL, `rest ${hours} h at 20 °C`, SIEVE).figures['mass']!;
    expect(value).toBeGreaterThan(60);
    expect(value).toBeLessThan(80);
  });
  // Mohos table A2.3: a saturated syrup has 66.7 g of sucrose in 100 g at 20 °C
  it('what runs off is saturated, and what found no water stays with the peel', () => {
    const { figures, cloth } = made(...PEEL, 'rest 24 h at 20 °C', SIEVE);
    const sucrose = (figures['sugar']!.value / 1000) * figures['volume']!.value;
    expect(sucrose / figures['mass']!.value).toBeGreaterThan(0.62);
    expect(sucrose / figures['mass']!.value).toBeLessThan(0.68);
    expect(cloth!.solids.value).toBeGreaterThan(35);
    expect(cloth!.solids.value + sucrose).toBeLessThan(120);
  });
  it('a second sieve takes nothing more of it, and the account stays', () => {
    const once = made(...PEEL, 'rest 24 h at 20 °C', SIEVE), twice = made(...PEEL, 'rest 24 h at 20 °C', SIEVE, 'strain through a paper filter');
    expect(twice.cloth!.solids.value / once.cloth!.solids.value).toBeCloseTo(1, 2);
  });
  it('longer is more, the cold is slower, an hour is little', () => {
    const mass = (time: string) => made(...PEEL, `rest ${time}`, SIEVE).figures['mass']!.value;
    expect(mass('4 h at 20 °C')).toBeGreaterThan(1.8 * mass('1 h at 20 °C'));
    expect(mass('12 h at 20 °C')).toBeGreaterThan(mass('4 h at 20 °C'));
    expect(mass('4 h at 4 °C')).toBeLessThan(0.7 * mass('4 h at 20 °C'));
  });
  it('with little sugar it is all dissolved', () => {
    const { figures, cloth } = made('20 g sugar', '50 g lemon peel', 'rest 24 h at 20 °C', SIEVE);
    expect(cloth!.solids.value).toBeLessThan(20);
    expect((figures['sugar']!.value / 1000) * figures['volume']!.value).toBeGreaterThan(12);
  });
  it('a liquid dissolves what stayed dry', () => {
    const sugar = (...lines: string[]) => { const { figures } = made(...PEEL, 'rest 12 h at 20 °C', ...lines, SIEVE); return (figures['sugar']!.value / 1000) * figures['volume']!.value; };
    expect(sugar('100 ml lemon juice', 'stir until dissolved')).toBeGreaterThan(1.4 * sugar());
    expect(sugar('100 ml lemon juice', 'stir until dissolved')).toBeGreaterThan(75);
  });
  it.each([[['rest 12 h']], [['muddle', 'rest 4 h', SIEVE]], [['rest 4 h', '60 ml hot water', SIEVE]], [[SIEVE]]])('loses nothing: %j', (steps) => {
    const { off, scale } = imbalance(card(...PEEL, ...steps), tables);
    for (const g of off) expect(Math.abs(g)).toBeLessThan(1e-9 * scale);
  });
});
