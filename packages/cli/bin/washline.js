#!/usr/bin/env node
'use strict';
// CommonJS: as a module of its own it would start some milliseconds later.
const { statSync } = require('node:fs');
const { join } = require('node:path');

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

const age = (...place) => statSync(join(__dirname, '..', ...place), { throwIfNoEntry: false })?.mtimeMs ?? 0;
/** The bundle starts faster; what was compiled after it goes before it. */
const bundled = () => { const whole = age('whole', 'index.js'); return whole > 0 && ['cli', 'spec', 'engine', 'tables', 'drawing', 'server'].every((name) => age('..', name, 'tsconfig.tsbuildinfo') < whole); };

/** Streams are made when they are first asked for: one that is not costs nothing. */
const streams = [];
const stream = (name) => { const made = process[name]; if (!streams.includes(made)) streams.push(made); return made; };
const world = { get stdin() { return process.stdin; }, get stdout() { return stream('stdout'); }, get stderr() { return stream('stderr'); }, env: process.env };
/** Once everything has been taken that was written to a stream. */
const written = (to) => new Promise((done) => { if (to.writableLength === 0) done(); else to.write('', done); });

const run = async () => {
  try {
    const { main } = bundled() ? require('./whole.js') : await import('../dist/index.js');
    process.exitCode = await main(process.argv.slice(2), world);
    await Promise.all(streams.map(written));
    // what is left to do is giving back memory piece by piece, which the end of a process does at once
    process.exit();
  } catch (error) {
    fault(error);
  }
};
run();
