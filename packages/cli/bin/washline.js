#!/usr/bin/env node
import { statSync } from 'node:fs';
import process from 'node:process';

const fault = (error) => {
  process.exitCode = 3;
  if (error?.code === 'ERR_MODULE_NOT_FOUND' && String(error.message).includes('dist')) process.stderr.write('Washline is not built here yet; run `npm run build` once.\n');
  else process.stderr.write(`A fault of Washline, not of what was asked: ${String(error?.message ?? error).split('\n')[0]}\n`);
};
process.on('uncaughtException', (error) => {
  // The reader of a pipe may leave early: that is no fault.
  if (error?.code !== 'EPIPE') fault(error);
  process.exit();
});

const age = (place) => statSync(new URL(place, import.meta.url), { throwIfNoEntry: false })?.mtimeMs ?? 0;
/** The bundle starts faster; what was compiled after it goes before it. */
const bundled = () => { const whole = age('../whole/index.js'); return whole > 0 && ['cli', 'spec', 'engine', 'tables', 'drawing', 'server'].every((name) => age(`../../${name}/tsconfig.tsbuildinfo`) < whole); };

try {
  const { main } = await import(bundled() ? './whole.js' : '../dist/index.js');
  process.exitCode = await main(process.argv.slice(2), { stdin: process.stdin, stdout: process.stdout, stderr: process.stderr, env: process.env });
} catch (error) {
  fault(error);
}
