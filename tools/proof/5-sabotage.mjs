import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

export const title = 'Sabotage: a shifted coefficient fails a test';

/** Whether the tests that reach the file notice the shift. */
function noticed(shift) {
  const done = spawnSync(process.execPath, [join(root, 'node_modules/vitest/vitest.mjs'), 'related', shift.file, '--run', '--bail=1', '--project', 'node'], {
    cwd: root, encoding: 'utf8', env: { ...process.env, WASHLINE_SABOTAGE: JSON.stringify(shift) },
  });
  return done.status !== 0;
}

/** Whether the shift names a number that is there: one that does not would fail for another reason. */
function isThere({ file, path }) {
  return typeof path.reduce((at, key) => at?.[key], JSON.parse(readFileSync(join(root, file), 'utf8'))) === 'number';
}

export function prove({ short, total }) {
  const { shifts } = JSON.parse(readFileSync(join(root, 'tools/proof/shifts.json'), 'utf8'));
  const chosen = short ? shifts.slice(0, 3) : shifts;
  total.check('each shift names a number', shifts.filter((shift) => !isThere(shift)).map(({ file, path }) => `${file} ${path.join('.')} is no number`));
  total.check('unshifted, the same tests pass', noticed({ ...chosen[0], idle: true }) ? ['they fail as they are'] : []);
  for (const shift of chosen) total.check(`${shift.file} ${shift.path.join('.')} × ${shift.by} is noticed`, noticed(shift) ? [] : [`no test failed; ${shift.why}`]);
}
