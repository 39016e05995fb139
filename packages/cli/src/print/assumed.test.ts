import { keys } from '@washline/tables';
import { describe, expect, it } from 'vitest';
import { sayAssumed } from './assumed.ts';

const row = (key: string, value: number | string, unit = '', low: number | null = null, high: number | null = null) => ({ key, value, unit, low, high });

describe('an assumption in plain words', () => {
  it.each([
    ['the spirit goes in at 20 °C (17 to 25)', row('start/spirit', 20, '°C', 17, 25)],
    ['the ice is cubes', row('ice/kind', 'cubes')],
    ['soda to top with is 90 mL (60 to 120)', row('measure/top with#build/soda#1', 90, 'mL', 60, 120)],
    ['boiling the agar drives off 5 % of water (2 to 15)', row('agar/water boiled off', 0.05, 'share of water', 0.02, 0.15)],
    ['orange bitters is taken at 28 % vol', row('strength/orange bitters', '28 % vol')],
    ['the glass is: double rocks', row('glass/sour on ice', 'double-rocks')],
    ['ice to hard shake with is 150 g (110 to 220)', row('ice/mass/hard shake', 150, 'g', 110, 220)],
    ['no/such key: 3 g', row('no/such key', 3, 'g')],
  ])('%s', (said, given) => { expect(sayAssumed(given)).toBe(said); });

  it('every key of the table of assumptions has its words', () => {
    expect(keys.assumptions.length).toBeGreaterThan(200);
    for (const key of keys.assumptions) {
      const said = sayAssumed(row(key, 1, 'g'));
      expect(said, key).not.toMatch(/[{}]|^\S+\/\S*.*:/);
      expect(said, key).toContain('1 g');
    }
  });
});
