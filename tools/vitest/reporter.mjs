// Prints one line per test file, each failure in full, and writes the counts where WASHLINE_COUNTS says.
import { writeFileSync } from 'node:fs';
import { relative } from 'node:path';

/** A failing test as text: its full name, what was said, where. */
function failureOf(test) {
  const errors = test.result().errors ?? [];
  return `${test.fullName}\n${errors.map((error) => `${error.message ?? error}${error.diff ? `\n${error.diff}` : ''}${place(error)}`).join('\n')}`;
}

function place(error) {
  const frame = (error.stacks ?? [])[0];
  return frame ? `\nat ${relative(process.cwd(), frame.file)}:${frame.line}` : '';
}

/**
 * Behaviours and table rows of one file. A test of its own is a behaviour; a table of tests (`test.each`) is one behaviour and as many rows as it has lines. Tables that stand
 * one after the other under one heading count as one behaviour, since nothing tells them apart here. Under `describe.each` each title counts once, and each time again as a row.
 */
function told(module) {
  const behaviours = new Set();
  let rows = 0;
  let number = 0;
  const walk = (children, above, repeated) => {
    let table = false;
    for (const child of children) {
      if (child.type === 'suite') { walk(child.children, child.options.each ? `${above} > *` : `${above} > ${child.name}`, repeated || Boolean(child.options.each)); table = false; continue; }
      const each = Boolean(child.options.each);
      if (each || repeated) rows += 1;
      if (each && table) continue;
      table = each;
      behaviours.add(repeated ? `${above} > ${each ? '*' : child.name}` : `${above} ${number += 1}`);
    }
  };
  walk(module.children, '', false);
  return { behaviours: behaviours.size, rows };
}

export default class CountingReporter {
  onTestRunEnd(modules, unhandled) {
    const counts = { passed: 0, failed: 0, skipped: 0, behaviours: 0, rows: 0, failures: [], names: [] };
    for (const module of [...modules].sort((a, b) => a.moduleId.localeCompare(b.moduleId))) this.count(module, counts);
    for (const error of unhandled) {
      counts.failed += 1;
      counts.failures.push(`outside any test: ${error.message}`);
      console.log(`        outside any test: ${error.message}${place(error)}`);
    }
    if (process.env.WASHLINE_COUNTS) writeFileSync(process.env.WASHLINE_COUNTS, JSON.stringify(counts));
    else console.log(`${counts.passed} passed, ${counts.failed} failed${counts.skipped > 0 ? `, ${counts.skipped} skipped` : ''}`);
  }

  count(module, counts) {
    const name = relative(process.cwd(), module.moduleId);
    const here = { passed: 0, failed: 0, skipped: 0 };
    const said = [];
    const { behaviours, rows } = told(module);
    counts.behaviours += behaviours; counts.rows += rows;
    for (const test of module.children.allTests()) {
      const { state } = test.result();
      here[state === 'pending' ? 'skipped' : state] += 1;
      if (state === 'passed') counts.names.push(test.fullName);
      if (state === 'failed') { said.push(failureOf(test)); counts.failures.push(`${name} > ${test.fullName}`); }
    }
    for (const error of [...module.errors(), ...[...module.children.allSuites()].flatMap((suite) => suite.errors())]) {
      here.failed += 1;
      said.push(`${error.message}${place(error)}`);
      counts.failures.push(`${name}: ${String(error.message).split('\n')[0]}`);
    }
    const time = module.diagnostic().duration;
    console.log(`  ${here.failed > 0 ? 'FAIL' : 'ok  '}  ${name}: ${here.passed}${here.failed > 0 ? `, ${here.failed} failed` : ''}${time > 1000 ? ` (${(time / 1000).toFixed(1)} s)` : ''}`);
    for (const text of said) console.log(`        ${text.replaceAll('\n', '\n        ')}`);
    for (const key of ['passed', 'failed', 'skipped']) counts[key] += here[key];
  }
}
