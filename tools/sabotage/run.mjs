import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { explanation } from './explain.mjs';
import { dataFiles, numbersOf } from './numbers.mjs';
import { quick } from './quick.mjs';
import { shiftOf } from './residuals.mjs';

/** Numbers in [0, 1) from a seed, the same on every machine (mulberry32). */
function draws(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

function chosen({ only, sample, seed }) {
  const all = dataFiles().flatMap(numbersOf);
  const wanted = only.length === 0 ? all : all.filter(({ file, place }) => only.some((words) => `${file} ${place}`.includes(words)));
  if (!sample || sample >= wanted.length) return wanted;
  const draw = draws(seed);
  return wanted.map((number) => [draw(), number]).sort((a, b) => a[0] - b[0]).slice(0, sample).map(([, number]) => number);
}

/** How many numbers are shifted together: many of those that have a reason to survive, few of those that should be noticed. */
const TOGETHER = { excused: 64, others: 16 };

/** Numbers in the lots they are tried in: of one file each. */
function lots(numbers) {
  const list = [];
  for (const file of new Set(numbers.map((number) => number.file))) {
    const here = numbers.filter((number) => number.file === file);
    for (const [group, size] of [[here.filter((number) => !explanation(number)), TOGETHER.others], [here.filter((number) => explanation(number)), TOGETHER.excused]]) {
      for (let at = 0; at < group.length; at += size) list.push({ file, places: group.slice(at, at + size).map(({ place }) => place) });
    }
  }
  return list;
}

/** Deals lots to processes until none is left. */
async function slow(numbers, side, found, say) {
  const broken = new Set();
  const list = lots(numbers);
  let next = 0;
  let done = 0;
  const began = performance.now();
  await Promise.all(Array.from({ length: Math.min(side, list.length) }, () => new Promise((resolve, reject) => {
    const worker = fork(fileURLToPath(new URL('try.mjs', import.meta.url)));
    worker.on('error', reject);
    worker.on('exit', (code) => { if (code) reject(new Error(`a process that shifts numbers ended with ${code}`)); });
    worker.on('message', (said) => {
      if (said.answers) {
        for (const one of said.broken) broken.add(one);
        for (const [place, noticed] of said.answers) found.set(`${said.file} ${place}`, noticed);
        if (Math.floor((done + said.answers.length) / 100) > Math.floor(done / 100)) say(`  ${done + said.answers.length} of ${numbers.length}, ${((performance.now() - began) / 1000).toFixed(0)} s`);
        done += said.answers.length;
      }
      if (next >= list.length) { worker.kill(); resolve(); return; }
      worker.send(list[next]);
      next += 1;
    });
  })));
  return [...broken];
}

/** @returns every number chosen with the test that noticed its shift, or the class that explains why none did, and the test files that fail as they are */
export async function sabotage({ only, sample, seed, side, say }) {
  const began = performance.now();
  const numbers = chosen({ only, sample, seed });
  const atOnce = await quick();
  const found = new Map();
  const rest = [];
  for (const number of numbers) {
    const { by } = shiftOf(number);
    const seen = atOnce(number, by);
    if (seen) found.set(`${number.file} ${number.place}`, seen);
    else rest.push(number);
  }
  say(`${numbers.length} numbers; ${numbers.length - rest.length} of them are cells that differ from print, or cannot be, by their row alone.`);
  const broken = rest.length > 0 ? await slow(rest, side, found, say) : [];
  const results = numbers.map((number) => {
    const noticed = found.get(`${number.file} ${number.place}`) ?? null;
    return { number, ...shiftOf(number), noticed, explained: noticed ? undefined : explanation(number) };
  });
  return { results, broken, seconds: (performance.now() - began) / 1000 };
}
