// The library's runner asks tests alone. A file of tests that fails while it loads has none, so that a mutant that breaks a table as it is made would
// pass for unnoticed though its whole file is down: such a file counts as one failed test.
import { strykerPlugins as theirs, strykerValidationSchema } from '@stryker-mutator/vitest-runner';

const FAILED = 1; // the library's number for a test that failed
const [vitest] = theirs;

function started(injector) {
  const runner = vitest.factory(injector);
  const run = runner.run.bind(runner);
  runner.run = async (...given) => {
    const result = await run(...given);
    if (result.status !== 'complete') return result;
    const down = runner.ctx.state.getFiles().filter((file) => file.tasks.length === 0 && file.result?.state === 'fail');
    return { ...result, tests: [...result.tests, ...down.map((file) => ({ id: file.filepath, name: 'loads', status: FAILED, timeSpentMs: 0, failureMessage: file.result.errors?.[0]?.message ?? 'does not load' }))] };
  };
  return runner;
}
started.inject = vitest.factory.inject;

export const strykerPlugins = [{ ...vitest, factory: started }];
export { strykerValidationSchema };
