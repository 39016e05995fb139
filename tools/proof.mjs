// The long checks: fuzz, longer property runs, soak, sabotage, pictures. `-- --short` keeps under eight minutes.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './house/build.mjs';
import { install } from './house/installed.mjs';
import { root } from './house/root.mjs';
import { tally } from './house/tally.mjs';

const short = process.argv.includes('--short');
const say = (line) => console.log(line);
const total = tally();
if (!total.check('what the lock file names is installed', install(say) ? [] : ['npm could not install it'])) process.exit(total.close());
if (!total.check('everything builds', build(say).map((part) => `${part.name}:\n${part.said}`))) process.exit(total.close());

/** Every file of tools/proof gives one part: `prove({ short, total, say })`, in the order of their names. */
const folder = join(root, 'tools', 'proof');
const wanted = process.argv.slice(2).filter((arg) => !arg.startsWith('--'));
for (const name of readdirSync(folder).filter((file) => file.endsWith('.mjs')).sort()) {
  if (wanted.length > 0 && !wanted.some((word) => name.includes(word))) continue;
  const { title, prove } = await import(`./proof/${name}`);
  console.log(title);
  const began = performance.now();
  await prove({ short, total, say });
  console.log(`  ${((performance.now() - began) / 1000).toFixed(0)} s`);
}
process.exit(total.close());
