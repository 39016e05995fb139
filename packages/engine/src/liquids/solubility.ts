import table from '../../../../data/physics/sucrose-solubility.json' with { type: 'json' };

/**
 * How much sucrose does water hold when saturated?
 * @param celsius 0..100 °C, held at the ends
 * @returns g sucrose per 100 g of solution
 * @source mohos table A2.3, straight between its points
 */
export function sucroseSaturation(celsius: number): number {
  const rows = table.rows;
  const last = rows.length - 1;
  if (celsius <= rows[0]![0]!) return rows[0]![1]!;
  if (celsius >= rows[last]![0]!) return rows[last]![1]!;
  let i = 0;
  while (rows[i + 1]![0]! < celsius) i++;
  const [t0, w0] = rows[i] as [number, number], [t1, w1] = rows[i + 1] as [number, number];
  return w0 + ((w1 - w0) * (celsius - t0)) / (t1 - t0);
}

/**
 * Will sugar crystallise out of this syrup in time?
 * @param brix g sucrose per 100 g of sucrose + water
 * @param celsius 0..100 °C
 * @returns true above saturation; other sugars, acid and ethanol are not counted
 * @source mohos table A2.3
 */
export function supersaturated(brix: number, celsius: number): boolean {
  return brix > sucroseSaturation(celsius);
}
