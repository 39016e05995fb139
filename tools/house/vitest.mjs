import { mkdtempSync, readFileSync, existsSync, rmSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './root.mjs';

const VITEST = join(root, 'node_modules', 'vitest', 'vitest.mjs');
const REPORTER = join(root, 'tools', 'vitest', 'reporter.mjs');

/** Runs vitest with the house's reporter and gives its counts. A run that dies before it can count is one failure. */
export function vitest(args, { cwd = root, env = {} } = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'washline-counts-'));
  const file = join(folder, 'counts.json');
  const done = spawnSync(process.execPath, [VITEST, 'run', `--reporter=${REPORTER}`, ...args], {
    cwd, stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, ...env, WASHLINE_COUNTS: file },
  });
  const counts = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : { passed: 0, failed: 0, skipped: 0, behaviours: 0, rows: 0, failures: [], names: [] };
  rmSync(folder, { recursive: true });
  if (counts.failed === 0 && done.status !== 0) {
    counts.failed = 1;
    counts.failures.push(`vitest ${args.join(' ')} ended with ${done.status ?? done.signal}`);
  }
  return counts;
}

/** How many tests there are, without running them. */
export function countTests(args, { cwd = root } = {}) {
  const done = spawnSync(process.execPath, [VITEST, 'list', '--json', ...args], { cwd, encoding: 'utf8', maxBuffer: 1 << 26 });
  try { return JSON.parse(done.stdout.slice(done.stdout.indexOf('['))).length; } catch { return 1; }
}
