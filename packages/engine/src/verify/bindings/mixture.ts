import { at, BLOCK } from '../../matter/constituents.ts';
import type { Constituent } from '../../matter/constituents.ts';

/** Constituent that stands for a solute's name in a table. */
export const SOLUTES: Readonly<Record<string, Constituent>> = {
  sucrose: 'sucrose', glucose: 'glucose', fructose: 'fructose', lactose: 'lactose', maltose: 'maltose', glycerol: 'polyols',
  citric_acid: 'citric', lactic_acid: 'lactic', acetic_acid: 'acetic', phosphoric_acid: 'phosphoric', malic_acid: 'malic', tartaric_acid: 'tartaric',
  ethanol: 'ethanol',
};

/**
 * A block of these grams.
 * @param grams by constituent
 * @returns a new block
 * @source none - definition
 */
export function blockOf(grams: Partial<Record<Constituent, number>>): Float64Array {
  const block = new Float64Array(BLOCK);
  for (const [name, g] of Object.entries(grams)) block[at[name as Constituent]] = g;
  return block;
}

/**
 * 100 g of a solution in water.
 * @param solute name of the constituent
 * @param mass_pct g per 100 g of solution, 0..100
 * @returns a new block
 * @source none - definition
 */
export function solution(solute: Constituent, mass_pct: number): Float64Array {
  return blockOf({ water: 100 - mass_pct, [solute]: mass_pct });
}
