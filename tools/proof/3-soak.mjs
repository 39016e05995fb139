import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

export const title = 'Soak: the demo book read over and over';

/** The same spec gives the same bytes each time, and what was read leaves no memory behind. */
export async function prove({ short, total }) {
  const [{ readText }, { tables }] = await Promise.all([import('../../packages/spec/dist/index.js'), import('../../packages/tables/dist/index.js')]);
  const folder = join(root, 'demo');
  const specs = readdirSync(folder).filter((name) => name.endsWith('.drink')).map((name) => [name, readFileSync(join(folder, name), 'utf8')]);
  const answer = (text) => JSON.stringify(readText(text, { tables }));
  const first = new Map(specs.map(([name, text]) => [name, answer(text)]));
  const rounds = Math.ceil((short ? 400 : 6000) / Math.max(1, specs.length));
  const differs = new Set();
  const heap = [];
  for (let round = 0; round < rounds; round += 1) {
    for (const [name, text] of specs) if (answer(text) !== first.get(name)) differs.add(name);
    // A text never seen before each round, so that what is kept by text would show.
    answer(`Drink ${round}\n${20 + (round % 40)} ml white rum 40 %\n${10 + (round % 7)} ml lime juice\n`);
    if (round % Math.ceil(rounds / 20) === 0) heap.push(process.memoryUsage().heapUsed / 1e6);
  }
  // The lowest heap of the last quarter over that of the second: collections between make single looks worthless.
  const quarter = Math.floor(heap.length / 4);
  const grown = Math.min(...heap.slice(-quarter)) - Math.min(...heap.slice(quarter, 2 * quarter));
  total.check(`${rounds * specs.length} readings are the same bytes each time`, specs.length === 0 ? ['there is no demo spec'] : [...differs].map((name) => `${name} was read differently`));
  total.check('memory does not grow', grown < 30 ? [] : [`the heap grew by ${grown.toFixed(0)} MB`]);
  total.check('no number of the demo book is NaN or infinite', [...first].filter(([, text]) => /:(null,"unit"|NaN|Infinity)/.test(text)).map(([name]) => `${name} has a figure without a number`));
}
