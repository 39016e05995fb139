// Where a bundled script runs: the data and the files it reads are the project's own, save those that `shifted` replaces.
import * as fs from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import vm from 'node:vm';
import fc from 'fast-check';
import { root } from '../house/root.mjs';
import { failing, stage } from './play.mjs';

fc.configureGlobal({ numRuns: 25, seed: 1862 });
const require = createRequire(import.meta.url);
const short = (path) => relative(root, path instanceof URL || String(path).startsWith('file:') ? fileURLToPath(path) : String(path)).replaceAll('\\', '/');
const kept = new Map();
const text = (path) => { if (!kept.has(path)) kept.set(path, fs.readFileSync(join(root, path), 'utf8')); return kept.get(path); };

let shifted = new Map();
const readFileSync = (path, ...rest) => (typeof path === 'number' || !shifted.has(short(path)) ? fs.readFileSync(path, ...rest) : shifted.get(short(path)));
let writes = null;
/** What a script writes while its writing is caught goes nowhere. */
const shim = {
  ...fs, readFileSync,
  writeFileSync: (path, content) => { if (!writes) throw new Error(`${short(path)} is not written while numbers are shifted`); writes.set(short(path), content); },
  mkdirSync: () => undefined,
  existsSync: (path) => writes === null && fs.existsSync(path),
};
const zlib = { gzipSync: () => Buffer.alloc(0) };
const REQUIRED = { 'node:fs': shim, 'node:zlib': zlib, 'fast-check': { __esModule: true, default: fc, ...fc } };
const required = (name) => REQUIRED[name] ?? require(name);

globalThis.__data = (path) => JSON.parse(shifted.get(path) ?? text(path));

const scripts = new Map();
function script({ file, code }) {
  if (!scripts.has(file)) scripts.set(file, vm.runInThisContext(`(function (require, module, exports, __filename, __dirname) {${code}\n})`, { filename: join(root, file) }));
  return scripts.get(file);
}

/** The exports of a bundled script, run anew over the files of `over` (path in the project → text). */
export function exportsOf(made, over = new Map()) {
  shifted = over;
  const module = { exports: {} };
  const path = join(root, made.file);
  script(made)(required, module, module.exports, path, dirname(path));
  return module.exports;
}

/** The tests of a bundled test file that fail over the files of `over`; `only` and `all` as in play.mjs. */
export async function faultsIn(made, over, asked) {
  const { api, tests } = stage(join(root, made.file));
  globalThis.__stage = api;
  globalThis.__waits = [];
  try {
    exportsOf(made, over);
    await Promise.all(globalThis.__waits);
  } catch (error) { return [{ test: 'loading', said: String(error?.message ?? error).slice(0, 300) }]; }
  return failing(tests, asked);
}

/** What a bundled tool writes when it is run over the files of `over`. */
export function writtenBy(made, over) {
  const { write } = process.stdout;
  writes = new Map();
  process.stdout.write = () => true;
  try { exportsOf(made, over); return writes; } finally { process.stdout.write = write; writes = null; }
}
