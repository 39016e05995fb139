// Makes the tables the packages load from the sheets of data/: compact texts that are taken apart row by row when asked for.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { join } from 'node:path';
import { root } from './house/root.mjs';
import { larder } from './tables/larder.mjs';
import { factor, provenances, sheet } from './tables/sheet.mjs';

const OUT = join(root, 'packages', 'tables', 'src', 'generated');

function spreads() {
  const known = provenances();
  const rows = sheet('spreads.tsv').rows.map((r) => [r.key, r.kind, r.a, r.b, r.unit, known.of(r.grade, r.source)].join('\t'));
  return { provenance: known.list.join('\n'), rows: rows.join('\n') };
}

function assumptions() {
  const known = provenances();
  const rows = sheet('assumptions.tsv').rows.map((r) => [r.key, r.value, r.low, r.high, r.unit, known.of(r.grade, r.source), r.say].join('\t'));
  return { provenance: known.list.join('\n'), rows: rows.join('\n') };
}

function glasses() {
  const columns = ['key', 'name', 'profile', 'base_mm', 'wall_mm', 'stem_mm', 'foot_mm', 'mass_g', 'grade', 'source'];
  return { rows: sheet('glasses.tsv').rows.map((r) => columns.map((c) => r[c]).join('\t')).join('\n') };
}

function units() {
  const rows = sheet('units.tsv').rows.map((r, i) => {
    const value = factor(r.factor, `data/units.tsv:${i + 2}`);
    return [r.unit, r.system, r.default, r.of, value, r.low, r.high, r.defined, r.source].join('\t');
  });
  return { rows: rows.join('\n') };
}

function hazards() {
  const { hazards: list } = JSON.parse(readFileSync(join(root, 'data', 'hazards.json'), 'utf8'));
  return { rows: list.map((h) => [h.id, h.agent, h.severity, JSON.stringify(h.limits)].join('\t')).join('\n') };
}

/** Columns that carry no width of their own: ends of a band, classes, limits of law, and what stands on a label (its tolerance is the label's). */
const WITHOUT = /_low(_c)?$|_high(_c)?$|_class$|_law(_g_l)?$|^(abv_pct|sugar_g_l|energy_kcal|aroma)$/;

/** Every number of the larder must have a row that says how wide it is; there is no default. */
function checkWidths() {
  const known = new Set(sheet('spreads.tsv').rows.map((r) => r.key));
  const category = new Map(sheet('larder/ingredients.tsv').rows.map((r) => [r.id, r.category]));
  const missing = new Set();
  for (const name of ['larder/ingredients.tsv', 'larder/craft.tsv']) {
    const { head, rows } = sheet(name);
    for (const row of rows) {
      for (const column of head) {
        if (WITHOUT.test(column) || row[column] === '' || !(Number(row[column]) > 0)) continue;
        if (!known.has(`larder/${row.id}/${column}`) && !known.has(`larder/${category.get(row.id)}/${column}`)) missing.add(`larder/${category.get(row.id)}/${column}`);
      }
    }
  }
  if (missing.size > 0) throw new Error(`data/spreads.tsv has no row for ${[...missing].sort().join(', ')}: every value says how wide it is.`);
}

checkWidths();
const made = { larder: larder(), spreads: spreads(), assumptions: assumptions(), glasses: glasses(), units: units(), hazards: hazards() };
made.version = { version: createHash('sha256').update(JSON.stringify(made)).digest('hex').slice(0, 12) };

mkdirSync(OUT, { recursive: true });
let packed = 0;
for (const [name, content] of Object.entries(made)) {
  const path = join(OUT, `${name}.json`);
  const text = `${JSON.stringify(content)}\n`;
  packed += gzipSync(text, { level: 9 }).length;
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
}
process.stdout.write(`Tables ${made.version.version}: ${(packed / 1024).toFixed(1)} kB gzipped.\n`);
