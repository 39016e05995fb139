import table from '../../../../data/physics/alcohol-retention.json' with { type: 'json' };

/** Minutes of simmering, stirred in, and the share kept. */
const SIMMER: readonly (readonly [number, number])[] = [[0, 1], ...table.rows.flatMap((row): [number, number][] => {
  const minutes = /stirred in, baked or simmered (\d+) min/.exec(row.method)?.[1];
  return minutes === undefined ? [] : [[Number(minutes), row.retained_pct / 100]];
})];

/**
 * Which share of the ethanol is left after a way of cooking of the table?
 * @param codeOrMethod the table's code (`5003`) or its words (`flamed`)
 * @returns 0..1; undefined for what is not in the table. Six home dishes lay between 0.04 and 0.85
 * @source usda-retention6 codes 5001 to 5010
 */
export function ethanolKeptBy(codeOrMethod: string): number | undefined {
  const row = table.rows.find((r) => r.usda_code === codeOrMethod || r.method === codeOrMethod);
  return row && row.retained_pct / 100;
}

/**
 * Which share of the ethanol is left after simmering?
 * @param minutes 0..150; 1 at 0; beyond, the last slope goes on
 * @returns 0..1, straight in its logarithm between the table's times; a wide pan loses more: spread a factor of 1.6
 * @source usda-retention6 codes 5004 to 5009
 */
export function ethanolKeptAfterSimmering(minutes: number): number {
  if (!(minutes > 0)) return 1;
  let i = 1;
  while (i < SIMMER.length - 1 && SIMMER[i]![0] < minutes) i++;
  const [t0, k0] = SIMMER[i - 1]!, [t1, k1] = SIMMER[i]!;
  return Math.exp(Math.log(k0) + (Math.log(k1 / k0) * (minutes - t0)) / (t1 - t0));
}
