// Makes one script of a test file with all it takes in, save the data: that is asked for when the script is run, so that a number can be shifted.
import { readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { rolldown } from 'rolldown';
import { root } from '../house/root.mjs';

const short = (path) => relative(root, path).replaceAll('\\', '/');
const VITEST = '\0vitest';

function plugin(seen) {
  return {
    name: 'sabotage',
    resolveId(id, importer) {
      if (id === 'vitest') return VITEST;
      const own = /^@washline\/([a-z]+)$/.exec(id);
      if (own) return join(root, 'packages', own[1], 'src', 'index.ts');
      if (id === 'fast-check' || id.startsWith('node:')) return { id, external: true };
      if (id.endsWith('.json') && importer) return resolve(dirname(importer), id);
      return null;
    },
    load(id) {
      if (id === VITEST) return `const v = globalThis.__stage; export const { describe, test, it, expect, beforeAll, afterAll, beforeEach, afterEach } = v;`;
      seen.add(short(id));
      if (id.endsWith('.json')) return { code: `export default globalThis.__data(${JSON.stringify(short(id))});`, moduleType: 'js' };
      if (/\.(ts|mjs)$/.test(id)) {
        const written = readFileSync(id, 'utf8');
        // what a file waits for at its top is waited for before its tests
        const code = written.replaceAll(/^await (.+);$/gm, 'globalThis.__waits.push($1);');
        if (code !== written || code.includes('import.meta.url')) return { code: code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id).href)), moduleType: id.endsWith('.ts') ? 'ts' : 'js' };
      }
      return null;
    },
  };
}

/** @returns the script as text (a body for `new Function('require', 'module', 'exports', …)`) and the files it was made of */
export async function bundle(file) {
  const seen = new Set();
  const made = await rolldown({ input: join(root, file), plugins: [plugin(seen)], platform: 'node', logLevel: 'silent', treeshake: false });
  const { output } = await made.generate({ format: 'cjs', codeSplitting: false });
  await made.close();
  return { file, code: output[0].code, parts: [...seen] };
}
