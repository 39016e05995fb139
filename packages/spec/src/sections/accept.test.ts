import { CODE_NAMES } from '@washline/engine';
import { expect, test } from 'vitest';
import { fold } from '../names/fold.ts';
import { acceptEntry, nearestCode } from './accept.ts';

// definition of the text format: "CODE at LINE: reason"
const known = new Set(['syrup 2:1', '1 egg white', 'to taste: a pinch'].map(fold));
test.each([
  ['egg-raw at 1 egg white: guests are told', { code: 'egg-raw', at: '1 egg white', reason: 'guests are told' }],
  ['egg-raw bei 1 Eiweiß: alle wissen es', { code: 'egg-raw', at: '1 Eiweiß', reason: 'alle wissen es' }],
  ['EGG-RAW in 1 egg white : yes', { code: 'egg-raw', at: '1 egg white', reason: 'yes' }],
  ['thick at syrup 2:1: as it is', { code: 'thick', at: 'syrup 2:1', reason: 'as it is' }],
  ['thick at syrup 2:1', { code: 'thick', at: 'syrup 2:1', reason: '' }],
  ['thick at to taste: a pinch: so be it', { code: 'thick', at: 'to taste: a pinch', reason: 'so be it' }],
  ['thick at syrup 3:1: as it is', { code: 'thick', at: 'syrup 3:1', reason: 'as it is' }],
  ['thick at no such line', { code: 'thick', at: 'no such line', reason: '' }],
  ['thick at a line:', { code: 'thick', at: 'a line', reason: '' }],
])('%s', (line, entry) => { expect(acceptEntry(line, 40, known)).toEqual({ ...entry, span: { from: 40, to: 40 + line.length } }); });
test.each(['egg-raw', 'egg-raw: no line', '1 at 2: no code', 'egg-raw at : nothing', ''])('"%s" accepts nothing', (line) => { expect(acceptEntry(line, 0, known)).toBeUndefined(); });
test('a code with a slip of the pen has a neighbour, a code has none', () => {
  for (const code of CODE_NAMES.slice(0, 12)) expect(nearestCode(code)).toBeNull();
  expect(nearestCode('egg-rav')).toBe('egg-raw');
  expect(nearestCode('gg-raw')).toBe('egg-raw');
});
