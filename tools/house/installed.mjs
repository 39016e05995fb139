import { existsSync, readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * What is missing of what the lock file names: `null` when all is there, else a few words.
 * Compares the lock with the one npm leaves in node_modules; optional packages of other machines may be absent.
 */
function whatIsMissing() {
  const wanted = join(root, 'package-lock.json');
  const there = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(there)) return 'nothing is installed yet';
  const lock = JSON.parse(readFileSync(wanted, 'utf8')).packages;
  const installed = JSON.parse(readFileSync(there, 'utf8')).packages;
  for (const [place, want] of Object.entries(lock)) {
    if (place === '' || want.optional || want.peer) continue;
    const got = installed[place];
    if (!got) return `${place} is not installed`;
    if (want.version && got.version !== want.version) return `${place} is ${got.version}, not ${want.version}`;
  }
  return null;
}

/** Installs what the lock file names, when something of it is missing. Returns true when all is there afterwards. */
export function install(say) {
  const missing = whatIsMissing();
  if (!missing) return true;
  const how = existsSync(join(root, 'node_modules')) ? 'install' : 'ci';
  say(`Installing with npm ${how}: ${missing}.`);
  const run = spawnSync('npm', [how, '--no-audit', '--no-fund', '--loglevel=error'], { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });
  return run.status === 0;
}
