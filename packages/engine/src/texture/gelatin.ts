import table from '../../../../data/physics/gelatin.json' with { type: 'json' };

export type SheetGrade = keyof typeof table.grades;

/** Bloom of a grade of sheets, its band and the mass of a sheet in g. @source gelatin-sheets two tables */
export const GRADES: Readonly<Record<SheetGrade, { readonly low: number; readonly high: number; readonly bloom: number; readonly sheet_g: number }>> = table.grades;

/** Bloom of household powder where the packet does not say. @source common-practice 170 to 250 */
export const POWDER_BLOOM = table.powder;

/**
 * Mass of one gelatin that gels as another does, by weight: mass × root of the Bloom ratio.
 * grams of gelatin of `from` Bloom; to: Bloom of the other; 50 to 300.
 * @source ward-courts Bloom as the square of concentration; bloom-table
 */
export function byBloom(grams: number, from: number, to: number): number {
  return grams * Math.sqrt(from / to);
}

/** The same by the rule sheets are cut to, mass × Bloom constant: sheet for sheet. @source gelatin-sheets linear rule */
export function bySheet(grams: number, from: number, to: number): number {
  return (grams * from) / to;
}

/** Mass in g of a number of sheets of a grade. @source gelatin-sheets */
export function sheetsToGrams(sheets: number, grade: SheetGrade): number {
  return sheets * GRADES[grade].sheet_g;
}

/** Number of sheets of a grade in a mass in g. @source gelatin-sheets */
export function gramsToSheets(grams: number, grade: SheetGrade): number {
  return grams / GRADES[grade].sheet_g;
}

const [COLD, COOL] = table.set.at_C as [number, number];
const [COLD_H, COOL_H] = table.set.full_h as [number, number];
const RATE = Math.log(1 - table.set.share);
const SLOPE = Math.log(COOL_H / COLD_H) / (COOL - COLD);

/**
 * Share of its final strength a gelatin gel has after some time in the cold: 1 - exp(-t/tau), 95 % when makers call it full.
 * seconds: 0 and up; celsius: 0 to 20, warmer gives 0. 5 °C: full in 5 to 8 h, 10 °C: in 15 to 20 h; between and beyond straight in the logarithm.
 * @source gelatin-maker rigidity maximum
 */
export function gelatinSet(seconds: number, celsius: number): number {
  if (celsius > table.set.stops_C || seconds <= 0) return 0;
  const full_h = COLD_H * Math.exp(SLOPE * (celsius - COLD));
  return 1 - Math.exp((RATE * seconds) / (3600 * full_h));
}

/** Dried egg white and water in g that stand for a mass of liquid white in g. @source egg-white-sheet */
export function driedWhite(liquid_g: number): { readonly powder_g: number; readonly water_g: number } {
  return { powder_g: liquid_g * table.egg_white.powder, water_g: liquid_g * table.egg_white.water };
}
