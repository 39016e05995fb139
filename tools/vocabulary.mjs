// Builds packages/spec/src/generated/vocabulary.json from data/vocabulary/*.tsv: the words of every language in one compact file.
// No dependencies; run by the build before the types are checked.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const target = join(root, 'packages/spec/src/generated/vocabulary.json');

function table(name) {
  const [head, ...lines] = readFileSync(join(root, 'data/vocabulary', `${name}.tsv`), 'utf8').split(/\r?\n/).filter((line) => line !== '');
  const keys = head.split('\t');
  return lines.map((line) => {
    const cells = line.split('\t');
    return Object.fromEntries(keys.map((key, index) => [key, cells[index] ?? '']));
  });
}

const number = (cell) => (cell === '' ? null : Number.isFinite(Number(cell)) ? Number(cell) : cell);

/** What an ambiguous name's note says about when it holds: v by volume, c counted, w weighed, j after "juice of", p of the peel, o in old books. */
function condition(note) {
  const says = note.replace(/^[a-z]+:\s*/, '').toLowerCase();
  let letters = '';
  if (/volume|part|dash|spoon|ml|cl|teil|spritzer|fill|drop|poured|build/.test(says)) letters += 'v';
  if (/counted|cut|piece|sliced|muddled|gezählt|stück|garnish|heads|scooped/.test(says)) letters += 'c';
  if (/weigh|gram|gewogen|solid|powder|gramm|pinch|teaspoon/.test(says)) letters += 'w';
  if (/juice of|saft von/.test(says)) letters += 'j';
  if (/peel|zest|schale/.test(says)) letters += 'p';
  if (/us-1910|old[- ]book|before about 1930/.test(says)) letters += 'o';
  return letters;
}

const kindMark = { preferred: '=', synonym: '+', spelling: '~', plural: '*', old: '^', ambiguous: '?' };
const names = {};
for (const row of table('names')) {
  const language = (names[row.language] ??= {});
  const list = (language[row.id] ??= []);
  const mark = kindMark[row.kind];
  if (mark === undefined) throw new Error(`names.tsv: kind ${row.kind} of ${row.name}`);
  list.push(mark === '?' ? `?${row.note.startsWith('other') ? 'o' : 'a'}${condition(row.note)}:${row.name}` : mark + written(row));
}
/** A preferred name with the capitals it is printed with, where its note gives them. */
function written({ kind, name, note }) {
  const said = /^written ([^;]+)/.exec(note)?.[1].trim();
  return kind === 'preferred' && said?.toLowerCase() === name ? said : name;
}

const units = new Map();
for (const row of table('units')) {
  const mark = row.ambiguous.startsWith('assumed') ? 'a' : row.ambiguous.startsWith('other') ? 'o' : '';
  const key = [row.unit, row.of, row.factor, row.low, row.high, row.system, row.status, mark].join('\t');
  const entry = units.get(key) ?? [row.unit, row.of, number(row.factor), number(row.low), number(row.high), row.system, row.status, mark, {}];
  (entry[8][row.language] ??= []).push(row.written);
  units.set(key, entry);
}

const verbs = new Map();
for (const row of table('verbs')) {
  const key = [row.verb, row.reading, row.hands].join('\t');
  const entry = verbs.get(key) ?? [row.verb, row.reading, row.hands, {}];
  ((entry[3][row.language] ??= {})[row.form] ??= []).push(row.written);
  verbs.set(key, entry);
}

const words = new Map();
for (const row of table('words')) {
  const key = [row.group, row.key, row.value, row.low, row.high].join('\t');
  const entry = words.get(key) ?? [row.group, row.key, number(row.value), number(row.low), number(row.high), {}];
  (entry[5][row.language] ??= []).push(row.written);
  words.set(key, entry);
}

// facts that the head of a spec may give, by the assumption each replaces
const given = new Map();
for (const row of table('given')) {
  const entry = given.get(row.key) ?? [row.key, row.of, {}];
  (entry[2][row.language] ??= []).push(row.written);
  given.set(row.key, entry);
}

const categories = {};
for (const row of table('kinds')) (categories[row.category] ??= []).push(row.id);

const compact = {
  // a text of lines: it is taken apart when its language is first asked for
  names: Object.fromEntries(Object.entries(names).map(([language, ids]) => [language, Object.entries(ids).map(([id, list]) => `${id}|${list.join('|')}`).join('\n')])),
  categories, units: [...units.values()], verbs: [...verbs.values()], words: [...words.values()], given: [...given.values()],
};
mkdirSync(dirname(target), { recursive: true });
const text = JSON.stringify(compact);
let before = '';
try { before = readFileSync(target, 'utf8'); } catch { /* the first run has none */ }
if (before !== text) writeFileSync(target, text);
