import { provenances, sheet } from './sheet.mjs';

const COMPOSITION = ['water_g', 'energy_kcal', 'protein_g', 'fat_g', 'satfat_g', 'carb_g', 'fibre_g', 'sugars_g', 'sucrose_g', 'glucose_g', 'fructose_g', 'lactose_g',
  'maltose_g', 'alcohol_g', 'ash_g', 'sodium_mg', 'potassium_mg', 'caffeine_mg'];
const ACIDS = ['citric_g', 'malic_g', 'tartaric_g', 'lactic_g', 'acetic_g', 'ascorbic_g', 'phosphoric_g', 'quinic_g', 'succinic_g'];
const LABEL = ['abv_pct', 'abv_min_law', 'abv_max_law', 'sugar_g_l', 'sugar_min_law_g_l', 'density_g_ml', 'ph_low', 'ph_high'];
const CRAFT = ['casein_g', 'whey_g', 'other_protein_g', 'phosphate_mmol_kg', 'phosphorus_total_mmol_kg', 'citrate_mmol_kg', 'calcium_mmol_kg', 'tannin_class', 'tannin_g',
  'pectin_class', 'pectin_g', 'protease_class', 'fat_melt_low_c', 'fat_melt_high_c', 'aroma', 'turbidity_class', 'gas_volumes', 'insolubles_g', 'quinine_mg_kg',
  'bloom_low', 'bloom_high', 'unit_mass_g'];
const CRAFT_TEXT = ['heat_treatment', 'stabilised', 'protease', 'whips', 'whips_by', 'holds', 'surface_active', 'tint', 'anise_oil'];
const FORM = ['held_g_g', 'extractable_share'];
const FORM_TEXT = ['form', 'start', 'label', 'agent', 'agent_of', 'rest', 'sugar', 'sodium', 'acids', 'ash'];
const FLAGS = ['acids_in_carb', 'vegan', 'vegetarian', 'allergens_eu', 'allergens_us', 'hazards'];
const NUMBERS = [...COMPOSITION, ...ACIDS, 'other_acid_g', ...LABEL, ...CRAFT, ...FORM];
const TEXTS = [...FLAGS, 'other_acid', ...CRAFT_TEXT, ...FORM_TEXT, 'note'];

/** `column:source[grade]` pairs of a cell, by column. */
const pairs = (text) => new Map(text.split(';').filter(Boolean).map((part) => {
  const [, column, source, grade] = /^(\w+):(.+)\[(\w+)\]$/.exec(part) ?? [];
  if (!column) throw new Error(`data/larder: "${part}" is not column:source[grade].`);
  return [column, { source, grade }];
}));

/** What a row of `forms.tsv` says of one ingredient: its category's line, and over it the line of its own. */
function formOf(row, forms) {
  const group = forms.get(`category/${row.category}`);
  if (!group) throw new Error(`data/larder/forms.tsv has no line for category/${row.category}.`);
  const own = forms.get(row.id);
  const pick = (column) => {
    const line = own?.[column] ? own : group;
    return { value: line[column] === '-' ? '' : line[column], source: line.source, grade: line.grade };
  };
  return Object.fromEntries([...FORM, ...FORM_TEXT].map((column) => [column, pick(column)]));
}

/** Where one number of a row comes from. */
function from(row, column, craft, form, acids) {
  const whole = { source: row.source, grade: row.grade };
  if (CRAFT.includes(column)) return craft?.sources.get(column);
  if (FORM.includes(column)) return form[column];
  if (ACIDS.includes(column)) return acids.get(column.slice(0, -2)) ?? whole;
  switch (column) {
    case 'abv_pct': return { source: row.abv_grade === 'predicted' ? row.source : 'common-practice', grade: row.abv_grade };
    case 'abv_min_law': case 'abv_max_law': return { source: row.abv_law_source, grade: row.abv_law_grade };
    case 'sugar_g_l': return { source: 'common-practice', grade: row.sugar_grade };
    case 'sugar_min_law_g_l': return { source: row.abv_law_source || row.source, grade: row.sugar_law_grade };
    case 'density_g_ml': return { source: row.density_source, grade: row.density_grade };
    case 'ph_low': case 'ph_high': return { source: row.ph_source, grade: row.ph_grade };
    default: return whole;
  }
}

/** The larder as one text of rows: id, name, category, numbers, texts, then which provenance each number has. */
export function larder() {
  const forms = new Map(sheet('larder/forms.tsv').rows.map((row) => [row.scope, row]));
  const crafts = new Map(sheet('larder/craft.tsv').rows.map((row) => [row.id, { ...row, sources: pairs(row.sources) }]));
  const known = provenances();
  const lines = sheet('larder/ingredients.tsv').rows.map((row) => {
    const craft = crafts.get(row.id);
    const form = formOf(row, forms);
    const acids = pairs(row.acids_source);
    const number = (column) => (FORM.includes(column) ? form[column].value : CRAFT.includes(column) ? craft?.[column] ?? '' : row[column]);
    const text = (column) => {
      if (FORM_TEXT.includes(column)) return form[column].value;
      if (CRAFT_TEXT.includes(column)) return craft?.[column] ?? '';
      return column === 'note' ? [row.note, craft?.note].filter(Boolean).join('; ') : row[column];
    };
    const whole = known.of(row.grade, row.source);
    const others = NUMBERS.flatMap((column, i) => {
      if (number(column) === '') return [];
      const where = from(row, column, craft, form, acids);
      if (!where?.source || !where.grade) throw new Error(`data/larder: ${row.id} ${column} has no source or no grade.`);
      const code = known.of(where.grade, where.source);
      return code === whole ? [] : [`${i.toString(36)}:${code}`];
    });
    return [row.id, row.name, row.category, ...NUMBERS.map(number), ...TEXTS.map(text), [whole, ...others].join(' ')].join('\t');
  });
  return { numbers: NUMBERS.join(' '), texts: TEXTS.join(' '), provenance: known.list.join('\n'), rows: lines.join('\n') };
}
