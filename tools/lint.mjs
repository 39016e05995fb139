// oxlint with type-aware rules over the sources alone: over built files it would complain of overwriting them.
import { existsSync, readdirSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './house/root.mjs';

const sources = readdirSync(join(root, 'packages')).map((name) => `packages/${name}/src`).filter((path) => existsSync(join(root, path)));
const done = spawnSync(join(root, 'node_modules', '.bin', 'oxlint'), ['--type-aware', '--deny-warnings', ...process.argv.slice(2), ...sources, 'tools'], { cwd: root, stdio: 'inherit' });
process.exit(done.status ?? 1);
