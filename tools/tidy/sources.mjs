import ts from 'typescript';
import { relative } from 'node:path';
import { root } from '../house/root.mjs';
import { projectFiles, read, table } from './files.mjs';
import { publicSurface } from './surface.mjs';

/** Words that stand where a number has no printed source, and say so. */
const NO_ROW = new Set(['none', 'common-practice', 'memory', 'label', 'written', 'own']);

/** Every exported engine function says where its rule is from, and each key it names is a row of data/sources.tsv. */
export function sourceLines() {
  const rows = table('data/sources.tsv');
  const keys = new Set(rows.map((row) => row.key));
  const doubled = rows.map((row) => row.key).filter((key, at, all) => all.indexOf(key) !== at);
  const bare = rows.filter((row) => !row.key || !row.title || !row.status || !row.licence).map((row) => `data/sources.tsv: ${row.key || 'a row'} lacks its title, status or licence`);
  const missing = [];
  for (const { name, declarations } of publicSurface('engine')) {
    const functions = declarations.filter(isFunction);
    if (functions.length === 0) continue;
    const tags = functions.flatMap((declaration) => ts.getJSDocTags(declaration)).filter((tag) => tag.tagName.text === 'source');
    const where = `${relative(root, functions[0].getSourceFile().fileName)}: ${name}`;
    if (tags.length === 0) missing.push(`${where} has no @source line`);
  }
  const unresolved = [];
  for (const path of projectFiles((file) => /^packages\/engine\/src\/.*\.ts$/.test(file))) {
    for (const [, said] of read(path).matchAll(/@source[ \t]+([^\s*]+)/g)) {
      const key = said.replace(/[,;.]$/, '');
      if (!keys.has(key) && !NO_ROW.has(key)) unresolved.push(`${path}: @source ${key} is no row of data/sources.tsv`);
    }
  }
  return [
    { name: 'data/sources.tsv has each key once, with title, status and licence', problems: [...doubled.map((key) => `data/sources.tsv: ${key} stands twice`), ...bare] },
    { name: 'every exported engine function names its source', problems: missing },
    { name: 'every source named in the engine is a row of data/sources.tsv', problems: [...new Set(unresolved)] },
    { name: 'every source named in a data table is a row of data/sources.tsv', problems: tableSources(keys) },
  ];
}

function isFunction(node) {
  if (ts.isFunctionDeclaration(node)) return true;
  if (!ts.isVariableDeclaration(node) || !node.initializer) return false;
  return ts.isArrowFunction(node.initializer) || ts.isFunctionExpression(node.initializer);
}

/** Keys in columns named `source`, `sources` or `…_source` of the tables under data/. */
function tableSources(keys) {
  const wrong = new Set();
  for (const path of projectFiles((file) => /^data\/.*\.tsv$/.test(file) && file !== 'data/sources.tsv')) {
    for (const row of table(path)) {
      for (const [column, cell] of Object.entries(row)) {
        if (!/(^|_)sources?$/.test(column) || cell === '') continue;
        for (const key of keysIn(cell)) if (!keys.has(key) && !NO_ROW.has(key)) wrong.add(`${path}: ${column} ${key}`);
      }
    }
  }
  return [...wrong];
}

/** `tint:common-practice[trade]; casein_g:usda-sr28[compiled]` or plain keys. */
function keysIn(cell) {
  return cell.split(/[;,|]\s*|\s+/).map((part) => part.replace(/^\w+:/, '').replace(/\[.*\]$/, '')).filter((part) => part !== '');
}
