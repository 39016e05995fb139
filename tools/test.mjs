// Everything that must hold, counted. The last line is `N passed, M failed`.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './house/build.mjs';
import { findOrInstall } from './house/chromium.mjs';
import { install } from './house/installed.mjs';
import { root } from './house/root.mjs';
import { run, tally } from './house/tally.mjs';

const say = (line) => console.log(line);
const total = tally();
const node = process.execPath;
const began = performance.now();
/** A row of a table is no behaviour: see tools/vitest/reporter.mjs. */
const LEAST = 300;

/** A check that is a program: it holds when the program ends with 0; otherwise what it printed is the problem. */
function program(name, args) {
  const done = run(node, args);
  return total.check(name, done.status === 0 ? [] : [done.all || `ended with ${done.status}`]);
}

console.log('The house');
if (!total.check('what the lock file names is installed', install(say) ? [] : ['npm could not install it'])) process.exit(total.close());
const faults = build(say);
total.check('everything builds', faults.map((part) => `${part.name}:\n${part.said}`));

console.log('Checks');
program('types of the packages', ['node_modules/typescript/bin/tsc', '-b']);
if (existsSync(join(root, 'tsconfig.tests.json'))) program('types of the tests', ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.tests.json']);
if (existsSync(join(root, 'packages/web/tsconfig.json'))) program('types of the page', ['node_modules/typescript/bin/tsc', '-p', 'packages/web/tsconfig.json', '--noEmit']);
program('lint', ['tools/lint.mjs']);
program('no dead code, no unused dependency', ['node_modules/knip/bin/knip.js', '--no-progress', '--no-config-hints']);
const { tidy } = await import('./tidy/all.mjs');
for (const { name, problems } of await tidy()) total.check(name, problems);

console.log('Tests');
const { vitest, countTests } = await import('./house/vitest.mjs');
const tests = vitest([]);
total.add(tests);
let { behaviours, rows } = tests;
const { findingTests } = await import('./tidy/findings.mjs');
for (const { name, problems } of findingTests(tests.names)) total.check(name, problems);

const web = join(root, 'packages', 'web');
if (existsSync(join(web, 'vitest.e2e.config.ts'))) {
  console.log('In a browser');
  const config = ['--config', 'vitest.e2e.config.ts'];
  const { place, why } = findOrInstall(say);
  if (place) {
    const seen = vitest(config, { cwd: web, env: { CHROMIUM: place } });
    total.add(seen);
    behaviours += seen.behaviours; rows += seen.rows;
  } else total.without(countTests(config, { cwd: web }), why);
}

total.check(`at least ${LEAST} behaviours are tested, table rows not counted`, behaviours >= LEAST ? [] : [`there are ${behaviours}`]);
process.exit(total.close(`${behaviours} behaviours and ${rows} table rows tested, in ${((performance.now() - began) / 1000).toFixed(0)} s.`));
