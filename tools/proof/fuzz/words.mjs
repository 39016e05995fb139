import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../../house/root.mjs';
import { table } from '../../tidy/files.mjs';

const json = (path) => JSON.parse(readFileSync(join(root, path), 'utf8'));
const written = (path, test = () => true) => [...new Set(table(path).filter(test).map((row) => row.written ?? row.name))].filter((word) => word);
const group = (name) => written('data/vocabulary/words.tsv', (row) => row.group === name);

/** The words of both languages as the vocabulary has them, and the lines of cases and demo specs. */
export function vocabulary() {
  const demo = readdirSync(join(root, 'demo')).filter((name) => name.endsWith('.drink')).map((name) => readFileSync(join(root, 'demo', name), 'utf8'));
  const books = readdirSync(join(root, 'cases/books')).flatMap((name) => json(`cases/books/${name}`).recipes);
  const lines = readdirSync(join(root, 'cases/lines')).filter((name) => name.endsWith('.json')).flatMap((name) => json(`cases/lines/${name}`).lines.map((line) => line.text));
  return {
    demo, books, lines: [...lines, ...demo.flatMap((text) => text.split('\n')), ...books.flatMap((book) => book.lines)],
    names: written('data/vocabulary/names.tsv'), units: written('data/vocabulary/units.tsv'), verbs: written('data/vocabulary/verbs.tsv'),
    methods: group('method'), sections: group('section'), glasses: group('glass'), ices: group('ice'), sieves: group('sieve'), treatments: group('treatment'),
    numerals: [...group('numeral'), ...group('fraction'), ...group('approx')], small: group('connective'), garnishes: group('garnish'),
  };
}
