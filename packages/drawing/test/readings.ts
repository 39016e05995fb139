import type { Figure, GlassReading, PrepReading, Reading } from '@washline/engine';

/** A reading with the arithmetic of one drink worked by hand: double rocks, inner radius 36 + 4 h / 88 mm, one 50 mm cube afloat. */
export function figure(value: number, unit: string, half: number, grade: Figure['grade'] = 'compiled'): Figure {
  return { value, unit, low: value - half, high: value + half, skewed: false, grade, method: 'by hand', sources: ['common-practice'] };
}

export const DOUBLE_ROCKS: GlassReading = {
  name: 'double rocks', brim_mL: 399.6, washline_mm: 74.1, liquid_mm: 59, top_mm: 74.1, profile: [[0, 36], [88, 40]], base_mm: 12, wall_mm: 2.1, stem_mm: 0, foot_mm: 0,
  layers: [
    { name: 'drink', kind: 'liquid', from_mm: 0, to_mm: 59, colour: '#d8e0a8', turbidity: 0, mL: 149, strength: 16.1 },
    { name: 'pineapple cloud', kind: 'foam', from_mm: 59, to_mm: 74.1, colour: '#f2df97', turbidity: 2, mL: 57, strength: 7.5 },
  ],
  ice: [{ kind: 'large cube', count: 1, mass_g: 114.6, size_mm: 50, clear: true, from_mm: 15.2, to_mm: 65.2 }],
  garnish: ['pineapple leaf'], washline: figure(74.1, 'mm', 4, 'predicted'),
};

function prep(name: string, method: string, vessel: PrepReading['vessel'], mL: number, half: number, strength: number, colour: string, turbidity: number, takes: PrepReading['takes'] = []): PrepReading {
  return { name, method, vessel, yield: figure(mL, 'mL', half), figures: { strength: figure(strength, '% vol', 0.4), sugar: figure(84, 'g/L', 8) }, ready_after: 'PT17H', stages: [], colour, turbidity, takes };
}

export const CLEAR_COLADA: Reading = {
  drink: 'Clear colada', variant: null, partial: false,
  figures: {
    strength: figure(15.3, '% vol', 0.7), volume: figure(163.4, 'mL', 9), mass: figure(165, 'g', 9), ethanol: figure(19.7, 'g', 0.9), sugar: figure(70, 'g/L', 6), acidity: figure(5.8, 'g/L', 0.6),
    density: figure(1011, 'kg/m3', 3), brix: figure(12.4, '°Bx', 0.8), temperature: figure(-1.6, '°C', 0.9, 'predicted'), dilution: figure(19, '%', 3, 'predicted'), energy: figure(187, 'kcal', 9), cost: figure(2.4, 'EUR', 0.2),
  },
  stages: [{ step: 'stir 25 s over 200 g cubes at -5 °C', path: ['build', 4], figures: { strength: figure(16.1, '% vol', 0.6), volume: figure(149, 'mL', 4) } }],
  preps: {
    'coconut rum': prep('Coconut rum', 'fat wash', 'jar', 276, 8, 39.9, '#e9f2f2', 0),
    'clear pineapple': prep('Clear pineapple', 'clarify with agar', 'jar', 281, 30, 0, '#efe8bb', 0),
    'pineapple cloud': prep('Pineapple cloud', 'siphon foam', 'siphon', 318, 12, 7.5, '#f3e0a0', 2, [{ prep: 'coconut rum', mL: 60 }]),
  },
  glass: DOUBLE_ROCKS, standard_drinks: { US: 1.4, UK: 2.5, AU: 2 }, allergens: [], vegan: false, vegetarian: false, diet: [], assumed: [], findings: [], accepted: [],
};

/** A glass of any size filled by layers; heights follow from shares of the brim. */
export function filled(profile: readonly (readonly [number, number])[], shares: readonly number[], options: Partial<GlassReading> = {}): GlassReading {
  const brim = profile.at(-1)?.[0] ?? 0;
  let from = 0;
  const layers = shares.map((share, i) => {
    const layer = { name: `layer ${i + 1}`, kind: i === shares.length - 1 && shares.length > 1 ? 'foam' as const : 'liquid' as const, from_mm: from, to_mm: from + share * brim, colour: ['#c8d0a0', '#e0b580', '#f2df97', '#d08080'][i % 4] ?? '#ffffff', turbidity: i % 3, mL: 40 + 10 * i, strength: 10 + i };
    from = layer.to_mm;
    return layer;
  });
  return { ...DOUBLE_ROCKS, profile, layers, ice: [], garnish: [], washline_mm: from, top_mm: from, liquid_mm: layers.filter((l) => l.kind === 'liquid').at(-1)?.to_mm ?? 0, washline: figure(from, 'mm', 2), ...options };
}
