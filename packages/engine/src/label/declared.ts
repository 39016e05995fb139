export type DrinkKind = 'beer' | 'still wine' | 'sparkling wine' | 'cider' | 'perry' | 'fruit wine' | 'mead' | 'macerated fruit' | 'other';

/**
 * Must a drink state its strength in the EU?
 * @param strength % vol at 20 °C
 * @returns true above 1.2
 * @source eu1169_xii
 */
export function mustStateStrength(strength: number): boolean {
  return strength > 1.2;
}

/**
 * How far may the strength differ from what the label says in the EU?
 * @param kind of drink; what is not named is `other` (spirits and liqueurs)
 * @param strength % vol; decides for beer, 5.5 and above it
 * @returns % vol either way
 * @source eu1169_xii
 */
export function strengthTolerance(kind: string, strength = NaN): number {
  const name = kind.toLowerCase();
  if (/macerat/.test(name)) return 1.5;
  if (/beer/.test(name)) return strength > 5.5 ? 1 : 0.5;
  if (/sparkling|cider|perry|fruit wine|mead|semi-sparkling/.test(name)) return 1;
  if (/still wine|wine-type|grape/.test(name)) return 0.5;
  return 0.3;
}

/**
 * Is a spirit's strength as labelled in the US?
 * @param label,tested % vol at 60 °F
 * @returns `pass` within 0.3 % vol, else `fail`
 * @source cfr19356
 */
export function labelledStrength(label: number, tested: number): 'pass' | 'fail' {
  return Math.abs(tested - label) <= 0.3 + 1e-9 ? 'pass' : 'fail';
}

/**
 * How far may a bottle's fill differ from what is labelled in the US?
 * @param labelled_mL above 0
 * @returns % either way: 1.5 from 1 L, 2 from 376 mL, 3 from 101 mL, else 4.5
 * @source cfr19356
 */
export function fillTolerance(labelled_mL: number): number {
  return labelled_mL >= 1000 ? 1.5 : labelled_mL >= 376 ? 2 : labelled_mL >= 101 ? 3 : 4.5;
}
