import { FUSION_J_PER_G, densityOfIce } from '../liquids/index.ts';

/** Ice as a body: its surface, and how well it conducts to its own middle. */

/** W/(m K), between 2.14 at 0 °C and 2.3 at -10 °C. @source crc-ice conductivity */
const CONDUCTIVITY = 2.2;

/** Heat of fusion at 0 °C, J/g. @source crc-ice fusion */
export const FUSION_J_G = FUSION_J_PER_G;
const ICE_G_ML = densityOfIce(0) / 1000;

/**
 * Surface of the ice in m², its pieces keeping their shape as they melt: area0 (m / m0)^(2/3).
 * @source none - definition
 */
export function iceArea(mass_g: number, mass0_g: number, area0_m2: number): number {
  return mass_g > 0 && mass0_g > 0 ? area0_m2 * Math.cbrt((mass_g / mass0_g) ** 2) : 0;
}

/**
 * Conductance in W/K from the surface to the middle of the ice, taken as spheres of the same area per mass: 5 k A / r.
 * @source crc-ice conductivity; sphere lumped by its mean temperature (parabolic profile)
 */
export function coreConductance(mass_g: number, area_m2: number): number {
  if (mass_g <= 0 || area_m2 <= 0) return 0;
  const radius_m = (3 * mass_g * 1e-6) / (ICE_G_ML * area_m2);
  return (5 * CONDUCTIVITY * area_m2) / radius_m;
}

/**
 * Surface of `mass_g` of ice in m² in cubes, spheres or grains `size_mm` across: 6 m / (density × size).
 * @source none - geometry
 */
export function areaOfPieces(mass_g: number, size_mm: number): number {
  return (6 * mass_g * 1e-6) / (ICE_G_ML * size_mm * 1e-3);
}
