import fc from 'fast-check';
import type { Document } from '@washline/engine';
import type { Reading } from '../src/reading.ts';
import { Sheet } from './documents.ts';
import { CLEAR_COLADA, figure, filled } from './readings.ts';

const PROFILES = [
  [[0, 36], [88, 40]], [[0, 27.5], [125, 30.5]], [[0, 6], [6, 24], [16, 37], [30, 43], [46, 44.5]], [[0, 2], [58, 55]], [[0, 4], [15, 14], [50, 22], [110, 24.5], [150, 23]], [[0, 15], [48, 19.5]],
] as const;
const vessels = ['jar', 'bottle', 'pan', 'siphon', 'tray', 'freezer box'] as const;

export const drinks = fc.record({
  profile: fc.constantFrom(...PROFILES), stem: fc.boolean(), shares: fc.array(fc.double({ min: 0.08, max: 0.3, noNaN: true }), { minLength: 1, maxLength: 3 }),
  ice: fc.constantFrom('none', 'cubes', 'large cube', 'crushed', 'sphere'), garnish: fc.subarray(['pineapple leaf', 'lime wheel', 'cherry', 'orange twist', 'grated nutmeg'], { maxLength: 2 }),
  preps: fc.array(fc.record({ vessel: fc.constantFrom(...vessels), mL: fc.double({ min: 30, max: 1100, noNaN: true }), name: fc.constantFrom('plum wine', 'clear pineapple cordial', 'salt', 'toasted coconut and vanilla rum', 'sky foam'), to: fc.constantFrom('build', 'glass', 'next') }), { maxLength: 6 }),
  mixed: fc.constantFrom('stir', 'shake', null), bought: fc.integer({ min: 0, max: 4 }), spread: fc.double({ min: 0.01, max: 5, noNaN: true }),
});

export type Drink = typeof drinks extends fc.Arbitrary<infer T> ? T : never;

/** A reading and its document for a random drink. */
export function made(d: Drink): { reading: Reading; document: Document } {
  const keys = d.preps.map((p, i) => `${p.name} ${i + 1}`);
  const sheet = new Sheet();
  for (const [i] of d.preps.entries()) sheet.section('prep', keys[i] ?? '', d.preps.flatMap((p, j) => (p.to === 'next' && j + 1 === i ? [sheet.measure(40, 'ml', keys[j] ?? '', keys[j])] : [])));
  const into = (to: string) => d.preps.flatMap((p, i) => (p.to === to ? [sheet.measure(20 + 10 * i, 'ml', keys[i] ?? '', keys[i])] : []));
  const bought = Array.from({ length: d.bought }, (_, i) => sheet.measure(10 + i, 'ml', ['lime juice', 'simple syrup', 'orange bitters', 'dry vermouth'][i] ?? 'water'));
  sheet.section('build', '', [...into('build'), ...bought, ...(d.mixed === null ? [] : [sheet.step(d.mixed, `${d.mixed} 12 s`, 12)]), ...into('glass')]);
  const brim = d.profile.at(-1)?.[0] ?? 80;
  const glass = filled(d.profile, d.shares, {
    garnish: d.garnish, ...(d.stem ? { stem_mm: 70, foot_mm: 35, base_mm: 3 } : {}),
    ice: d.ice === 'none' ? [] : [{ kind: d.ice, count: d.ice === 'cubes' ? 5 : 1, mass_g: 110, size_mm: d.ice === 'crushed' ? null : Math.min(30, brim * 0.4), clear: d.ice === 'large cube', from_mm: brim * 0.1, to_mm: brim * 0.1 + Math.min(30, brim * 0.4) }],
  });
  const preps = Object.fromEntries(d.preps.map((p, i) => [keys[i] ?? '', { name: keys[i] ?? '', method: p.vessel === 'siphon' ? 'siphon foam' : 'infusion', figures: { strength: figure(12.5, '% vol', 0.4) }, yield: figure(p.mL, 'mL', p.mL * 0.05), ready_after: 'PT1H', stages: [], colour: '#e8d0a0', turbidity: i % 3, vessel: p.vessel, takes: [] }]));
  return {
    document: sheet.done(),
    reading: { ...CLEAR_COLADA, figures: { ...CLEAR_COLADA.figures, strength: figure(15.3, '% vol', d.spread) }, stages: d.mixed === null ? [] : [{ step: `${d.mixed} 12 s`, path: ['build', 0], figures: { volume: figure(149, 'mL', 4) } }], preps, glass },
  };
}

