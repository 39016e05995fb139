import { expect, it } from 'vitest';
import { limit } from './limits.ts';

it('gives a limit by its code and name', () => {
  expect(limit('siphon-undercharged', 'for_one')).toBe(500);
});

it.each([['gel-dose-low', 'nothing'], ['no-such-code', 'fails'], ['prep-missing', 'fails']])('a limit that is not there throws: %s %s', (code, name) => {
  expect(() => limit(code, name)).toThrow(`no limit ${name} of ${code}`);
});
