// What a shell offers, asked of the shell itself: bash loads the script in a process of its own. For zsh and fish the form of their scripts
// (zshcompsys(1): #compdef, _arguments; fish's complete(1): -c -n -l -a).
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { main } from '../index.ts';

const folder = mkdtempSync(join(tmpdir(), 'washline-completion-'));
afterAll(() => { rmSync(folder, { recursive: true }); });

async function script(shell: string, ...more: string[]): Promise<string> {
  let out = '';
  const status = await main(['completion', shell, ...more], { stdin: (async function* () { /* nothing typed */ })(), stdout: { write: (text) => { out += text; } }, stderr: { write: () => true }, env: {} });
  expect(status).toBe(0);
  return out;
}
/** Whether a shell takes a script without running it; true where the shell is not there. */
const takes = (program: string, ...args: string[]): boolean => { if (!have(program)) return true; execFileSync(program, args); return true; };
const have = (program: string): boolean => { try { execFileSync(program, ['--version'], { stdio: 'ignore' }); return true; } catch { return false; } };

describe('bash', () => {
  beforeAll(async () => {
    writeFileSync(join(folder, 'washline.bash'), await script('bash'));
    for (const name of ['colada.drink', 'two words.drink', 'notes.txt', 'cases.json']) writeFileSync(join(folder, name), '');
    mkdirSync(join(folder, 'book'));
  });
  /** What bash offers behind the words typed so far, the last of them begun. */
  const offers = (...words: string[]): string[] => {
    const line = ['washline', ...words];
    const quoted = line.map((word) => `'${word}'`).join(' ');
    const asked = `source ./washline.bash; COMP_WORDS=(${quoted}); COMP_CWORD=${line.length - 1}; _washline; printf '%s\\n' "\${COMPREPLY[@]}"`;
    return execFileSync('bash', ['--noprofile', '--norc', '-c', asked], { cwd: folder, encoding: 'utf8' }).split('\n').filter((one) => one !== '').sort();
  };
  it('binds the command', () => { expect(execFileSync('bash', ['--noprofile', '--norc', '-c', 'source ./washline.bash; complete -p washline'], { cwd: folder, encoding: 'utf8' })).toContain('-F _washline washline'); });
  it('offers commands', () => {
    expect(offers('')).toEqual(expect.arrayContaining(['read', 'mix', 'lines', 'larder', 'verify', 'open', 'completion', '--help']));
    expect(offers('rea')).toEqual(['read']);
  });
  it('offers flags of the command, and those that turn off what is on', () => {
    expect(offers('read', '--')).toEqual(expect.arrayContaining(['--json', '--no-color', '--why', '--variant', '--language', '--help']));
    expect(offers('open', '--po')).toEqual(['--port']);
  });
  it('offers drinks and folders where a spec stands, blanks and all', () => {
    expect(offers('read', '')).toEqual(['book', 'colada.drink', 'two words.drink']);
    expect(offers('read', 'two')).toEqual(['two words.drink']);
    expect(offers('verify', 'c')).toEqual(['cases.json']);
    expect(offers('lines', 'n')).toEqual(['notes.txt']);
    expect(offers('open', '--book', '')).toEqual(['book']);
  });
  it('offers names of figures, ingredients, languages and shells', () => {
    expect(offers('read', 'colada.drink', '--why', 'str')).toEqual(['strength']);
    expect(offers('larder', 'lime-j')).toEqual(expect.arrayContaining(['lime-juice', 'lime-juice-bottled']));
    expect(offers('read', '--language', '')).toEqual(['de', 'en']);
    expect(offers('completion', 'z')).toEqual(['zsh']);
  });
});

describe('zsh', () => {
  it('is a function for compdef with each command and its flags', async () => {
    const text = await script('zsh');
    expect(text.startsWith('#compdef washline\n')).toBe(true);
    for (const part of ["'read:", '    read)', "'--why[", ':why:(strength', '_files -g "*.drink"', "'--no-color["]) expect(text).toContain(part);
    expect(text.match(/'/g)?.length ?? 0).toSatisfy((count: number) => count % 2 === 0);
    writeFileSync(join(folder, '_washline'), text);
    expect(takes('zsh', '-n', join(folder, '_washline'))).toBe(true);
  });
});

describe('fish', () => {
  it('is lines of complete with each command and its flags', async () => {
    const text = await script('fish');
    const lines = text.trim().split('\n');
    for (const line of lines.slice(1)) expect(line).toMatch(/^complete -c washline /);
    expect(lines.some((line) => /__fish_use_subcommand -a 'read' -d '/.test(line))).toBe(true);
    expect(lines.some((line) => /__fish_seen_subcommand_from read' -l why -x -a 'strength /.test(line))).toBe(true);
    expect(lines.some((line) => line.includes('__fish_complete_suffix .drink'))).toBe(true);
    writeFileSync(join(folder, 'washline.fish'), text);
    expect(takes('fish', '--no-execute', join(folder, 'washline.fish'))).toBe(true);
  });
});

it('in German the briefs are German', async () => { expect(await script('fish', '--language', 'de')).toContain('Angaben lesen'); });
