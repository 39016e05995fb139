// Prints the Reading of a demo drink, then serves the page and says where. `tools/prepare.mjs` ran before.
import { join } from 'node:path';
import { root } from './house/root.mjs';

const world = { stdin: process.stdin, stdout: process.stdout, stderr: process.stderr, env: process.env };
const { main } = await import('../packages/cli/dist/index.js');

// A finding or a fault in the demo drink ends it with a status of its own; the page is served all the same.
await main(['read', join(root, 'demo', 'clear-colada.drink')], world).catch((error) => process.stderr.write(`The demo drink could not be read: ${error.message}\n`));
process.exitCode = await main(['open', ...process.argv.slice(2)], world);
