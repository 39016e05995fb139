// Reads texts one after the other and says, in memory both sides see, which round it is at.
import { parentPort, workerData } from 'node:worker_threads';
import { wrongWith } from './check.mjs';
import { seedOf } from './draws.mjs';
import { textOf } from './specs.mjs';

const { seed, from, until, rounds, shared } = workerData;
const now = new Int32Array(shared), say = parentPort.postMessage.bind(parentPort);
let slowest = 0, slowestRound = from, round = from;
// tables and vocabulary are taken apart by the first text
wrongWith(textOf(seed));
for (; Date.now() < until && round < rounds; round += 1) {
  const text = textOf(seedOf(seed, round));
  Atomics.store(now, 0, round);
  const { wrong, ms } = wrongWith(text);
  if (ms > slowest) { slowest = ms; slowestRound = round; }
  if (wrong.length > 0) say({ round, wrong, text });
}
say({ done: true, rounds: round - from, slowest, slowestRound });
