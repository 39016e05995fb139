import { densityOfSucroseSolution } from './sucrose-density.ts';
import { densityOfWater } from './ethanol-water-density.ts';

/** Density of air at 20 °C and 1 atm as weighings take it, kg/m³. @source none - definition */
export const AIR_KGM3 = 1.2;

/**
 * Specific gravity of a liquid.
 * @param density_kgm3 true density of the liquid
 * @param water_kgm3 true density of the water it is held against
 * @param inAir both weighed in air (apparent) instead of in vacuum
 * @returns ratio
 * @source none - definition
 */
export function specificGravity(density_kgm3: number, water_kgm3: number, inAir = false): number {
  return inAir ? (density_kgm3 - AIR_KGM3) / (water_kgm3 - AIR_KGM3) : density_kgm3 / water_kgm3;
}

/**
 * Specific gravity 20/20 of sucrose in water.
 * @param brix g sucrose per 100 g, 0..85
 * @param inAir apparent instead of true
 * @returns ratio
 * @source sps4 eq. 1
 */
export function gravityFromBrix(brix: number, inAir = true): number {
  return specificGravity(densityOfSucroseSolution(brix / 100, 20), densityOfWater(20), inAir);
}

/**
 * Sucrose of a solution of this density: what a saccharometer shows.
 * @param density_kgm3 true density
 * @param celsius temperature of the liquid, 0..80 °C
 * @returns °Brix; negative for a liquid lighter than water, along the dilute slope; 85 at the end
 * @source sps4 eq. 1, inverted
 */
export function brixFromDensity(density_kgm3: number, celsius = 20): number {
  const water = densityOfSucroseSolution(0, celsius);
  if (density_kgm3 <= water) return (density_kgm3 - water) / (100 * (densityOfSucroseSolution(1e-4, celsius) - water));
  let low = 0, high = 0.85;
  if (density_kgm3 >= densityOfSucroseSolution(high, celsius)) return 85;
  let w = (density_kgm3 - water) / 430;
  for (let i = 0; i < 60; i++) {
    if (!(w > low && w < high)) w = (low + high) / 2;
    const off = densityOfSucroseSolution(w, celsius) - density_kgm3;
    if (off > 0) high = w; else low = w;
    const step = (off * 1e-6) / (densityOfSucroseSolution(w + 1e-6, celsius) - density_kgm3 - off);
    w -= step;
    if (Math.abs(step) < 1e-12) break;
  }
  return 100 * w;
}

/**
 * °Brix of an apparent specific gravity.
 * @param sg apparent 20/20 (in air), 1..1.17874
 * @returns °Brix 0..40
 * @source brix-polynomials specific gravity
 */
export function brixFromGravity(sg: number): number {
  return ((182.4601 * sg - 775.6821) * sg + 1262.7794) * sg - 669.5622;
}

/**
 * °Plato of an apparent specific gravity.
 * @param sg apparent 20/20, 1..1.13
 * @returns °Plato 0..30
 * @source brix-polynomials ASBC
 */
export function platoFromGravity(sg: number): number {
  return ((135.997 * sg - 630.272) * sg + 1111.14) * sg - 616.868;
}

/**
 * The short rule for the same.
 * @param sg apparent 20/20, 1..1.08
 * @returns °Plato, mean error below 0.02
 * @source buhl2024 one-parameter form
 */
export function platoByRule(sg: number): number {
  return 260.4 - 260.4 / sg;
}
