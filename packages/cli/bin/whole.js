// Loads the bundled command line with what V8 had compiled of it when it was built, so that a cold start compiles next to nothing.
import process from 'node:process';

// asked of the process: as imports each of them would be wrapped as a module first
const { readFileSync, writeFileSync } = process.getBuiltinModule('fs');
const { createRequire } = process.getBuiltinModule('module');
const { join } = process.getBuiltinModule('path');
const { fileURLToPath } = process.getBuiltinModule('url');
const { Script } = process.getBuiltinModule('vm');

const folder = fileURLToPath(new URL('../whole/', import.meta.url));
const outside = createRequire(import.meta.url);
const loaded = new Map();

const compiledOf = (name) => { try { return readFileSync(join(folder, `${name}.compiled`)); } catch { return undefined; } };

/** One file of the bundle. V8 refuses what another V8, other flags or another text made, and compiles the text instead. */
function load(name) {
  const known = loaded.get(name);
  if (known !== undefined) return known.module.exports;
  const filename = join(folder, name);
  const module = { exports: {} };
  const text = `(function (exports, require, module, __filename) {${readFileSync(filename, 'utf8')}\n})`;
  const script = new Script(text, { filename, cachedData: compiledOf(name) });
  loaded.set(name, { module, script });
  script.runInThisContext()(module.exports, (other) => (other.startsWith('./') ? load(other.slice(2)) : outside(other)), module, filename);
  return module.exports;
}

export const { main } = load('index.js');

/** Writes beside each file what is compiled of it by now. */
export function keepCompiled() {
  for (const [name, { script }] of loaded) writeFileSync(join(folder, `${name}.compiled`), script.createCachedData());
}
