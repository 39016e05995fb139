// One round of the fuzz again: `node tools/proof/fuzz/again.mjs SEED ROUND` prints its text on standard output and what is wrong with it on standard error.
import { wrongWith } from './check.mjs';
import { seedOf } from './draws.mjs';
import { textOf } from './specs.mjs';

const [seed, round] = process.argv.slice(2).map(Number);
const text = textOf(seedOf(seed, round));
process.stdout.write(text);
wrongWith(textOf(seed));
const { wrong, ms } = wrongWith(text);
for (const one of wrong) console.error(one);
console.error(`read in ${ms.toFixed(0)} ms`);
