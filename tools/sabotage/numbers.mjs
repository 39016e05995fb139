// The numbers of the data files: every one of a JSON file, and those of the numeric columns of a sheet, each with its place and what its row says of it.
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

export const NUMBER = /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g;

/** Columns of each sheet that hold numbers, and the columns whose words name a row. A column or sheet not named here holds words. */
const SHEETS = {
  'data/units.tsv': { key: ['unit', 'system'], columns: ['factor', 'low', 'high'] },
  'data/glasses.tsv': { key: ['key'], columns: ['profile', 'base_mm', 'wall_mm', 'stem_mm', 'foot_mm', 'mass_g'] },
  'data/assumptions.tsv': { key: ['key'], columns: ['value', 'low', 'high'] },
  'data/spreads.tsv': { key: ['key'], columns: ['a', 'b'] },
  'data/larder/ingredients.tsv': { key: ['id'], columns: /_(g|mg|kcal|pct|law|l|ml)$|^ph_(low|high)$|^sugar_min_law_g_l$/ },
  'data/larder/craft.tsv': { key: ['id'], columns: /_(g|kg|class|c|volumes|low|high)$|^aroma$/ },
  'data/larder/forms.tsv': { key: ['scope'], columns: ['held_g_g', 'extractable_share'] },
  'data/vocabulary/units.tsv': { key: ['unit', 'language', 'written'], columns: ['factor', 'low', 'high'] },
  'data/vocabulary/words.tsv': { key: ['group', 'key', 'language', 'written'], columns: ['value', 'low', 'high'] },
};

const kept = new Map();
/** The text of a data file as it stands. */
export function textOf(file) {
  if (!kept.has(file)) kept.set(file, readFileSync(join(root, file), 'utf8'));
  return kept.get(file);
}

/** Every data file that holds numbers. */
export function dataFiles() {
  const json = (folder) => readdirSync(join(root, folder)).filter((name) => name.endsWith('.json') && name !== 'tsconfig.json').sort().map((name) => `${folder}/${name}`);
  return [...json('data/physics'), ...json('data'), ...Object.keys(SHEETS)].filter((file) => numbersOf(file).length > 0);
}

/** Rows of a sheet as objects, by the name of each. */
export function rowsOf(file) {
  const [head, ...lines] = textOf(file).replace(/\r?\n$/, '').split(/\r?\n/).map((line) => line.split('\t'));
  return lines.map((cells) => Object.fromEntries(head.map((column, at) => [column, cells[at] ?? ''])));
}

function ofSheet(file) {
  const { key, columns } = SHEETS[file];
  const list = [];
  const named = new Map();
  rowsOf(file).forEach((row, line) => {
    const written = key.map((column) => row[column]).filter(Boolean).join(' ');
    // rows that are called alike (a cup of two systems) are told apart by their order
    named.set(written, (named.get(written) ?? 0) + 1);
    const name = named.get(written) > 1 ? `${written} (${named.get(written)})` : written;
    for (const [column, cell] of Object.entries(row)) {
      if (!(columns instanceof RegExp ? columns.test(column) : columns.includes(column)) || !/^[-\d., e+*/]+$/.test(cell)) continue;
      [...cell.matchAll(NUMBER)].forEach((found, part, all) => {
        list.push({ file, line, column, part, row, written: found[0], value: Number(found[0]), place: `${name}: ${column}${all.length > 1 ? `.${part}` : ''}` });
      });
    }
  });
  return list;
}

function ofJson(file) {
  const list = [];
  const walk = (node, path, above) => {
    if (typeof node === 'number') list.push({ file, path, above, written: String(node), value: node, place: path.join('.') });
    else if (node && typeof node === 'object') for (const key of Object.keys(node)) walk(node[key], [...path, key], Array.isArray(node) ? above : [...above, node]);
  };
  walk(JSON.parse(textOf(file)), [], []);
  return list;
}

/** The numbers of one data file, in order. */
export function numbersOf(file) {
  return file.endsWith('.json') ? ofJson(file) : ofSheet(file);
}

const shift = ({ number, by }) => Number((number.value + by).toPrecision(15));

/** The text of a file with some of its numbers moved, each by its own `by`. */
export function moved(moves) {
  const { file, path } = moves[0].number;
  if (path) {
    const data = JSON.parse(textOf(file));
    for (const move of moves) {
      const holder = move.number.path.slice(0, -1).reduce((at, key) => at[key], data);
      holder[move.number.path.at(-1)] = shift(move);
    }
    return JSON.stringify(data);
  }
  const lines = textOf(file).split('\n').map((line) => line.split('\t'));
  for (const move of moves) {
    const cells = lines[move.number.line + 1];
    const at = lines[0].map((head) => head.trim()).indexOf(move.number.column);
    let part = 0;
    cells[at] = cells[at].replace(NUMBER, (written) => (part++ === move.number.part ? String(shift(move)) : written));
  }
  return lines.map((cells) => cells.join('\t')).join('\n');
}
