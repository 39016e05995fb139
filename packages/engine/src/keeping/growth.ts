import table from '../../../../data/physics/keeping.json' with { type: 'json' };

interface Limits { readonly celsius: readonly [number, number]; readonly pH: readonly [number, number | null]; readonly aw: number | null }

const ROWS = Object.fromEntries(Object.entries(table.growth).filter(([, row]) => typeof row === 'object')) as unknown as Readonly<Record<string, Limits>>;

/** Organisms of the table. @source bad-bug-book */
export const ORGANISMS: readonly string[] = Object.keys(ROWS);

/**
 * Whether an organism can grow: every condition given is inside its limits, the lower of two lists where they differ. Conditions left out (NaN) do not hinder.
 * organism: of ORGANISMS; celsius; pH; aw: water activity. undefined for an organism not in the table.
 * @source bad-bug-book limits of growth; growth-limits-osu lower pH and aw
 */
export function canGrow(organism: string, celsius = NaN, pH = NaN, aw = NaN): boolean | undefined {
  const row = ROWS[organism];
  if (!row) return undefined;
  if (celsius < row.celsius[0] || celsius > row.celsius[1]) return false;
  if (pH < row.pH[0] || (row.pH[1] !== null && pH > row.pH[1])) return false;
  return !(row.aw !== null && aw < row.aw);
}

/** Water activity below which and temperature below which botulism is no matter for what is kept without air. @source food-code table A; bad-bug-book */
export const BOTULISM = table.botulism;

/** pH above the line of botulism, 4.6: positive is a risk for what is kept without air, wet (aw above 0.93) and warmer than 3 °C. @source food-code table A; bad-bug-book */
export function botulismMargin(pH: number): number {
  return pH - table.botulism.pH;
}

/** Days it keeps, fewest and most, by what it is; undefined for a word not in the table. @source common-practice house rules */
export function keepsDays(what: string): readonly [number, number] | undefined {
  return (table.days as unknown as Readonly<Record<string, readonly [number, number]>>)[what];
}
