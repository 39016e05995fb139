import { spawnSync } from 'node:child_process';
import { root } from './root.mjs';

/** Counts of one run: checks and tests passed, failed and skipped, with the reason of each skip. */
export function tally() {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  const failures = [];
  const reasons = [];
  return {
    counts,
    /** Counts one check; `problems` lists what is wrong, empty when it holds. */
    check(name, problems) {
      if (problems.length === 0) { counts.passed += 1; console.log(`  ok    ${name}`); return true; }
      counts.failed += 1;
      failures.push(name);
      console.log(`  FAIL  ${name}`);
      for (const problem of problems.slice(0, 40)) console.log(`        ${problem.replaceAll('\n', '\n        ')}`);
      if (problems.length > 40) console.log(`        and ${problems.length - 40} more`);
      return false;
    },
    /** Counts what could not be run. */
    without(count, reason) {
      counts.skipped += count;
      reasons.push(`${count} skipped: ${reason}`);
    },
    add(more) {
      counts.passed += more.passed; counts.failed += more.failed; counts.skipped += more.skipped;
      failures.push(...(more.failures ?? []));
    },
    /** Prints the failures again, then what `before` says, and, as the last line, the count. Returns the exit status. */
    close(before = '') {
      console.log('');
      for (const name of failures) console.log(`failed: ${name}`);
      for (const reason of reasons) console.log(reason);
      if (before) console.log(before);
      const { passed, failed, skipped } = counts;
      console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
      return failed > 0 || passed === 0 ? 1 : 0;
    },
  };
}

/** Runs a program to its end and returns its status and what it printed. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, encoding: 'utf8', maxBuffer: 1 << 27, env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' }, ...options });
  return { status: done.status ?? 1, out: done.stdout ?? '', err: done.stderr ?? '', all: `${done.stdout ?? ''}${done.stderr ?? ''}`.trim() };
}
