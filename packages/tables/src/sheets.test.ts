import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const DATA = fileURLToPath(new URL('../../../data/', import.meta.url));
type Row = Record<string, string>;
const text = (name: string) => readFileSync(join(DATA, name), 'utf8');
function sheet(name: string): Row[] {
  const [head = '', ...lines] = text(name).trimEnd().split('\n');
  const columns = head.split('\t');
  return lines.map((line, i) => {
    const cells = line.split('\t');
    expect(cells.length, `data/${name}:${i + 2}`).toBe(columns.length);
    return Object.fromEntries(columns.map((column, at) => [column, cells[at] ?? '']));
  });
}
const GRADES = new Set(['defined', 'measured', 'own', 'compiled', 'reviewed', 'predicted', 'trade', 'memory']);
const sources = new Set(sheet('sources.tsv').map((row) => row['key'] ?? ''));
const larder = sheet('larder/ingredients.tsv');
const ids = new Set(larder.map((row) => row['id'] ?? ''));
const craft = sheet('larder/craft.tsv');
const spreads = sheet('spreads.tsv');
const assumptions = sheet('assumptions.tsv');
const forms = sheet('larder/forms.tsv');
const pairs = (cell: string) => cell.split(';').filter(Boolean).map((part) => /^(\w+):(.+)\[(\w+)\]$/.exec(part) ?? [part]);
const isNumber = (cell: string) => cell !== '' && Number.isFinite(Number(cell));

function unique(rows: readonly Row[], column: string) {
  const seen = new Set<string>();
  return rows.map((row) => row[column] ?? '').filter((key) => { const twice = seen.has(key); seen.add(key); return twice; });
}

describe('every sheet', () => {
  test('keys stand once', () => {
    expect(unique(larder, 'id')).toEqual([]);
    expect(unique(larder, 'name')).toEqual([]);
    expect(unique(craft, 'id')).toEqual([]);
    expect(unique(spreads, 'key')).toEqual([]);
    expect(unique(assumptions, 'key')).toEqual([]);
    expect(unique(forms, 'scope')).toEqual([]);
    expect(unique(sheet('sources.tsv'), 'key')).toEqual([]);
  });

  test('each source is a row of the sources and each grade a known one', () => {
    const lost: string[] = [];
    const look = (where: string, source: string | undefined, grade: string | undefined) => {
      if (!sources.has(source ?? '') || !GRADES.has(grade ?? '')) lost.push(`${where}: ${source} ${grade}`);
    };
    for (const row of larder) {
      look(`${row['id']}`, row['source'], row['grade']);
      if (row['density_g_ml']) look(`${row['id']} density`, row['density_source'], row['density_grade']);
      if (row['ph_low']) look(`${row['id']} pH`, row['ph_source'], row['ph_grade']);
      if (row['abv_law_source']) look(`${row['id']} law`, row['abv_law_source'], row['abv_law_grade']);
      for (const [whole, , source, grade] of pairs(row['acids_source'] ?? '')) look(`${row['id']} ${whole}`, source, grade);
    }
    for (const row of craft) for (const [whole, , source, grade] of pairs(row['sources'] ?? '')) look(`${row['id']} ${whole}`, source, grade);
    for (const row of [...spreads, ...assumptions]) look(row['key'] ?? '', row['source'], row['grade']);
    for (const row of forms) look(row['scope'] ?? '', row['source'], row['grade']);
    for (const row of [...sheet('glasses.tsv'), ...sheet('units.tsv')]) look(row['key'] ?? row['unit'] ?? '', row['source'], row['grade']);
    for (const hazard of (JSON.parse(text('hazards.json')) as { hazards: { id: string; limits: { source: string; grade: string }[] }[] }).hazards)
      for (const limit of hazard.limits) look(hazard.id, limit.source, limit.grade);
    expect(lost).toEqual([]);
  });

  test('no value from a source under non-commercial terms', () => {
    for (const name of ['larder/ingredients.tsv', 'larder/craft.tsv', 'spreads.tsv', 'assumptions.tsv', 'sources.tsv']) expect(text(name)).not.toMatch(/infoods/i);
  });
});

