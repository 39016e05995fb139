import table from '../../../../data/physics/refractometer-temperature.json' with { type: 'json' };
import { brixFromIndex, indexOfSucrose, refractiveIndex } from './refraction.ts';

/**
 * What does a refractometer scaled in sucrose show of this mixture at 20 °C? Ethanol, acids and salts count for it as sugar.
 * @param block grams by constituent from `offset`
 * @param mL its volume at 20 °C, where that is known already
 * @returns °Brix shown, 0..84
 * @source crc-solutions refractive index column; oiv-refraction
 */
export function refractometerBrix(block: Float64Array, offset: number, mL?: number): number {
  return brixFromIndex(refractiveIndex(block, offset, mL));
}

/** Correction by the density and refraction of sucrose solutions, without the table. */
function byIndex(celsius: number, read: number): number {
  const target = indexOfSucrose(read / 100);
  let low = -0.05, high = 0.84;
  let w = read / 100;
  for (let i = 0; i < 60 && high - low > 1e-9; i++) {
    // below 0 the straight line of dilute solutions goes on
    const n = w < 0 ? indexOfSucrose(0, celsius) + w * 100 * (indexOfSucrose(0.01, celsius) - indexOfSucrose(0, celsius)) : indexOfSucrose(w, celsius);
    if (n > target) high = w; else low = w;
    w = (low + high) / 2;
  }
  return 100 * w - read;
}

function tableAt(celsius: number, read: number): number {
  const row = place(table.t_C, celsius), column = place(table.pct, read);
  const cell = (i: number, j: number): number => {
    const line = table.add[i]!;
    for (let k = j; k >= 0; k--) {
      const v = line[k];
      if (v !== null && v !== undefined) return k === j ? v : (v * byIndex(table.t_C[i]!, table.pct[j]!)) / byIndex(table.t_C[i]!, table.pct[k]!);
    }
    return NaN;
  };
  const [i, f] = row, [j, g] = column;
  const i1 = Math.min(i + 1, table.t_C.length - 1), j1 = Math.min(j + 1, table.pct.length - 1);
  return (1 - f) * ((1 - g) * cell(i, j) + g * cell(i, j1)) + f * ((1 - g) * cell(i1, j) + g * cell(i1, j1));
}

/** Index of the step below and how far into it, held at the ends. */
function place(steps: readonly number[], x: number): [number, number] {
  const last = steps.length - 1;
  if (x <= steps[0]!) return [0, 0];
  if (x >= steps[last]!) return [last, 0];
  let i = 0;
  while (steps[i + 1]! < x) i++;
  return [i, (x - steps[i]!) / (steps[i + 1]! - steps[i]!)];
}

/**
 * What is to be added to a refractometer's reading because prism and liquid are not at 20 °C (an instrument that does not correct)?
 * @param celsius 5..40 °C
 * @param read_pct °Brix read, 0..84
 * @returns °Brix to add, negative below 20 °C. From 5 to 16 °C and 10 to 75 % the printed table, between its points straight; elsewhere the
 * index of sucrose solutions, brought to the table at its nearest edge. Above 20 °C no table was at hand: spread 0.05
 * @source oiv-temperature table I; oiv-refraction and sps4 beyond
 */
export function refractometerCorrection(celsius: number, read_pct: number): number {
  if (celsius === 20) return 0;
  const t = celsius < 5 ? 5 : celsius > 16 ? 16 : celsius;
  const r = read_pct < 10 ? 10 : read_pct > 75 ? 75 : read_pct;
  const edge = tableAt(t, r);
  return t === celsius && r === read_pct ? edge : (edge * byIndex(celsius, read_pct)) / byIndex(t, r);
}

/**
 * What juice tables add to the °Brix read because anhydrous citric acid refracts less than sugar, so that acid counts in full.
 * @param citric_pct g per 100 g, 0..20
 * @returns °Brix to add, about 0.19 per 1 %; an industry convention: the index of citric acid itself asks for 0.12 to 0.13
 * @source stevens-baier1939 acid correction
 */
export function brixToAddForAcid(citric_pct: number): number {
  return citric_pct <= 0 ? 0 : 0.012 * Math.min(1, citric_pct) + 0.193 * citric_pct - 0.0004 * citric_pct * citric_pct;
}
