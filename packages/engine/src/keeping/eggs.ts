import table from '../../../../data/physics/keeping.json' with { type: 'json' };

export type EggPart = 'white' | 'whole' | 'yolk' | 'sugared yolk';

/**
 * Minutes still missing until egg is pasteurised by the rule, at a temperature: positive is raw, 0 and less is done; Infinity below the coolest row.
 * part; celsius; minutes held. The rows are taken as they stand, not drawn between.
 * @source cfr-9-590 table I (egg white without chemicals 134 °F 3.5 min, 132 °F 6.2 min)
 */
export function eggMinutesMissing(part: EggPart, celsius: number, minutes: number): number {
  const rows = table.eggs[part] as readonly (readonly number[])[];
  let needed = Infinity;
  for (const row of rows) if (celsius >= row[0]!) needed = Math.min(needed, row[1]!);
  return needed - minutes;
}

/** An egg in its shell, °C and min at about which it is pasteurised. @source memory */
export const SHELL_EGG = table.shellEggs;