describe('ingredients and craft', () => {
  const NUMERIC = Object.keys(larder[0] ?? {}).filter((column) => /_(g|mg|kcal|g_ml|g_l|pct|low|high|law)$/.test(column) && column !== 'table');
  test('numbers are numbers', () => {
    const wrong = larder.flatMap((row) => NUMERIC.filter((column) => row[column] && !isNumber(row[column] ?? '')).map((column) => `${row['id']} ${column} ${row[column]}`));
    expect(wrong).toEqual([]);
  });

  test('bands are in order: pH, law on strength, melting range, Bloom', () => {
    const order = (row: Row, low: string, high: string) => !row[low] || !row[high] || Number(row[low]) <= Number(row[high]);
    expect(larder.filter((row) => !order(row, 'ph_low', 'ph_high') || !order(row, 'abv_min_law', 'abv_max_law')).map((row) => row['id'])).toEqual([]);
    expect(craft.filter((row) => !order(row, 'fat_melt_low_c', 'fat_melt_high_c') || !order(row, 'bloom_low', 'bloom_high')).map((row) => row['id'])).toEqual([]);
  });

  test('each filled acid and each craft cell names its source', () => {
    const silent: string[] = [];
    for (const row of larder) {
      const named = new Set(pairs(row['acids_source'] ?? '').map((pair) => pair[1]));
      for (const acid of ['citric', 'malic', 'tartaric', 'lactic', 'acetic', 'ascorbic', 'phosphoric', 'quinic'])
        if (Number(row[`${acid}_g`]) > 0 && !named.has(acid)) silent.push(`${row['id']} ${acid}`);
    }
    for (const row of craft) {
      const named = new Set(pairs(row['sources'] ?? '').map((pair) => pair[1]));
      for (const column of Object.keys(row)) if (row[column] && !['id', 'sources', 'note'].includes(column) && !named.has(column)) silent.push(`${row['id']} ${column}`);
    }
    expect(silent.filter((name) => !PURE_ACIDS.test(name))).toEqual([]);
  });
  /** pure acids and salts: the row's own source says it */
  const PURE_ACIDS = /^(citric-acid|malic-acid|tartaric-acid|lactic-acid|phosphoric-acid|acid-phosphate|acetic-acid|ascorbic-acid|succinic-acid|cream-of-tartar|sodium-citrate|calcium-lactate|lemon-acid|sparkling-acid)/;

  test('words of craft are of their lists', () => {
    const lists: Record<string, RegExp> = {
      heat_treatment: /^(raw|pasteurised|UHT|evaporated)$/, stabilised: /^(yes|no|often)$/, whips: /^(yes|no|weak)$/, holds: /^(yes|no|weak)$/,
      surface_active: /^(yes|no|weak)$/, anise_oil: /^(yes|no)$/, tint: /^#[0-9A-F]{6}$/, tannin_class: /^[0-3]$/, pectin_class: /^[0-3]$/, protease_class: /^[0-3]$/, turbidity_class: /^[0-3]$/,
    };
    const wrong = craft.flatMap((row) => Object.entries(lists).filter(([column, list]) => row[column] && !list.test(row[column] ?? '')).map(([column]) => `${row['id']} ${column} ${row[column]}`));
    expect(wrong).toEqual([]);
    expect(craft.filter((row) => !ids.has(row['id'] ?? ''))).toEqual([]);
  });

  test('allergen groups and hazards are those of their tables', () => {
    const allergens = JSON.parse(text('allergens.json')) as { eu: { groups: { code: string }[] } };
    const groups = new Set(allergens.eu.groups.map((group) => group.code));
    const hazards = new Set((JSON.parse(text('hazards.json')) as { hazards: { id: string }[] }).hazards.map((hazard) => hazard.id));
    const unknown = larder.flatMap((row) => [
      ...(row['allergens_eu'] ?? '').split(/[;, ]+/).filter((group) => group && !groups.has(group.replace('?', ''))),
      ...(row['hazards'] ?? '').split(/[;, ]+/).filter((hazard) => hazard && !hazards.has(hazard)),
    ].map((word) => `${row['id']} ${word}`));
    expect(groups.size).toBe(14);
    expect(unknown).toEqual([]);
  });

  test('every category and every exception of the forms exists', () => {
    const scopes = new Set(forms.map((row) => row['scope']));
    expect(larder.filter((row) => !scopes.has(`category/${row['category']}`)).map((row) => row['id'])).toEqual([]);
    expect(forms.filter((row) => !(row['scope'] ?? '').startsWith('category/') && !ids.has(row['scope'] ?? '')).map((row) => row['scope'])).toEqual([]);
    const known = new Set([...assumptions, ...spreads].map((row) => row['key']));
    expect(forms.filter((row) => (row['start'] && !known.has(row['start'])) || (row['label'] && row['label'] !== '-' && !known.has(row['label']))).map((row) => row['scope'])).toEqual([]);
  });
});

