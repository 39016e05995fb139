// Prints the Reading of a demo drink, then serves the page and says where. `tools/prepare.mjs` ran before.
import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './house/root.mjs';

const washline = join(root, 'packages', 'cli', 'bin', 'washline.js');
const demo = join('demo', 'clear-colada.drink');

// A finding in the demo drink ends it with a status of its own; the page is served all the same.
spawnSync(process.execPath, [washline, 'read', demo], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });

const server = spawn(process.execPath, [washline, 'open', ...process.argv.slice(2)], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
server.on('exit', (code) => process.exit(code ?? 0));
