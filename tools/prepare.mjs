// Makes a clone ready: installs what is missing, builds what is missing or stale. Needs Node and npm only.
import { build } from './house/build.mjs';
import { install } from './house/installed.mjs';

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
process.exit(failed.length > 0 ? 1 : 0);
