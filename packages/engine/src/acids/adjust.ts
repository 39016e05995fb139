import table from '../../../../data/physics/acids.json' with { type: 'json' };
import { EQUIVALENT } from './constants.ts';
import { monohydrateFromCitric } from './titration.ts';

const { juices, printed, targets, malic_share } = table.adjust;
const CITRIC = EQUIVALENT[0]!, MALIC = EQUIVALENT[1]!;

/** Fruit whose sourness another juice is brought to. @source acid-adjusting */
export type SourFruit = 'lime' | 'lemon';

/** Powder for a litre of juice, g. Citric acid as the anhydrous powder, or as the monohydrate in its place; never both. */
export interface AcidDose { readonly citric_g: number; readonly citric_monohydrate_g: number; readonly malic_g: number }

/**
 * Grams of an acid to add to bring a juice from its own share to a wanted one.
 * litres: of juice, 0 and up; native, target: g per 100 mL. 0 when it already has as much.
 * @source acid-adjusting (target - native) × 10 g per litre
 */
export function acidToAdd(litres: number, native: number, target: number): number {
  return litres * Math.max(0, target - native) * 10;
}

/**
 * Citric and malic acid in g per litre that the trade prints for a juice that is to be as sour as another.
 * from: `orange`, `pineapple`, `grapefruit`, or the id of their rows in the larder; to: `lemon`, `lime`. undefined for other pairs.
 * @source acid-adjusting
 */
export function adjustDose(from: string, to: string): readonly [number, number] | undefined {
  const name = (juices as Readonly<Record<string, string>>)[from] ?? from;
  return (printed as unknown as Readonly<Record<string, readonly [number, number]>>)[`${name} to ${to}`];
}

/** A dose of citric and malic acid with the monohydrate told apart: 1.094 times the anhydrous. @source goldberg-2002 formula */
export function doseOf(citric_g: number, malic_g: number): AcidDose {
  return { citric_g, citric_monohydrate_g: monohydrateFromCitric(citric_g), malic_g };
}

/**
 * What brings a juice to the 6 % the trade reckons lime (4 citric, 2 malic) or lemon (6 citric) with, each acid by itself.
 * citric, malic: of the juice, g per litre, 0 and up. Per litre of juice before it grows by 0.6 mL a gram.
 * @source acid-adjusting (target - native) × 10 g per litre; lime-acid 4 and 2 %
 */
export function doseToTrade(fruit: SourFruit, citric: number, malic: number): AcidDose {
  const [wanted, wantedMalic] = targets[fruit] as [number, number];
  return doseOf(acidToAdd(1, citric / 10, wanted), acidToAdd(1, malic / 10, wantedMalic));
}

/**
 * What brings a juice to the titratable acidity of fruit that was titrated: citric and malic two to one for lime, citric alone for lemon.
 * acidity, wanted: of the juice and of the fruit, g per litre as citric acid to pH 8.2. Nothing where the juice is as sour. Per litre of juice before it grows.
 * @source awri-tn14 equivalents; lime-acid split
 */
export function doseToAcidity(fruit: SourFruit, acidity: number, wanted: number): AcidDose {
  const short = Math.max(0, wanted - acidity), share = malic_share[fruit];
  const grams = short / (1 - share + (share * CITRIC) / MALIC);
  return doseOf(grams * (1 - share), grams * share);
}
