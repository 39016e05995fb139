/**
 * Water activity of one solute in water by Norrish's equation.
 * @param massFraction solute over solution, 0..0.9
 * @param molar_gPerMol molar mass of the solute
 * @param k Norrish's constant: sucrose 6.47, glucose 2.25 (from memory), glycerol 1.16, erythritol 1.34, xylitol 1.66, sorbitol 1.65
 * @returns 0..1 at 25 °C
 * @source norrish1966 eq. 3
 */
export function waterActivityNorrish(massFraction: number, molar_gPerMol: number, k: number): number {
  const solute = massFraction / molar_gPerMol, water = (1 - massFraction) / 18.0153;
  const x = solute / (solute + water);
  return (1 - x) * Math.exp(-k * x * x);
}
