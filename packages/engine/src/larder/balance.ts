import { ACIDS, chargeAt, constantsAt, molarInto, pH } from '../acids/index.ts';
import { strengthIn, volumeAt20 } from '../liquids/index.ts';
import { at } from '../matter/constituents.ts';
import { composition } from './composition.ts';
import { statesAcids, strongIons } from './ions.ts';
import type { Ingredient } from './types.ts';

/**
 * How an ingredient stands with pH. `own`: it states acids and a pH, and the net charge of its strong ions follows from both. `ions`: it states acids and salts
 * but no pH. `pure`: an acid, a salt or a solution of them, as its ions have it. `none`: it brings nothing that moves a pH. `unknown`: it has acids or salts that no
 * table gives whole, so that it has no pH of its own and withholds that of what it is in.
 */
export type IonKind = 'own' | 'ions' | 'pure' | 'none' | 'unknown';

/** How the salts and acids of 100 g balance: mol per 100 g, pH at its middle and ends. */
export interface IonBalance {
  readonly kind: IonKind;
  /** net charge of strong ions that gives the row its own pH (`own`), or as potassium and sodium have it */
  readonly charge_mol: number;
  /** where the tables start: potassium and sodium, table salt aside */
  readonly start_mol: number;
  /** ends of the row's own pH; NaN without */
  readonly low: number; readonly high: number;
  /** mol of all acids */
  readonly acids_mol: number;
  /** pH that the starting charge would give; NaN without acids */
  readonly naive: number;
}

/** Below this share of its potassium a solved charge says that acids are missing from the row. */
const LEAST = 0.2;

/** mol of each acid per litre of the row as sold, in the order of the constituents, and the litres 100 g fill. */
function acidsOf(ingredient: Ingredient): { readonly perLitre: Float64Array; readonly litres: number; readonly strength: number; readonly casein: number; readonly mol: number } {
  const { grams } = composition(ingredient);
  const mL = volumeAt20(grams, 0);
  const litres = mL / 1000;
  const perLitre = new Float64Array(ACIDS);
  const mol = molarInto(perLitre, grams, 0, mL) * litres;
  return { perLitre, litres, strength: strengthIn(grams[at.ethanol]!, mL), casein: grams[at.casein]! / litres, mol };
}

/**
 * Balances a row: its net strong-ion charge solved so that the row's own pH comes back at the middle of its band, potassium and sodium being where it starts.
 * @param ingredient a row of the larder, per 100 g
 * @returns the balance; charge 0 for what brings nothing or is unknown
 * @source goldberg-2002 constants; spana-davies activities; usda-sr28 potassium and sodium
 */
export function balanceOf(ingredient: Ingredient): IonBalance {
  const known = kept.get(ingredient);
  if (known) return known;
  const made = balance(ingredient);
  kept.set(ingredient, made);
  return made;
}
/** Rows never change: each is balanced once. */
const kept = new WeakMap<Ingredient, IonBalance>();

function balance(ingredient: Ingredient): IonBalance {
  const start_mol = strongIons(ingredient);
  const [bottom, top] = [ingredient.cells['ph_low'], ingredient.cells['ph_high']];
  const low = bottom?.value ?? NaN, high = top?.value ?? NaN;
  const plain = { start_mol, low, high, acids_mol: 0, naive: NaN };
  const word = ingredient.text['acids'];
  const states = statesAcids(ingredient);
  if (ingredient.category === 'acid' || (word !== 'stated' && word !== 'unknown')) {
    const pure = states || ingredient.category === 'mineral' || ingredient.category === 'acid';
    return pure ? { ...withAcids(ingredient, start_mol), kind: 'pure', charge_mol: start_mol, start_mol, low, high } : { ...plain, kind: 'none', charge_mol: 0 };
  }
  if (!states) return { ...plain, kind: 'unknown', charge_mol: 0 };
  const brought = withAcids(ingredient, start_mol);
  if (Number.isNaN(low)) {
    const salts = ingredient.cells['potassium_mg'] !== undefined;
    return { ...brought, kind: salts ? 'ions' : 'unknown', charge_mol: salts ? start_mol : 0, start_mol, low, high };
  }
  const { perLitre, litres, strength, casein } = acidsOf(ingredient);
  const charge_mol = chargeAt(perLitre, 0, (low + high) / 2, constantsAt(20, strength), 0, casein) * litres;
  const whole = charge_mol >= LEAST * start_mol && charge_mol >= 0;
  return { ...brought, kind: whole ? 'own' : 'unknown', charge_mol, start_mol, low, high };
}

function withAcids(ingredient: Ingredient, start_mol: number): { readonly acids_mol: number; readonly naive: number } {
  const { perLitre, litres, strength, casein, mol } = acidsOf(ingredient);
  return { acids_mol: mol, naive: mol > 0 ? pH(perLitre, 0, start_mol / litres, constantsAt(20, strength), 0, casein) : NaN };
}
