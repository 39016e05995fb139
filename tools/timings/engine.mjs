import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

/** The middle of the times of `rounds` calls, in seconds, each of `inner` calls at once where one is too short for the clock. */
function median(rounds, inner, call) {
  const times = [];
  for (let round = 0; round < rounds; round += 1) {
    const from = performance.now();
    for (let at = 0; at < inner; at += 1) call(at);
    times.push((performance.now() - from) / 1000 / inner);
  }
  return times.sort((a, b) => a - b)[Math.floor(rounds / 2)];
}

/** Times of the engine on the demo spec, warm. */
export async function engineTimes() {
  const load = (name) => import(`../../packages/${name}/dist/index.js`);
  const [{ parse, readText }, { compile, readDocument }, { tables }] = await Promise.all([load('spec'), load('engine'), load('tables')]);
  const text = readFileSync(join(root, 'demo', 'clear-colada.drink'), 'utf8');
  const document = parse(text);
  const { program } = compile(document, tables, null);
  const x = Float64Array.from(program.nominal);
  const out = new Float64Array(program.probes.length);
  const all = new Uint8Array(program.probes.length).fill(1);
  const workspace = program.workspace();
  const measure = Math.max(0, program.inputs.findIndex((input) => input.key.startsWith('pour/')));
  const change = (at) => { x[measure] = program.nominal[measure] * (1 + 0.001 * (at % 7)); program.run(x, out, all, workspace); };
  median(50, 100, change);
  median(20, 1, () => readText(text, { tables }));
  return [
    { what: 'all values and margins after one changed number', got: median(101, 50, change) * 1e6, goal: 25, unit: 'µs' },
    { what: 'the whole reading with its ranges', got: median(41, 1, () => readDocument(document, tables, {})) * 1e3, goal: 3, unit: 'ms' },
    { what: 'from text to reading, warm', got: median(41, 1, () => readText(text, { tables })) * 1e3, goal: 5, unit: 'ms' },
  ];
}
