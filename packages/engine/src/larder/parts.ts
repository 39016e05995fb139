import type { Ingredient } from './types.ts';
import { MOLAR_MASS } from '../acids/index.ts';
import { at, CONSTITUENTS, type Constituent } from '../matter/constituents.ts';
import { agentOf } from './form.ts';

/** g of sodium chloride per g of sodium: 58.443 / 22.990. */
const SALT_PER_SODIUM = 58.443 / 22.990;
const SUGARS = ['sucrose', 'glucose', 'fructose', 'lactose', 'maltose'] as const;
const ACIDS = ['citric', 'malic', 'tartaric', 'lactic', 'acetic', 'phosphoric', 'ascorbic', 'quinic', 'succinic', 'other_acid'] as const;

const g = (ingredient: Ingredient, column: string): number => ingredient.cells[column]?.value ?? 0;
const isConstituent = (word: string | undefined): word is Constituent => (CONSTITUENTS as readonly string[]).includes(word ?? '');

/** Where the carbohydrate that no column names goes: into the liquid, into what stays in the cloth, or a kind of its own. @source none - definition */
export function restOf(ingredient: Ingredient): Constituent {
  const written = ingredient.text['rest'];
  return isConstituent(written) ? written : 'other_solubles';
}

/** Puts protein where it belongs: casein and whey, egg, gelatin, else other protein. @source bylund-protein casein and whey of milk protein */
export function putProtein(grams: Float64Array, ingredient: Ingredient): void {
  const total = g(ingredient, 'protein_g');
  const agent = agentOf(ingredient);
  if (agent && ingredient.text['agent_of'] === 'protein') { grams[at[agent]]! += total; return; }
  if (ingredient.category === 'egg') { grams[at.egg_protein]! += total; return; }
  const [casein, whey, other] = [g(ingredient, 'casein_g'), g(ingredient, 'whey_g'), g(ingredient, 'other_protein_g')];
  grams[at.casein]! += casein;
  grams[at.whey]! += whey;
  grams[at.other_protein]! += Math.max(other, total - casein - whey);
}

/** Puts the sugars by kind; what the total has beyond them goes to the kind usual for the row. Returns their sum. @source none - definition */
export function putSugars(grams: Float64Array, ingredient: Ingredient): number {
  let named = 0;
  for (const sugar of SUGARS) { const mass = g(ingredient, `${sugar}_g`); grams[at[sugar]]! += mass; named += mass; }
  const beyond = Math.max(0, g(ingredient, 'sugars_g') - named);
  const usual = ingredient.text['sugar'];
  grams[at[isConstituent(usual) ? usual : 'other_sugars']]! += beyond;
  return named + beyond;
}

/** Puts the acids. Returns their sum. @source none - definition */
export function putAcids(grams: Float64Array, ingredient: Ingredient): number {
  let sum = 0;
  for (const acid of ACIDS) { const mass = g(ingredient, `${acid}_g`); grams[at[acid]]! += mass; sum += mass; }
  return sum;
}

/**
 * Phosphate and citrate of a dairy, as the acids they come from: mmol/kg to g per 100 g. They stand in its ash.
 * @source goldberg-2002 molar masses
 */
export function buffersOf(ingredient: Ingredient): { readonly phosphoric: number; readonly citric: number } {
  if (g(ingredient, 'casein_g') <= 0) return { phosphoric: 0, citric: 0 };
  return { phosphoric: (g(ingredient, 'phosphate_mmol_kg') * MOLAR_MASS[at.phosphoric - at.citric]!) / 10_000, citric: (g(ingredient, 'citrate_mmol_kg') * MOLAR_MASS[0]!) / 10_000 };
}

/** Splits ash into table salt, where the row's sodium is salt, phosphate and citrate of a dairy, and the rest. @source chem-handbook molar masses */
export function putAsh(grams: Float64Array, ingredient: Ingredient): void {
  const ash = g(ingredient, 'ash_g');
  const salt = ingredient.text['sodium'] === 'salt' ? Math.min(ash, (g(ingredient, 'sodium_mg') / 1000) * SALT_PER_SODIUM) : 0;
  const { phosphoric, citric } = buffersOf(ingredient);
  grams[at.phosphoric]! += phosphoric;
  grams[at.citric]! += citric;
  grams[at.salt]! += salt;
  grams[at[isConstituent(ingredient.text['ash']) ? ingredient.text['ash'] : 'ash']]! += Math.max(0, ash - salt - phosphoric - citric);
}

/**
 * Splits what carbohydrate holds beside sugars: fibre, pectin, tannin, caffeine, acids where the row counts them in, and the rest.
 * An agent takes all of it, or its fibre alone, as its row says. @source none - definition
 */
export function putCarbohydrate(grams: Float64Array, ingredient: Ingredient, sugars: number, acids: number): void {
  const agent = agentOf(ingredient);
  const from = agent ? ingredient.text['agent_of'] : undefined;
  const carbohydrate = g(ingredient, 'carb_g');
  const [tannin, caffeine] = [g(ingredient, 'tannin_g'), g(ingredient, 'caffeine_mg') / 1000];
  const inside = sugars + tannin + caffeine + (ingredient.acidsInCarb ? acids : 0);
  // tables count tannin that clings to the leaf as fibre
  const fibre = Math.max(0, g(ingredient, 'fibre_g') - Math.max(0, Math.min(tannin + caffeine, inside + g(ingredient, 'fibre_g') - carbohydrate)));
  const pectin = Math.min(g(ingredient, 'pectin_g'), fibre);
  grams[at.tannin]! += tannin;
  grams[at.caffeine]! += caffeine;
  if (agent && from === 'carb') { grams[at[agent]]! += Math.max(0, carbohydrate - inside); return; }
  if (agent && from === 'fibre') grams[at[agent]]! += fibre;
  else { grams[at.pectin]! += pectin; grams[at.fibre]! += fibre - pectin; }
  grams[at[restOf(ingredient)]]! += Math.max(0, carbohydrate - inside - fibre);
}

/** Fat, or an agent that is counted as fat. @source none - definition */
export function putFat(grams: Float64Array, ingredient: Ingredient): void {
  grams[at.fat]! += g(ingredient, 'fat_g');
}
