import { readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { wrongWith } from './check.mjs';

/** No text of up to 100 kB may take longer than so many readings of the demo drink, in time of the processor: neither a slow nor a busy machine is a finding. */
const LONGEST = 300;
/** What has taken this much and goes on hangs. */
const HANGS = 4 * LONGEST;

/** The fastest of forty readings of the demo drink, ms of the processor. */
function oneReading() {
  const text = readFileSync(new URL('../../../demo/clear-colada.drink', import.meta.url), 'utf8');
  return Math.min(...Array.from({ length: 40 }, () => wrongWith(text).ms));
}

/** What one worker found until the time was up; a round that takes too long is a finding, and another worker goes on behind it. */
function run(seed, from, until, rounds, unit) {
  const shared = new SharedArrayBuffer(4), now = new Int32Array(shared), found = [];
  const worker = new Worker(new URL('worker.mjs', import.meta.url), { workerData: { seed, from, until, rounds, shared } });
  return new Promise((resolve, reject) => {
    let seen = -1, spent = process.cpuUsage();
    const watch = setInterval(() => {
      const round = Atomics.load(now, 0);
      if (round !== seen) { seen = round; spent = process.cpuUsage(); return; }
      const { user, system } = process.cpuUsage(spent), ms = (user + system) / 1000;
      if (ms < HANGS * unit) return;
      clearInterval(watch);
      found.push({ round, wrong: [`took more than ${(HANGS * unit).toFixed(0)} ms, ${HANGS} readings of the demo drink`] });
      void worker.terminate().then(() => resolve({ found, rounds: round - from + 1, slowest: ms, slowestRound: round, next: round + 1 }));
    }, 250);
    worker.on('message', (message) => {
      if (!message.done) { found.push(message); return; }
      clearInterval(watch);
      if (message.slowest > LONGEST * unit) found.push({ round: message.slowestRound, wrong: [`took ${message.slowest.toFixed(0)} ms, ${(message.slowest / unit).toFixed(0)} readings of the demo drink`] });
      resolve({ found, ...message, next: null });
    });
    worker.on('error', (error) => { clearInterval(watch); reject(error); });
  });
}

/** Reads texts from a seed for so many seconds, or so many texts. What is wrong has its round: `node tools/proof/fuzz/again.mjs SEED ROUND` makes the text anew. */
export async function fuzz(seed, seconds, rounds = Infinity) {
  const unit = oneReading(), until = Date.now() + seconds * 1000, all = { rounds: 0, slowest: 0, slowestRound: 0, found: [] };
  for (let from = 0; from !== null;) {
    const part = await run(seed, from, until, rounds, unit);
    all.rounds += part.rounds;
    if (part.slowest > all.slowest) { all.slowest = part.slowest; all.slowestRound = part.slowestRound; }
    all.found.push(...part.found);
    from = Date.now() < until && all.rounds < rounds ? part.next : null;
  }
  return all;
}
