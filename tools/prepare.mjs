// Makes a clone ready: installs what is missing, builds what is missing or stale. Needs Node and npm only.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './house/build.mjs';
import { install } from './house/installed.mjs';
import { root } from './house/root.mjs';

const say = (line) => process.stderr.write(`${line}\n`);

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  say(`Washline needs Node 20.19 or newer; this is ${process.version}.`);
  process.exit(2);
}
if (!install(say)) {
  say('Installing did not work; what npm said stands above.');
  process.exit(1);
}
const failed = build(say, { always: process.argv.includes('--always') });
for (const part of failed) say(`${part.name}:\n${part.said}`);
// With `--start`, what stands built from before is good enough to go on with.
const goOn = process.argv.includes('--start') && existsSync(join(root, 'packages', 'cli', 'dist', 'index.js'));
process.exit(failed.length > 0 && !goOn ? 1 : 0);
