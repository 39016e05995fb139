/**
 * What a content is made of, in grams; the order is the layout of every block of matter.
 * "other_acid" is counted as citric for titration; "ash" carries the mass of the strong ions, "other_solubles" what the tables leave unnamed.
 */
export const CONSTITUENTS = [
  'water', 'ethanol',
  'sucrose', 'glucose', 'fructose', 'lactose', 'maltose', 'other_sugars', 'polyols',
  'citric', 'malic', 'tartaric', 'lactic', 'acetic', 'phosphoric', 'ascorbic', 'quinic', 'succinic', 'other_acid',
  'salt', 'ash', 'casein', 'whey', 'egg_protein', 'other_protein', 'fat', 'fibre', 'pectin', 'tannin',
  'gelatin', 'agar', 'methylcellulose', 'xanthan', 'carrageenan', 'gellan', 'other_gum',
  'quinine', 'caffeine', 'other_solubles', 'insolubles',
] as const;

export type Constituent = (typeof CONSTITUENTS)[number];

/**
 * Extensive slots without mass of their own, behind the grams of a block. `tint_*` is absorbance through 10 mm times mL,
 * `turbid` the turbidity class times mL; `price_minor` stays with what is kept when some is lost.
 */
export const EXTENSIVE = ['enthalpy_J', 'charge_mol', 'co2_mol', 'n2o_mol', 'unknown_g', 'acids_unknown_g', 'ph_unknown_g', 'price_minor', 'tint_r', 'tint_g', 'tint_b', 'turbid'] as const;
export type Extensive = (typeof EXTENSIVE)[number];

/** Index of a constituent in a block. @source none - definition */
export const at = Object.fromEntries(CONSTITUENTS.map((name, i) => [name, i])) as Readonly<Record<Constituent, number>>;
/** Index of an extensive slot in a block. @source none - definition */
export const slot = Object.fromEntries(EXTENSIVE.map((name, i) => [name, CONSTITUENTS.length + i])) as Readonly<Record<Extensive, number>>;
/** Length of a block. @source none - definition */
export const BLOCK = CONSTITUENTS.length + EXTENSIVE.length;
