import table from '../../../../data/physics/curdle.json' with { type: 'json' };

/**
 * Share of a fat that is liquid at a temperature, straight across its melting range.
 * celsius; low, high: ends of the range in °C (equal ends: a sharp melting point). 0 to 1.
 * @source common-practice straight line between the ends
 */
export function fatLiquid(celsius: number, low: number, high: number): number {
  if (celsius >= high) return 1;
  if (celsius <= low) return 0;
  return (celsius - low) / (high - low);
}

/** Kelvins still missing until a fat is all liquid: positive where it is not yet melted. celsius; high: upper end of its range in °C. @source none - definition */
export function fatNotMelted(celsius: number, high: number): number {
  return high - celsius;
}

/** Kelvins too warm for a fat to set hard: positive where some is liquid still. celsius; low: lower end of its range in °C. @source none - definition */
export function fatNotSet(celsius: number, low: number): number {
  return celsius - low;
}

/**
 * Strength in % vol of a spirit washed with a fat that brings water (butter 16 %), before losses, volumes added.
 * spirit_mL at abv % vol; fat_g; water: share of the fat, butter's where not given.
 * @source butter-wash 150 g per 700 mL; memory 16 % water
 */
export function strengthAfterFat(spirit_mL: number, abv: number, fat_g: number, water: number = table.butter_water.value): number {
  return (spirit_mL * abv) / (spirit_mL + (fat_g * water) / 0.9982);
}
