import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { seedFor } from '../house/seed.mjs';
import { draws } from './fuzz/draws.mjs';
import { fuzz } from './fuzz/fuzz.mjs';

export const title = 'Bad input to the command line and the reader';

const WASHLINE = join(root, 'packages', 'cli', 'bin', 'washline.js');
const SECONDS = 5;

/** Runs the command and gives what it did; killed when it takes too long. */
function washline(args, input = '') {
  return new Promise((resolve) => {
    const began = performance.now();
    const child = spawn(process.execPath, [WASHLINE, ...args], { cwd: root });
    let out = '';
    let err = '';
    child.stdout.on('data', (part) => { out += part; });
    child.stderr.on('data', (part) => { err += part; });
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
    const timer = setTimeout(() => child.kill('SIGKILL'), SECONDS * 2000);
    child.on('close', (status, signal) => {
      clearTimeout(timer);
      resolve({ status, signal, out, err, seconds: (performance.now() - began) / 1000 });
    });
  });
}

/** What is wrong with how bad input was answered: the contract asks for an exit of 0 to 2, five seconds, sentences and no stack. */
function complaints(done, { statuses, json }) {
  const wrong = [];
  if (done.signal) wrong.push(`killed by ${done.signal}`);
  else if (!statuses.includes(done.status)) wrong.push(`ended with ${done.status}, not ${statuses.join(' or ')}: ${done.err.slice(0, 300)}`);
  if (done.seconds > SECONDS) wrong.push(`took ${done.seconds.toFixed(1)} s`);
  if (/^\s+at .*[:(]\d+:\d+\)?$/m.test(done.err + done.out)) wrong.push(`showed a stack: ${done.err.slice(0, 300)}`);
  if (/NaN|undefined|\[object Object\]/.test(done.err)) wrong.push(`a sentence with a hole: ${done.err.slice(0, 300)}`);
  if (json) { try { JSON.parse(done.out); } catch { wrong.push(`standard output is not one JSON value: ${done.out.slice(0, 200)}`); } }
  else if (done.status === 2 && done.err.trim() === '') wrong.push('said nothing on standard error');
  return wrong;
}

/** Texts made of demo specs by damage: cut, doubled, shuffled lines, odd characters, huge numbers. */
function damaged(specs, draw) {
  const lines = specs[Math.floor(draw() * specs.length)].split('\n');
  const pick = (list) => list[Math.floor(draw() * list.length)];
  const hurt = [
    (text) => text.slice(0, Math.floor(draw() * text.length)),
    (text) => text.slice(Math.floor(draw() * text.length)),
    (text) => text.replace(/\d+/g, (digits) => (draw() < 0.2 ? pick(['-1', '1e400', '0', '999999999999', '½', 'NaN', '1,5', '１２']) : digits)),
    (text) => Array.from(text, (character) => (draw() < 0.02 ? pick(['\u0000', '\u001b', '\u202e', '\ufeff', '🍍', ':', '(', '\t', '\r', '/']) : character)).join(''),
    (text) => text.split('\n').sort(() => draw() - 0.5).join('\n'),
    (text) => text.split('\n').map((line) => (draw() < 0.1 ? line.repeat(20) : line)).join('\n'),
    (text) => text.replace(/(ml|g|min|°C|%)/g, (unit) => (draw() < 0.2 ? pick(['xyz', '', 'ml ml', '%%', 'per']) : unit)),
    (text) => text.replaceAll(':', () => (draw() < 0.3 ? '' : ':')),
  ];
  return pick(hurt)(pick(hurt)(lines.join('\n')));
}

