// Mutation testing: `npm run mutation [-- DOMAIN…] [-- --share 0.2] [-- --seed 7] [-- --file PATH]`. Changes the code in one place at a time and asks the tests of
// its domain whether they notice; prints the score of each domain and the mutants nobody noticed.
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { root } from './house/root.mjs';
import { tally } from './house/tally.mjs';
import { DOMAINS, EXCLUDED, LEAST } from './mutation/domains.mjs';
import { sampled } from './mutation/sample.mjs';
import { projectFiles } from './tidy/files.mjs';

const args = process.argv.slice(2);
const option = (name, otherwise) => (args.includes(name) ? Number(args[args.indexOf(name) + 1]) : otherwise);
const seed = option('--seed', 1895);
const only = args.includes('--file') ? args[args.indexOf('--file') + 1] : null;
const wanted = Object.keys(DOMAINS).filter((name) => !Object.keys(DOMAINS).some((other) => args.includes(other)) || args.includes(name));

/** Files a pattern of a domain means, without tests. */
const filesOf = (patterns) => projectFiles((path) => /\.ts$/.test(path) && !/\.test\.ts$|\/types\.ts$|\/index\.ts$/.test(path) && patterns.some((pattern) => path.startsWith(pattern.replace('*.ts', '')) && !path.slice(pattern.length - 4).includes('/')));

async function mutate(name) {
  const { mutate: patterns, share } = DOMAINS[name];
  process.env.WASHLINE_MUTATION = name;
  const results = await new Stryker({
    mutate: only === null ? sampled(filesOf(patterns), option('--share', share), seed) : [only], mutator: { plugins: [], excludedMutations: EXCLUDED },
    testRunner: 'vitest', vitest: { configFile: 'tools/mutation/vitest.config.mjs', related: false }, plugins: ['runner', 'found'].map((name) => join(root, `tools/mutation/${name}.mjs`)),
    // oxlint-disable-next-line typescript/no-unsafe-enum-assignment -- the library's own words for its levels
    coverageAnalysis: 'perTest', concurrency: 2, timeoutMS: 40_000, reporters: args.includes('--progress') ? ['progress-append-only', 'found'] : [], checkers: [], disableTypeChecks: false, allowConsoleColors: false, logLevel: 'error', fileLogLevel: 'off',
    tempDirName: '.mutants', ignorePatterns: ['docs', 'dist', '**/dist', 'packages/cli/whole', 'demo', 'timings'], ignoreStatic: false,
  }).runMutationTest();
  return results;
}

const total = tally();
const report = {};
for (const name of wanted) {
  const began = performance.now();
  const results = await mutate(name);
  const counted = results.filter((one) => ['Killed', 'Timeout', 'Survived', 'NoCoverage'].includes(one.status));
  const caught = counted.filter((one) => one.status === 'Killed' || one.status === 'Timeout').length;
  const score = (100 * caught) / Math.max(counted.length, 1);
  console.log(`${name}: ${caught} of ${counted.length} mutants noticed, ${score.toFixed(1)} % (${((performance.now() - began) / 1000).toFixed(0)} s)`);
  const left = counted.filter((one) => one.status === 'Survived' || one.status === 'NoCoverage').map((one) => `${one.fileName.slice(one.fileName.indexOf('packages/'))}:${one.location.start.line}:${one.location.start.column} ${one.mutatorName} → ${(one.replacement ?? '').replaceAll(/\s+/g, ' ').slice(0, 100)}${one.status === 'NoCoverage' ? ' (no test comes here)' : ''}`);
  report[name] = { mutants: counted.length, noticed: caught, left };
  if (args.includes('--left')) for (const line of left) console.log(`  ${line}`);
  total.check(`${name}: at least ${LEAST} % of the mutants are noticed`, score >= LEAST && counted.length > 0 ? [] : [`${score.toFixed(1)} %`]);
}
if (args.includes('--json')) writeFileSync(join(root, 'mutation.json'), JSON.stringify(report, null, 1));
rmSync(join(root, '.mutants'), { recursive: true, force: true });
process.exit(total.close());
