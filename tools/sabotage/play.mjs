// Plays one bundled test file in this process: `describe`, `test` and `expect` as the suite knows them, stopping at the first test that fails.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { GLOBAL_EXPECT, JestAsymmetricMatchers, JestChaiExpect, JestExtend, chai, setState } from '@vitest/expect';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect);
Object.defineProperty(globalThis, GLOBAL_EXPECT, { value: expect, writable: true, configurable: true });
setState({ assertionCalls: 0, isExpectingAssertions: false, isExpectingAssertionsError: null, expectedAssertionsNumber: null, expectedAssertionsNumberErrorGen: null }, expect);

/** Names as `%s` of a row give them; only for saying which test noticed. */
const titled = (title, row) => {
  let at = 0;
  return title.replaceAll('%%', '%').replace(/%[sdifjo]/g, () => String(row[at++]));
};

/** What a test file sees as `vitest`, and the tests it has told of. */
export function stage(file) {
  const tests = [];
  let suite = { name: '', before: [], after: [], parent: null };
  const describe = (name, inner) => {
    const outer = suite;
    suite = { name: `${outer.name}${name} > `, before: [], after: [], parent: outer };
    try { inner(); } finally { suite = outer; }
  };
  const test = (name, first, second) => {
    const body = typeof first === 'function' ? first : second;
    tests.push({ name: `${suite.name}${name}`, body, suite });
  };
  const each = (one) => (rows) => (title, first, second) => {
    const body = typeof first === 'function' ? first : second;
    for (const row of rows) {
      const list = Array.isArray(row) ? row : [row];
      one(titled(title, list), () => body(...list));
    }
  };
  describe.each = each(describe);
  test.each = each(test);
  const own = Object.assign((value, message) => expect(value, message), expect);
  chai.Assertion.addMethod('toMatchFileSnapshot', function toMatchFileSnapshot(path) {
    const whole = resolve(dirname(file), path);
    this.assert(existsSync(whole) && readFileSync(whole, 'utf8') === this._obj, `differs from ${path}`, `is as ${path}`);
  });
  const api = {
    describe, test, it: test, expect: own,
    beforeAll: (body) => suite.before.push(body), afterAll: (body) => suite.after.push(body),
    beforeEach: (body) => suite.before.push(body), afterEach: (body) => suite.after.push(body),
  };
  return { api, tests };
}

/** Tests of the measuring itself: they pass on whatever the numbers give, and take their time. */
const OF_ITSELF = /^a changed expected value fails|^no case is known by its id/;

/** Runs what a file has told of, all of it or the tests named in `only`; name and words of those that fail, the first alone where `all` is not asked for. */
export async function failing(tests, { only, all = false } = {}) {
  const begun = new Set();
  const begin = async (suite) => {
    if (!suite || begun.has(suite)) return;
    await begin(suite.parent);
    begun.add(suite);
    for (const body of suite.before) await body();
  };
  const faults = [];
  try {
    for (const one of tests) {
      if (OF_ITSELF.test(one.name) || (only && !only.has(one.name))) continue;
      try {
        await begin(one.suite);
        const result = one.body();
        if (result instanceof Promise) await result;
      } catch (error) {
        faults.push({ test: one.name, said: String(error?.message ?? error).slice(0, 300) });
        if (!all) break;
      }
    }
    return faults;
  } finally {
    for (const suite of begun) for (const body of suite.after) await body();
  }
}