async function fixedCases(folder, total) {
  const file = (name, content) => { const path = join(folder, name); writeFileSync(path, content); return path; };
  mkdirSync(join(folder, 'sub.drink'));
  const cases = [
    ['a folder', [join(folder, 'sub.drink')]], ['a missing file', [join(folder, 'nothing.drink')]],
    ['zero bytes among text', [file('zero.drink', Buffer.from('Daiquiri\n\0\u0001\u0002'))]],
    ['bytes at random', [file('random.drink', Buffer.from(Array.from({ length: 20_000 }, (_, i) => (i * 7919 + 13) % 251)))]],
    ['five megabytes', [file('five.drink', 'a'.repeat(5_000_000))]], ['five megabytes of lines', [file('lines.drink', '60 ml rum\n'.repeat(500_000))]],
    ['bad UTF-8', [file('bad.drink', Buffer.from([0x44, 0x0a, 0xff, 0xfe]))]], ['an empty file', [file('empty.drink', '')]],
    ['a ring of preps', [file('ring.drink', 'Ring\n\nA (mix):\n100 ml b\n\nB (mix):\n100 ml a\n\nBuild:\n60 ml a\n')]],
    ['401 lines', [file('many.drink', `Many\n${'60 ml white rum\n'.repeat(401)}`)]], ['a line of 501 characters', [file('wide.drink', `Wide\n60 ml ${'a'.repeat(501)}\n`)]],
    ['65 sections', [file('sections.drink', `Sections\n${Array.from({ length: 65 }, (_, i) => `P${i} (mix):\n10 ml water\n`).join('')}`)]],
    ['an unknown flag', ['--frobnicate', 'x']], ['nothing to read', []], ['a variant that is not there', [join('demo', 'clear-colada.drink'), '--variant', 'nowhere']],
  ];
  for (const [name, args] of cases) {
    for (const json of [false, true]) {
      const done = await washline((json ? ['read', '--json'] : ['read']).concat(args));
      total.check(`${name}${json ? ', --json' : ''}: exit 2, a sentence, no stack`, complaints(done, { statuses: [2], json }));
    }
  }
}

/** How many wild texts the short proof reads: the same ones each time; the long one reads others for ten minutes. */
const WILD = 2500;

/** Texts of real words in no order anyone promised, read in this process: no stack, no hang, nothing that JSON cannot say. */
async function wild({ short, total }) {
  const seed = seedFor({ short });
  const seconds = Number(process.env.WASHLINE_FUZZ_SECONDS ?? 600);
  const { rounds, slowest, slowestRound, found } = await fuzz(seed, seconds, short ? WILD : Infinity);
  console.log(`  seed ${seed}: ${rounds} texts, the slowest took ${slowest.toFixed(0)} ms (round ${slowestRound}); WASHLINE_SEED repeats it`);
  total.check(`${short ? WILD.toLocaleString('en') : `${seconds} s of`} wild specs and lines are read without a stack or a hang, every figure finite and in its range`, rounds > 0 ? found.map(({ round, wrong }) => `again.mjs ${seed} ${round}: ${wrong.join('; ').slice(0, 500)}`) : ['no text was read']);
}

export async function prove({ short, total }) {
  const folder = mkdtempSync(join(tmpdir(), 'washline-proof-'));
  try {
    await fixedCases(folder, total);
    const specs = readdirSync(join(root, 'demo')).filter((name) => name.endsWith('.drink')).map((name) => readFileSync(join(root, 'demo', name), 'utf8'));
    const seed = Number(process.env.WASHLINE_SEED ?? 20251);
    const draw = draws(seed).next;
    const wrong = [];
    const rounds = short ? 60 : 600;
    for (let round = 0; round < rounds && wrong.length < 5 && specs.length > 0; round += 1) {
      const text = damaged(specs, draw);
      const done = await washline(['read', '-', '--json'], text);
      for (const complaint of complaints(done, { statuses: [0, 1, 2], json: true })) wrong.push(`round ${round} of seed ${seed}: ${complaint}\n${text.slice(0, 400)}`);
    }
    await wild({ short, total });
    total.check(`${rounds} damaged demo specs are read or refused with a place`, specs.length > 0 ? wrong : ['there is no demo spec to damage']);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
