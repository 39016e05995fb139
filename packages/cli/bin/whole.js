'use strict';
// Loads the bundled command line with what V8 had compiled of it when it was built, so that a cold start compiles next to nothing.
const { readFileSync, writeFileSync } = require('node:fs');
const { join } = require('node:path');
const { Script } = require('node:vm');

const folder = join(__dirname, '..', 'whole');
const loaded = new Map();

const compiledOf = (name) => { try { return readFileSync(join(folder, `${name}.compiled`)); } catch { return undefined; } };

/** One file of the bundle. V8 refuses what another V8, other flags or another text made, and compiles the text instead. */
function load(name) {
  const known = loaded.get(name);
  if (known !== undefined) return known.module.exports;
  const filename = join(folder, name);
  const module = { exports: {} };
  const text = `(function (exports, require, module, __filename) {${readFileSync(filename, 'latin1')}\n})`;
  const script = new Script(text, { filename, cachedData: compiledOf(name) });
  loaded.set(name, { module, script });
  script.runInThisContext()(module.exports, (other) => (other.startsWith('./') ? load(other.slice(2)) : require(other)), module, filename);
  return module.exports;
}

exports.main = load('index.js').main;

/** Writes beside each file what is compiled of it by now. */
exports.keepCompiled = () => {
  for (const [name, { script }] of loaded) writeFileSync(join(folder, `${name}.compiled`), script.createCachedData());
};
