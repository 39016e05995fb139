import { BLOCK } from '../matter/constituents.ts';
import { enthalpy } from './enthalpy.ts';

/** Ice is linear in t through the handbook's points at 0, -10 and -20 °C. */
const CP_0 = 2.11, CP_PER_K = 0.0075;
/** Heat of fusion at 0 °C, J/g. @source crc-ice table */
export const FUSION_J_PER_G = 333.6;
/** Enthalpy of liquid water at 0 °C by the capacity used for mixtures, J/g. @source melinder2010 */
export const WATER_0_J_G = enthalpy(Float64Array.of(1, ...new Array<number>(BLOCK - 1).fill(0)), 0, 0);

/**
 * Heat capacity of ice.
 * @param celsius -40..0 °C; above, that at 0 °C
 * @returns J/(g K)
 * @source crc-ice table
 */
export function heatCapacityOfIce(celsius: number): number {
  return CP_0 + CP_PER_K * (celsius < 0 ? celsius : 0);
}

/**
 * Density of ice without bubbles.
 * @param celsius -40..0 °C; above, that at 0 °C
 * @returns kg/m³
 * @source crc-ice table
 */
export function densityOfIce(celsius: number): number {
  const t = celsius < 0 ? celsius : 0;
  return 916.7 - t * (0.22 + 0.002 * t);
}

/**
 * Enthalpy of ice against liquid water at 25 °C, the reference of `enthalpy` of a mixture.
 * @param celsius -60..0 °C
 * @returns J/g, negative
 * @source crc-ice table
 */
export function enthalpyOfIce(celsius: number): number {
  const t = celsius < 0 ? celsius : 0;
  return WATER_0_J_G - FUSION_J_PER_G + t * (CP_0 + (CP_PER_K / 2) * t);
}

/**
 * Temperature of ice that holds this enthalpy: the inverse of `enthalpyOfIce`.
 * @param enthalpy_JPerG at or below that of ice at 0 °C
 * @returns °C; 0 above
 * @source none - inverse of `enthalpyOfIce`
 */
export function temperatureOfIce(enthalpy_JPerG: number): number {
  const h = enthalpy_JPerG - WATER_0_J_G + FUSION_J_PER_G;
  if (h >= 0) return 0;
  // the root of (b/2) t² + a t - h = 0 that is 0 where h is 0
  return (2 * h) / (CP_0 + Math.sqrt(CP_0 * CP_0 + 2 * CP_PER_K * h));
}
