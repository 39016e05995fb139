/**
 * How the air presses at a height above the sea, in the standard atmosphere.
 * @param height_m -500 to 11,000; beyond, the ends
 * @returns kPa
 * @source iso-2533 eq. for the troposphere: 288.15 K, 6.5 K/km
 */
export function airPressure(height_m: number): number {
  const h = Math.min(11_000, Math.max(-500, height_m));
  return 101.325 * (1 - (0.0065 * h) / 288.15) ** 5.25588;
}

/**
 * At what temperature water boils under a pressure.
 * @param pressure_kPa absolute, 1 to 110; beyond, the ends
 * @returns °C
 * @source antoine-water 1 to 100 °C: log10(p/mmHg) = 8.07131 - 1730.63/(233.426 + t)
 */
export function boilingPoint(pressure_kPa: number): number {
  const mmHg = Math.min(110, Math.max(1, pressure_kPa)) / 0.133322;
  return 1730.63 / (8.07131 - Math.log10(mmHg)) - 233.426;
}
