import { ACIDS, adjustDose, doseOf, doseToAcidity, doseToTrade, equivalentMass, molarInto, titratableAcidity, type AcidDose, type SourFruit } from '../acids/index.ts';
import { volumeAt20 } from '../liquids/index.ts';
import { at } from '../matter/constituents.ts';
import { balanceOf } from './balance.ts';
import { composition } from './composition.ts';
import type { Ingredient, Tables } from './types.ts';

/** How sour a liquid of the larder is, g in a litre; acidity: titratable to pH 8.2, as citric acid. */
export interface Sourness { readonly citric: number; readonly malic: number; readonly acidity: number }

/** A dose for a litre of a juice: `printed` by the trade, to the `trade`'s 6 %, or to `fruit` that was titrated; and the titratable acidity it leads to. */
export interface SourDose extends AcidDose { readonly to: SourFruit; readonly by: 'printed' | 'trade' | 'fruit'; readonly aim_g_l: number | null; readonly acidity_g_l: number }

const FRUITS: readonly SourFruit[] = ['lime', 'lemon'];
/** A juice as sour as this share of the fruit is left alone. */
const SOUR_ENOUGH = 0.75;
const JUICES = ['juice', 'juice-citrus'];

/**
 * How sour is a liquid of the larder, by its acids and the salts that its own pH asks for?
 * @param ingredient a row of the larder
 * @returns g per litre at 20 °C; undefined where its acids or salts are not known
 * @source goldberg-2002 constants; awri-tn14 equivalents
 */
export function sournessOf(ingredient: Ingredient): Sourness | undefined {
  const balance = balanceOf(ingredient);
  if (balance.kind === 'unknown' || balance.kind === 'none') return undefined;
  const { grams } = composition(ingredient);
  const mL = volumeAt20(grams, 0), litres = mL / 1000, mol = new Float64Array(ACIDS);
  if (!(litres > 0)) return undefined;
  molarInto(mol, grams, 0, mL);
  return { citric: grams[at.citric]! / litres, malic: grams[at.malic]! / litres, acidity: Math.max(0, titratableAcidity(mol, 0, balance.charge_mol / litres)) };
}

/**
 * What makes a litre of a juice as sour as lime or lemon, each in up to three ways: as the trade prints it, to the trade's 6 % by the juice's own acids, and to the
 * titratable acidity of this week's fruit.
 * @param juice a row of the larder
 * @param week titratable acidity of the fruit at hand, g per litre as citric acid; the larder's own row where it is not said
 * @returns doses in g per litre of juice before it grows; none where the row is no juice, its acids are not known, or it is as sour already
 * @source acid-adjusting doses and rule; lime-acid split
 */
export function acidDoses(juice: Ingredient, tables: Pick<Tables, 'ingredient'>, week: Readonly<Partial<Record<SourFruit, number>>> = {}): readonly SourDose[] {
  const own = JUICES.includes(juice.category) ? sournessOf(juice) : undefined;
  if (!own) return [];
  return FRUITS.flatMap((to) => {
    const row = tables.ingredient(`${to}-juice`);
    const aim = week[to] ?? (row ? sournessOf(row)?.acidity : undefined);
    if (aim !== undefined && own.acidity >= SOUR_ENOUGH * aim) return [];
    const asPrinted = adjustDose(juice.id, to);
    const ways: SourDose[] = [];
    const put = (by: SourDose['by'], dose: AcidDose, aim_g_l: number | null) => {
      if (dose.citric_g + dose.malic_g > 0) ways.push({ to, by, ...dose, aim_g_l, acidity_g_l: own.acidity + dose.citric_g + equivalentMass(dose.malic_g, 'malic', 'citric') });
    };
    if (asPrinted) put('printed', doseOf(...(asPrinted as [number, number])), null);
    put('trade', doseToTrade(to, own.citric, own.malic), null);
    if (aim !== undefined) put('fruit', doseToAcidity(to, own.acidity, aim), aim);
    return ways;
  });
}
