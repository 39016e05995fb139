import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './root.mjs';

const STAMP = join(root, 'node_modules', '.washline', 'built');
const SOURCES = ['packages', 'data', 'messages', 'demo', 'tools/tables.mjs', 'tools/vocabulary.mjs', 'tools/bundle.mjs', 'tsconfig.base.json', 'tsconfig.json', 'package-lock.json'];
const SKIP = new Set(['node_modules', 'dist', 'coverage']);

function* filesIn(path) {
  const state = statSync(path, { throwIfNoEntry: false });
  if (!state) return;
  if (state.isFile()) { yield [path, state]; return; }
  for (const name of readdirSync(path).sort()) {
    if (SKIP.has(name) || name.endsWith('.tsbuildinfo') || name.endsWith('.test.ts')) continue;
    yield* filesIn(join(path, name));
  }
}

/** A short text that changes when any source of the build does. */
function fingerprint() {
  const hash = createHash('sha256').update(process.version);
  for (const source of SOURCES) for (const [path, state] of filesIn(join(root, source))) hash.update(`${path}\0${state.size}\0${state.mtimeMs}\n`);
  return hash.digest('hex');
}

/** The parts of the build in order; one whose file does not exist is left out. */
function parts() {
  const node = process.execPath;
  const list = [
    { name: 'vocabulary', file: 'tools/vocabulary.mjs', command: [node, ['tools/vocabulary.mjs']] },
    { name: 'tables', file: 'tools/tables.mjs', command: [node, ['tools/tables.mjs']] },
    { name: 'packages', file: 'tsconfig.json', command: [node, ['node_modules/typescript/bin/tsc', '-b']] },
    { name: 'command line', file: 'tools/bundle.mjs', command: [node, ['tools/bundle.mjs']] },
    { name: 'page', file: 'packages/web/vite.config.ts', command: [node, ['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn', 'packages/web']] },
  ];
  return list.filter((part) => existsSync(join(root, part.file)));
}

function isBuilt(print) {
  if (!existsSync(STAMP) || readFileSync(STAMP, 'utf8') !== print) return false;
  return readdirSync(join(root, 'packages')).every((name) => !existsSync(join(root, 'packages', name, 'package.json')) || existsSync(join(root, 'packages', name, 'dist')));
}

/**
 * Builds what is missing or stale. Returns the parts that failed with what they printed.
 * `always` builds even where nothing changed.
 */
export function build(say, { always = false } = {}) {
  if (!always && isBuilt(fingerprint())) return [];
  const failed = [];
  for (const part of parts()) {
    const from = performance.now();
    const run = spawnSync(part.command[0], part.command[1], { cwd: root, encoding: 'utf8', maxBuffer: 1 << 26 });
    say(`Built ${part.name} in ${((performance.now() - from) / 1000).toFixed(1)} s${run.status === 0 ? '' : ', with faults'}.`);
    if (run.status !== 0) failed.push({ name: part.name, said: `${run.stdout ?? ''}${run.stderr ?? ''}`.trim() });
  }
  if (failed.length === 0) {
    mkdirSync(join(STAMP, '..'), { recursive: true });
    writeFileSync(STAMP, fingerprint());
  }
  return failed;
}
