import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readInput, SPEC_LIMIT } from './input.ts';
import type { World } from './world.ts';

const folder = mkdtempSync(join(tmpdir(), 'washline-input-'));
afterAll(() => { rmSync(folder, { recursive: true }); });

const world = (typed: readonly string[] = []): World => ({
  stdin: (async function* () { for (const part of typed) yield Buffer.from(part); })(), stdout: { write: () => true }, stderr: { write: () => true }, env: {},
});
const file = (name: string, content: string | Buffer): string => { const path = join(folder, name); writeFileSync(path, content); return path; };
async function problemOf(path: string) {
  const input = await readInput(world(), path);
  if (!('problem' in input)) throw new Error('it was read');
  return input.problem;
}

describe('a text is read', () => {
  it('from a file, its byte order mark and line ends kept', async () => {
    const path = file('a.drink', '\ufeffDaiquiri\r\n60 ml rum\r\n');
    expect(await readInput(world(), path)).toEqual({ text: '\ufeffDaiquiri\r\n60 ml rum\r\n', file: path });
  });
  it('from standard input, however it comes apart', async () => {
    expect(await readInput(world(['Daiq', 'uiri\n']), '-')).toEqual({ text: 'Daiquiri\n', file: '-' });
  });
  it('at the limit', async () => { expect(await readInput(world(), file('full.drink', 'a'.repeat(SPEC_LIMIT)))).toHaveProperty('text'); });
});

describe('what cannot be read is said in one sentence with its place', () => {
  it.each([
    ['missing', () => join(folder, 'nothing.drink')],
    ['missing', () => join(file('plain.txt', 'x'), 'below')],
    ['missing', () => 'n'.repeat(5000)],
    ['missing', () => 'a\0b'],
    ['directory', () => { mkdirSync(join(folder, 'sub'), { recursive: true }); return join(folder, 'sub'); }],
    ['too-long', () => file('long.drink', 'a'.repeat(SPEC_LIMIT + 1))],
    ['too-long', () => file('five.drink', Buffer.alloc(5_000_000))],
    ['too-long', () => '/dev/zero'],
    ['binary', () => file('picture.png', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2]))],
  ])('%s', async (code, path) => {
    const problem = await problemOf(path());
    expect(problem.code).toBe(code);
    expect(problem.message).toMatch(/^[^\n]+$/);
    expect(problem.where?.file).toBeDefined();
  });
  // Ill-formed sequences of the Unicode Standard, table 3-7: a lone continuation byte, an overlong form, a surrogate, a cut-off end.
  it.each([
    ['a lone continuation byte', Buffer.from([0x61, 0x0a, 0xc3, 0xa9, 0x80]), 2, 2],
    ['an overlong form', Buffer.from([0x61, 0xc0, 0xaf]), 1, 2],
    ['a surrogate', Buffer.from([0xed, 0xa0, 0x80]), 1, 1],
    ['text beyond the plane, then a bad byte', Buffer.concat([Buffer.from('🍍🍍'), Buffer.from([0xff])]), 1, 5],
  ])('%s is not UTF-8 at its line and column', async (_name, bytes, line, column) => {
    const problem = await problemOf(file('bad.drink', bytes));
    expect(problem).toMatchObject({ code: 'not-utf8', where: { line, column } });
  });
  it('a character cut off at the very end is not UTF-8 either', async () => {
    expect((await problemOf(file('cut.drink', Buffer.from([0x61, 0xe2, 0x82])))).code).toBe('not-utf8');
  });
  it('standard input beyond the limit is not read to its end', async () => {
    let given = 0;
    const endless: World = { ...world(), stdin: (async function* () { for (;;) { given += 1; yield Buffer.alloc(65536); } })() };
    expect(await readInput(endless, '-')).toHaveProperty('problem.code', 'too-long');
    expect(given).toBeLessThan(10);
  });
});
