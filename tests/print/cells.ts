import { readFileSync } from 'node:fs';

export type Row = Readonly<Record<string, string>>;

/** Rows of a tab-separated sheet. */
export function rows(text: string): Row[] {
  const [head = '', ...lines] = text.replace(/\r?\n$/, '').split(/\r?\n/);
  const columns = head.split('\t');
  return lines.map((line) => {
    const cells = line.split('\t');
    return Object.fromEntries(columns.map((column, at) => [column, cells[at] ?? '']));
  });
}

const file = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
export const sheet = (name: string): Row[] => rows(file(`data/${name}`));
/** What a row of a sheet is called. */
export const nameOf = (row: Row): string => row['id'] ?? row['key'] ?? '';

/** Cells as their sources print them, by sheet and row: USDA, Ciqual, CoFID, the FDA's list of pH, EU and US law, papers. Copied from print, never from data/. */
const printed = new Map<string, Row[]>();
for (const cell of rows(file('cases/print/cells.tsv'))) {
  const key = `${cell['sheet']} ${cell['row']}`;
  const list = printed.get(key);
  if (list) list.push(cell); else printed.set(key, [cell]);
}
export const sheets: readonly string[] = ['larder/ingredients.tsv', 'larder/craft.tsv', 'spreads.tsv', 'assumptions.tsv'];
export const printedCells = (name: string, row: Row): readonly Row[] => printed.get(`${name} ${nameOf(row)}`) ?? [];

/** How a row differs from print, one sentence for each cell. */
export function differs(name: string, row: Row): string[] {
  return printedCells(name, row).filter((cell) => row[cell['column'] ?? ''] === '' || Number(row[cell['column'] ?? '']) !== Number(cell['printed']))
    .map((cell) => `${nameOf(row)}: ${cell['column']} is ${row[cell['column'] ?? '']}, ${cell['source']} prints ${cell['printed']}`);
}

/** Do not add up as they are printed (black pepper 02030, the ash of baking soda), or their main substance has no column. */
const DO_NOT_ADD_UP = new Set(['pepper-black', 'baking-soda', 'msg', 'activated-charcoal', 'carmine']);
/** Energy by other factors: USDA's own of cocoa and spices, polyols and gums that are burnt in part or not, salts of acids. */
const OTHER_ENERGY = new Set(['cocoa-powder', 'cocoa-powder-alkalised', 'allspice', 'clove', 'cayenne', 'lecithin-soy', 'isomalt', 'erythritol', 'xylitol', 'phosphoric-acid-85', 'xanthan-gum',
  'gum-arabic', 'methylcellulose', 'gellan', 'sodium-alginate', 'carrageenan', 'quillaja-extract', 'chitosan', 'pectinase', 'glycerol', 'dipotassium-phosphate']);
/** Salts whose acid stands in a column of its own: their ash was not printed, or is that left by burning. */
const SALTS = new Set(['sodium-citrate', 'dipotassium-phosphate']);
const ETHANOL_G_ML = 0.78924;      // OIML R 22, 20 °C
const number = (row: Row, column: string): number => (row[column] ? Number(row[column]) : NaN);
const sum = (row: Row, columns: readonly string[]): number => columns.reduce((total, column) => total + (Number(row[column]) || 0), 0);
const ACIDS = ['citric_g', 'malic_g', 'tartaric_g', 'lactic_g', 'acetic_g', 'ascorbic_g', 'phosphoric_g', 'quinic_g', 'succinic_g', 'other_acid_g'];