describe('spreads and assumptions', () => {
  const byKey = new Map(spreads.map((row) => [row['key'], row]));
  test('every spread has its numbers in order and says why', () => {
    const wrong = spreads.filter((row) => {
      const [a, b] = [row['a'] ?? '', row['b'] ?? ''];
      if (!row['unit'] || !row['why']) return true;
      if (row['kind'] === 'normal sd' || row['kind'] === 'lognormal cv') return !isNumber(a) || Number(a) <= 0 || b !== '';
      return !['offset', 'absolute', 'per cent'].includes(row['kind'] ?? '') || !isNumber(a) || !isNumber(b) || Number(a) > Number(b);
    });
    expect(wrong.map((row) => row['key'])).toEqual([]);
  });

  test('every column of a category that any row fills has a spread', () => {
    const NUMERIC = Object.keys(larder[0] ?? {}).filter((column) => /_(g|mg)$/.test(column) && column !== 'other_acid_g');
    const lost = new Set<string>();
    for (const row of larder) for (const column of NUMERIC) if (Number(row[column]) > 0 && !byKey.has(`larder/${row['category']}/${column}`)) lost.add(`larder/${row['category']}/${column}`);
    expect([...lost]).toEqual([]);
  });

  test('an assumption lies within its band, says what replaces it, and a word of the larder is an id', () => {
    const wrong = assumptions.filter((row) => {
      if (!row['say'] || !row['value']) return true;
      if (row['low'] || row['high']) return !(Number(row['low']) <= Number(row['value']) && Number(row['value']) <= Number(row['high']));
      if ((row['key'] ?? '').startsWith('larder/word/')) return !ids.has(row['value']);
      return (row['key'] ?? '').startsWith('tool/for/') && !byKey.has(row['value']);
    });
    expect(wrong.map((row) => row['key'])).toEqual([]);
  });

  test('a key of both tables has one width', () => {
    const wrong: string[] = [];
    for (const row of assumptions) {
      const spread = byKey.get(row['key']);
      if (!spread || !row['low']) continue;
      const [value, a, b] = [Number(row['value']), Number(spread['a']), Number(spread['b'])];
      const sigma = Math.sqrt(Math.log(1 + a * a));
      const [low, high] = spread['kind'] === 'normal sd' ? [value - 1.96 * a, value + 1.96 * a]
        : spread['kind'] === 'lognormal cv' ? [value * Math.exp(-1.96 * sigma), value * Math.exp(1.96 * sigma)] : [a, b];
      const width = high - low;
      if (Math.abs(low - Number(row['low'])) > 0.03 * width || Math.abs(high - Number(row['high'])) > 0.03 * width) wrong.push(`${row['key']} ${low}..${high}`);
    }
    expect(wrong).toEqual([]);
  });

  test('the two rows that claim one fruit agree', () => {
    for (const fruit of ['lime', 'lemon', 'orange']) expect(byKey.get(`larder/${fruit}-juice/citric_g`)?.['a']).toBe(byKey.get(`fruit/${fruit}/citric`)?.['a']);
  });
});
