import table from '../../../../data/physics/wines.json' with { type: 'json' };
import { ACIDS, chargeAt, constantsAt, constantsInto, EQUIVALENT, MOLAR_MASS, pH } from '../acids/index.ts';
import { at, BLOCK } from '../matter/constituents.ts';
import { densityOf, ETHANOL_G_ML, volume } from '../liquids/index.ts';

/** Colour of a measured wine. @source none - definition */
export type Colour = 'red' | 'white';

/** One wine as analysed: acidities, sugar and salts in g/L, density in kg/m³ at 20 °C, strength in % vol. */
export interface Wine {
  readonly colour: Colour;
  /** as tartaric acid, citric acid in it, acetic not */
  readonly fixed: number;
  /** as acetic acid */
  readonly volatile: number;
  readonly citric: number;
  readonly sugar: number;
  /** as sodium chloride */
  readonly chlorides: number;
  /** as potassium sulfate */
  readonly sulphates: number;
  readonly density: number;
  readonly ph: number;
  readonly strength: number;
}

const place = (acid: keyof typeof at): number => at[acid] - at.citric;
const TARTARIC = place('tartaric');
const WATER = constantsAt(20);
const WINE = constantsAt(20);
const block = new Float64Array(BLOCK);
const acids = new Float64Array(ACIDS);

/**
 * Density of a wine from the rest of its analysis and what that leaves unnamed.
 * @param extract g/L of what is not named
 * @returns kg/m³ at 20 °C
 * @source uci-wine-2009 columns; oiml-r22; crc-solutions
 */
export function wineDensity(wine: Wine, extract: number): number {
  block.fill(0);
  block[at.ethanol] = 10 * wine.strength * ETHANOL_G_ML;
  block[at.glucose] = block[at.fructose] = wine.sugar / 2;
  block[at.citric] = wine.citric;
  block[at.tartaric] = Math.max(0, wine.fixed - (wine.citric * EQUIVALENT[TARTARIC]!) / EQUIVALENT[0]!);
  block[at.acetic] = wine.volatile;
  block[at.salt] = wine.chlorides;
  block[at.ash] = wine.sulphates;
  block[at.other_solubles] = extract;
  for (let i = 0; i < 12; i++) block[at.water]! += 1000 - volume(block, 0, 20);
  return 1000 * densityOf(block, 0, 20);
}

/**
 * pH of a wine from the rest of its analysis and the cations on its organic acids: its acids are those that the titration and the cations together ask for.
 * @param cation mmol/L, strong cations less those of chloride and sulfate
 * @param share of the rule for ethanol, 1
 * @returns pH at 20 °C
 * @source uci-wine-2009 columns; goldberg-2002 constants; prenesti-2012 ethanol
 */
export function winePH(wine: Wine, cation: number, share = 1): number {
  const strong = cation / 1000;
  const bound = wine.fixed / EQUIVALENT[TARTARIC]! + strong;
  const citric = wine.citric / MOLAR_MASS[0]!;
  let rest = Math.max(0, bound - (3 * wine.citric) / MOLAR_MASS[0]!);
  for (let i = 0; i < 4; i++) {
    put(wine.colour, citric, rest);
    rest = Math.max(0, rest + bound - chargeAt(acids, 0, table.end_point.pH, WATER));
  }
  put(wine.colour, citric, rest);
  acids[place('acetic')] = wine.volatile / MOLAR_MASS[place('acetic')]!;
  constantsInto(WINE, WATER, wine.strength, share);
  return pH(acids, 0, strong, WINE, saltOf(wine));
}

/** Salts that are neutral, mol/L of 1 : 1 salt. */
function saltOf(wine: Wine): number {
  return wine.chlorides / 58.443 + (3 * wine.sulphates) / 174.259;
}

/** Acids of a wine in mol/L: citric, and `rest` mol of protons a litre split as its colour usually has them. */
function put(colour: Colour, citric: number, rest: number): void {
  acids.fill(0);
  acids[0] = citric;
  for (const [acid, share] of Object.entries(table.split[colour])) {
    const i = place(acid as keyof typeof at);
    acids[i] = (rest * share * EQUIVALENT[i]!) / MOLAR_MASS[i]!;
  }
}
