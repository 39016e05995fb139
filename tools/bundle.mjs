// Puts what the command line needs into few files beside what is built: a cold start reads a dozen files instead of some three hundred.
import { mkdirSync, readFileSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { rolldown } from 'rolldown';
import { root } from './house/root.mjs';

const cli = join(root, 'packages', 'cli');
const out = join(cli, 'whole');
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const bundle = await rolldown({
  input: { index: join(cli, 'dist', 'index.js'), 'hands-worker': join(cli, 'dist', 'commands', 'hands-worker.js') },
  platform: 'node', cwd: root, logLevel: 'silent',
});
await bundle.write({ dir: out, format: 'cjs', minify: { compress: false, mangle: false }, entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' });
await bundle.close();
// letters beyond ASCII stand in strings and patterns alone: escaped, a file is read byte by byte and takes half the room
for (const name of readdirSync(out).filter((file) => file.endsWith('.js'))) {
  const text = readFileSync(join(out, name), 'utf8');
  writeFileSync(join(out, name), text.replace(/[^\x00-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`));
}
writeFileSync(join(out, 'package.json'), '{ "type": "commonjs" }\n');

// One drink is read, so that what reading needs is compiled and can be kept beside the text.
const { default: { main, keepCompiled } } = await import('../packages/cli/bin/whole.js');
const nowhere = { write: () => true };
const drink = join(root, 'demo', 'clear-colada.drink');
const status = await main(['read', '--json', drink], { stdin: process.stdin, stdout: nowhere, stderr: nowhere, env: {} });
if (status !== 0) throw new Error(`${drink} was not read`);
keepCompiled();

// younger than everything it was made of: `bin/washline.js` takes it while that is so
const now = new Date();
utimesSync(join(out, 'index.js'), now, now);
