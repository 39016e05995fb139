/**
 * pH(S) of the potassium hydrogen phthalate buffer, 0.05 mol/kg. celsius: 0 to 60, beyond it extrapolated.
 * @source hetzer-1977 abstract equation
 */
export function phthalatePH(celsius: number): number {
  const T = celsius + 273.15;
  return 2073.44 / T - 13.327 + 0.045199 * T - 3.4846e-5 * T * T;
}