/** What cannot be in a row of ingredients: parts above their whole, mass made of nothing, a strength that is not its ethanol, energy that is not that of its parts. */
export function impossible(row: Row): string[] {
  const wrong: string[] = [];
  const say = (what: string): void => { wrong.push(`${nameOf(row)}: ${what}`); };
  const parts = sum(row, ['water_g', 'protein_g', 'fat_g', 'carb_g', 'ash_g', 'alcohol_g']) + (row['acids_in_carb'] === 'no' ? sum(row, ACIDS) : 0);
  if (row['water_g'] && !DO_NOT_ADD_UP.has(nameOf(row)) && Math.abs(parts - 100) > 3.2) say(`its parts weigh ${parts.toFixed(2)} of 100 g`);
  const within = (part: number, whole: number, slack: number, what: string): void => { if (part > whole + slack) say(what); };
  within(number(row, 'satfat_g'), number(row, 'fat_g'), 0.05, 'more saturated fat than fat');
  within(number(row, 'fibre_g'), number(row, 'carb_g'), 0.05, 'more fibre than carbohydrate');
  within(number(row, 'sugars_g'), number(row, 'carb_g'), 0.9, 'more sugar than carbohydrate');
  within(sum(row, ['sucrose_g', 'glucose_g', 'fructose_g', 'lactose_g', 'maltose_g']), number(row, 'sugars_g'), 1.2, 'its sugars are more than its sugar');
  const [alcohol, density, strength] = [number(row, 'alcohol_g'), number(row, 'density_g_ml'), number(row, 'abv_pct')];
  if (strength > 0.5 && Math.abs((alcohol * density) / ETHANOL_G_ML - strength) > Math.max(0.15, 0.015 * strength)) say('its ethanol is not its strength');
  if (strength > 0.5 && !(alcohol > 0.2)) say('strength without ethanol');
  if (!(strength >= 0.5) && strength >= 0 && alcohol > 0.6) say('ethanol without strength');
  if (number(row, 'abv_min_law') > strength + 0.01) say('weaker than its law asks');
  if (strength > number(row, 'abv_max_law') + 0.01) say('stronger than its law allows');
  if (number(row, 'sugar_min_law_g_l') > number(row, 'sugar_g_l') + 0.5) say('less sugar than its law asks');
  if (number(row, 'ph_low') > number(row, 'ph_high') || number(row, 'ph_low') < 1 || number(row, 'ph_high') > 12.5) say('its band of pH has no inside');
  if (row['acids_in_carb'] === 'yes' && row['source']?.startsWith('usda')) within(sum(row, ['sugars_g', 'fibre_g']) + sum(row, ACIDS), number(row, 'carb_g'), 2, 'sugar, fibre and acid are more than its carbohydrate');
  if (row['acids_in_carb'] === 'yes') within(sum(row, ACIDS), number(row, 'carb_g'), 0.1, 'more acid than the carbohydrate it stands in');
  const minerals = (number(row, 'sodium_mg') || 0) + (number(row, 'potassium_mg') || 0);
  if (row['ash_g'] && !SALTS.has(nameOf(row)) && minerals / 1000 > number(row, 'ash_g') + 0.25) say('more sodium and potassium than ash');
  // Regulation (EU) 1169/2011, Annex XIV: 4 kcal a gram of carbohydrate and protein, 9 of fat, 7 of ethanol, 3 of acids, 2 of fibre
  const acids = sum(row, ACIDS);
  const inCarb = row['acids_in_carb'] === 'no' ? 0 : acids;
  const energy = 4 * (number(row, 'protein_g') + number(row, 'carb_g') - (number(row, 'fibre_g') || 0) - inCarb) + 9 * number(row, 'fat_g') + 7 * number(row, 'alcohol_g') + 3 * acids + 2 * (number(row, 'fibre_g') || 0);
  if (!OTHER_ENERGY.has(nameOf(row)) && Math.abs(energy - number(row, 'energy_kcal')) > Math.max(14, 0.15 * energy)) say(`energy of its parts is ${energy.toFixed(0)} kcal, not ${row['energy_kcal']}`);
  return wrong;
}

/** What cannot be in a row of craft facts. */
export function impossibleCraft(row: Row): string[] {
  const wrong: string[] = [];
  for (const column of Object.keys(row)) if (column.endsWith('_class') && row[column] && ![0, 1, 2, 3].includes(Number(row[column]))) wrong.push(`${nameOf(row)}: ${column} is no class`);
  if (Number(row['aroma']) > 1) wrong.push(`${nameOf(row)}: more than all of its aroma`);
  if (number(row, 'fat_melt_low_c') > number(row, 'fat_melt_high_c')) wrong.push(`${nameOf(row)}: its fat is fluid before it begins to melt`);
  if (number(row, 'bloom_low') > number(row, 'bloom_high')) wrong.push(`${nameOf(row)}: its Bloom has no inside`);
  if (number(row, 'phosphate_mmol_kg') > number(row, 'phosphorus_total_mmol_kg')) wrong.push(`${nameOf(row)}: more phosphate than phosphorus`);
  return wrong;
}
