import table from '../../../../data/physics/acids.json' with { type: 'json' };

const { linear, limit_I } = table.davies;

/**
 * log10 of the activity coefficient of a univalent ion; times z² for charge z.
 * ionic: ionic strength in mol/L, 0 to 0.5 (held there: beyond it the equation turns and means nothing); A: slope of the temperature.
 * @source spana-davies log10 g = -A z² (sqrt I/(1 + sqrt I) - 0.3 I)
 */
export function daviesLog(ionic: number, A: number): number {
  const I = Math.min(Math.max(ionic, 0), limit_I);
  const root = Math.sqrt(I);
  return -A * (root / (1 + root) - linear * I);
}
