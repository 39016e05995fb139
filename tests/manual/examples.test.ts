// Every example of README and manual is run, and what it shows is what was printed. `UPDATE=1` writes the pages anew, to be reviewed as a diff.
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { main } from '@washline/cli';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askedOf, cut, examplesOf, type Example } from './page.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const manual = join(root, 'docs/manual');
const pages = [join(root, 'README.md'), ...readdirSync(manual).filter((name) => name.endsWith('.md')).sort().map((name) => join(manual, name))];
const home = process.cwd();
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'manual-'));
  for (const name of ['demo', 'cases']) symlinkSync(join(root, name), join(folder, name));
  process.chdir(folder);
});
afterAll(() => { process.chdir(home); rmSync(folder, { recursive: true }); });

async function run(example: Example): Promise<{ stdout: string; stderr: string; status: number }> {
  for (const [name, text] of example.files) writeFileSync(join(folder, name), text);
  let stdout = '', stderr = '';
  const status = await main(example.run, {
    stdin: (async function* () { yield Buffer.from(example.stdin); })(), env: {},
    stdout: { write: (text: string) => { stdout += text; } }, stderr: { write: (text: string) => { stderr += text; } },
  });
  return { stdout, stderr, status };
}

async function rewrite(page: string, example: Example, text: string, status: number): Promise<void> {
  const whole = readFileSync(page, 'utf8');
  const now = examplesOf(page).find((other) => other.line === example.line);
  if (!now) throw new Error(`no example at line ${example.line}`);
  const fence = whole.lastIndexOf('```', now.shown.from - 1);
  const rest = now.shown.rest.replace(/,?\s*exit \d/, '');
  const info = [rest, ...(status === 0 ? [] : [`exit ${status}`])].filter((part) => part !== '').join(', ');
  writeFileSync(page, `${whole.slice(0, fence)}\`\`\`output${info === '' ? '' : ` ${info}`}\n${text}${whole.slice(now.shown.to)}`);
}

const LEAST: Readonly<Record<string, number>> = { 'README.md': 3, 'spec.md': 10, 'read.md': 4, 'units.md': 3, 'preps.md': 3, 'washes.md': 3 };

describe.each(pages.map((page) => [relative(root, page), page] as const))('%s', (_name, page) => {
  const examples = examplesOf(page);
  const least = LEAST[basename(page)] ?? 0;
  it(`has ${least} examples or more`, () => { expect(examples.length).toBeGreaterThanOrEqual(least); });
  // From the last to the first, so that a page written anew keeps the lines of those still to come.
  for (const example of [...examples].reverse()) {
    it(`line ${example.line}: washline ${example.run.join(' ')}`, async () => {
      const { stdout, stderr, status } = await run(example);
      const text = cut(example.shown.rest, stdout, stderr);
      if (process.env['UPDATE'] === '1') { await rewrite(page, example, text, status); return; }
      expect(text).toBe(example.shown.body);
      expect(status).toBe(askedOf(example.shown.rest).exit);
    });
  }
});
